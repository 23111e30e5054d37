import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { evaluate, ONE_JOINT, readJob, readLanguageText, readShop } from '@fielded/core';
import { Random } from '../support/random.ts';
import type { Finding } from './fuzz-jobs.ts';
import { judgeCase } from './judge-case.ts';
import { spoil } from './spoil.ts';

const examples = fileURLToPath(new URL('../../examples', import.meta.url));

/** Of a language file so many bytes: its thousands of lines are all of one kind. */
const MOST_BYTES = 4000;

/** The files that are spoilt: every example job and shop, and the beginning of a language. */
export function readStarts(): { name: string; bytes: Uint8Array }[] {
  return readdirSync(examples, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.yaml'))
    .map((name) => ({ name, bytes: wholeLines(readFileSync(join(examples, name))) }));
}

function wholeLines(bytes: Uint8Array): Uint8Array {
  return bytes.length <= MOST_BYTES ? bytes : bytes.subarray(0, bytes.lastIndexOf(10, MOST_BYTES) + 1);
}

/** Spoils a file's bytes by seed and reads it: it must give a job or faults in words, in good time, and never throw. */
export function fuzzText(seed: number, starts: readonly { name: string; bytes: Uint8Array }[]): Finding[] {
  const random = new Random(seed);
  const { name, bytes } = starts[seed % starts.length]!;
  const text = new TextDecoder().decode(spoil(bytes, random, PIECES));
  const read = () =>
    name.startsWith('languages') ? readLanguageSpoilt(text) : readSpoilt(text, name.endsWith('shop.yaml'));
  return judgeCase(seed, read).map(({ what }) => ({ seed, what: `${name}: ${what}` }));
}

function readSpoilt(text: string, isShop: boolean): string[] {
  const result = isShop
    ? { ...readShop(text), job: null }
    : readJob(text, { loadShop: () => ({ refused: 'none', instead: 'none' }) });
  for (const { message, line, column } of result.faults) {
    if (message === '' || !Number.isInteger(line) || !Number.isInteger(column))
      return ['a fault without words or place'];
  }
  if (result.job === null) return result.faults.length === 0 && !isShop ? ['neither a job nor a fault'] : [];
  const report = evaluate(result.job, { simulation: ONE_JOINT });
  return Number.isFinite(report.section.removedArea) ? [] : ['an area that is no number'];
}

function readLanguageSpoilt(text: string): string[] {
  const { language, faults } = readLanguageText(text);
  if (language === null) return faults.length > 0 && !faults.includes('') ? [] : ['neither a language nor a fault'];
  return faults.length === 0 ? [] : ['a language and faults'];
}

/** What has broken readers of such files before. */
const PIECES = [
  '-',
  '0',
  '9',
  '.',
  ':',
  '"',
  "'",
  '\n',
  '  ',
  '\t',
  '{',
  '}',
  '[',
  ']',
  '&a ',
  '*a',
  '<<: ',
  '!!',
  '? ',
  '|',
  '>',
  '#',
  '---\n',
  '...\n',
  'null',
  '.nan',
  '.inf',
  '-.inf',
  '1e309',
  '1e-309',
  '-0',
  '0x10',
  '3/4',
  '3/4 in',
  '1/0',
  '19,05',
  '1,000',
  '½',
  "5'",
  'mm',
  '__proto__: 1\n',
  'M 0 9 H 12',
  'A 1 1 0 1 1 0 0',
  'Z',
  'C 1 2 3 4 5 6',
  '999999999999',
  'true',
  'shape: outline',
  '\u2028',
  '\u0000',
  '\ufeff',
];
