import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';

const SOURCE = fileURLToPath(new URL('../../packages/core/src/', import.meta.url));
const DOCS = readFileSync(new URL('../../docs/problem-codes.md', import.meta.url), 'utf8');

const files = readdirSync(SOURCE, { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.ts'));
const source = files.map((name) => readFileSync(SOURCE + name, 'utf8')).join('\n');

/** Codes where the source makes problems: after `code:`, or as the first words given to one of the makers of problems. */
function codesInSource(text: string): Set<string> {
  const maker = String.raw`(?:\bcode(?::|\s=)[^'\n;]{0,60}|\b(?:report|fault|fileFault|warn|push)\(\s*|\b(?:error|warning)\(\s*subject,\s*|(?:return|\?|:)\s*\[)'([a-z]+(?:-[a-z]+)+)'`;
  return new Set([...text.matchAll(new RegExp(maker, 'g'))].map((match) => match[1]!));
}

const documented = new Set([...DOCS.matchAll(/^\| `([a-z-]+)` \|/gm)].map((match) => match[1]!));

it('finds codes in the ways the source makes them', () => {
  const text = `{ code: 'a-b' } report(\n 'c-d', x) error(subject, 'e-f') return ['g-h', 'no way'] const code = x ? 'i-j' : y`;
  expect([...codesInSource(text)]).toEqual(['a-b', 'c-d', 'e-f', 'g-h', 'i-j']);
});

it('documents every code that the source can give', () => {
  expect([...codesInSource(source)].filter((code) => !documented.has(code)).sort()).toEqual([]);
});

it('documents no code that the source cannot give', () => {
  expect([...documented].filter((code) => !source.includes(`'${code}'`) && !/^(tight|loose)$/.test(code))).toEqual([]);
  expect(documented.size).toBeGreaterThan(60);
});
