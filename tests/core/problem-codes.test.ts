import { readFileSync } from 'node:fs';
import { ENGLISH, FAULT_CODES, SEVERITIES } from '@fielded/core';
import { expect, it } from 'vitest';

const DOCS = readFileSync(new URL('../../docs/problem-codes.md', import.meta.url), 'utf8');

/** Rows of the tables: the code and, where the table has that column, the severity. */
function documentedIn(docs: string): [code: string, severity: string | null][] {
  return [...docs.matchAll(/^\| `([a-z-]+)` \|(?: (error|warning|caution) \|)?/gm)].map((row) => [
    row[1]!,
    row[2] ?? null,
  ]);
}

const rows = documentedIn(DOCS);

it('reads codes and severities off a table', () => {
  expect(documentedIn('| `a-b` | error | x |\n| `c` | y |\ntext `d-e`')).toEqual([
    ['a-b', 'error'],
    ['c', null],
  ]);
});

it('documents every problem with its severity, and no other', () => {
  const documented = Object.fromEntries(rows.filter(([, severity]) => severity !== null));
  // A knife too long for its head is found in a shop file and in a job alike.
  const { 'steel-past-foot': both, ...problems } = SEVERITIES;
  expect(documented).toEqual(problems);
  expect([both, FAULT_CODES.includes('steel-past-foot')]).toEqual(['error', true]);
});

it('documents every fault of a file, and no other', () => {
  const documented = rows.filter(([, severity]) => severity === null).map(([code]) => code);
  expect(documented.sort()).toEqual([...FAULT_CODES].sort());
});

it('has a sentence for every problem', () => {
  const sentences = Object.keys(ENGLISH);
  const silent = Object.keys(SEVERITIES).filter((code) => !sentences.some((key) => key.split('.')[0] === code));
  expect(silent).toEqual([]);
});

it('has a sentence for every fault of a file, of what to do too, and none for another', () => {
  const sentences = Object.keys(ENGLISH).filter((key) => key.startsWith('fault.'));
  expect([...new Set(sentences.map((key) => key.split('.')[1]))].sort()).toEqual([...FAULT_CODES].sort());
  const remedies = new Set(sentences.filter((key) => key.endsWith('.do')));
  const without = sentences.filter((key) => !key.endsWith('.do') && !remedies.has(`${key}.do`));
  expect(without).toEqual([]);
  for (const key of sentences) expect(ENGLISH[key]).toMatch(/\.$/);
});
