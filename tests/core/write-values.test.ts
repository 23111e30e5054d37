import { describe, expect, it } from 'vitest';
import { readJob } from '../../packages/core/src/reading/read.ts';
import { writeValues } from '../../packages/core/src/writing/write-values.ts';
import { SOUND } from './job-texts.ts';

const write = (text: string, path: (string | number)[], mm: number, units: 'mm' | 'in' = 'mm') =>
  writeValues(text, [{ path, mm }], units);

describe('a value in a file is changed where it stands', () => {
  it.each([
    ['a: 1 # one\nb: 2\n', ['a'], 1.5, 'a: 1.5 # one\nb: 2\n'],
    ['a:   1\t# one\r\nb: 2\r\n', ['b'], 3, 'a:   1\t# one\r\nb: 3\r\n'],
    ['{ "a": 1, "b": [ { "c": 2 } ] }', ['b', 0, 'c'], 2.25, '{ "a": 1, "b": [ { "c": 2.25 } ] }'],
    ['a: { b: 4.6 mm, c: 1 }', ['a', 'b'], 4.8, 'a: { b: 4.8 mm, c: 1 }'],
    ["a: '3/4 in' # board\n", ['a'], 12.7, 'a: 0.5 in # board\n'],
    ['a: 3/4"\n', ['a'], 12.7, 'a: 0.5 in\n'],
    ['a: 1.9 cm\n', ['a'], 20, 'a: 2 cm\n'],
    ['a: 1\n', ['a'], 4.7999999999999, 'a: 4.8\n'],
    ['a: 1\n', ['a'], 100, 'a: 100\n'],
  ])('%j', (text, path, mm, written) => {
    expect(write(text, path, mm)).toEqual({ text: written });
  });

  it('a bare number stays in the unit of the file', () => {
    expect(write('a: 0.75\n', ['a'], 25.4, 'in')).toEqual({ text: 'a: 1\n' });
  });
});

describe('a key that is not there is added', () => {
  it.each([
    [
      'block, before its neighbour',
      'cuts:\n  - name: a\n    side: front # here\n  - name: b\n',
      'cuts:\n  - name: a\n    side: front # here\n    depth: 4.8\n  - name: b\n',
    ],
    ['an empty group', 'cuts:\n  - {}\n', 'cuts:\n  - { depth: 4.8 }\n'],
    ['inline', 'cuts:\n  - { name: a, side: front }\n', 'cuts:\n  - { name: a, side: front, depth: 4.8 }\n'],
    [
      'after a group inside',
      'cuts:\n  - name: a\n    profile:\n      reach: 3\nfit: {}\n',
      'cuts:\n  - name: a\n    profile:\n      reach: 3\n    depth: 4.8\nfit: {}\n',
    ],
    ['at the end without a newline', 'cuts:\n  - name: a', 'cuts:\n  - name: a\n    depth: 4.8\n'],
    ['JSON', '{"cuts": [{"name": "a"}]}', '{"cuts": [{"name": "a", "depth": 4.8}]}'],
  ])('%s', (_, text, written) => {
    expect(write(text, ['cuts', 0, 'depth'], 4.8)).toEqual({ text: written });
  });

  it('and the job then has it, and nothing else is new', () => {
    const { text } = write(SOUND, ['cuts', 1, 'depth'], 4.8) as { text: string };
    const { job, faults } = readJob(text);
    expect(faults).toEqual([]);
    const before = readJob(SOUND).job!;
    expect(job).toEqual({ ...before, cuts: [before.cuts[0], { ...before.cuts[1]!, depth: 4.8 }] });
  });
});

describe('what cannot be changed is said', () => {
  it.each([
    [
      'a shared value',
      'a: &x 1\nb: *x\n',
      ['b'],
      'b stands in a part of the file that other places share (an alias): change it by hand.',
    ],
    [
      'its anchor',
      'a: &x 1\nb: *x\n',
      ['a'],
      'a stands in a part of the file that other places share (an alias): change it by hand.',
    ],
    [
      'a shared group',
      'a: &x { c: 1 }\nb: *x\n',
      ['b', 'c'],
      'b.c stands in a part of the file that other places share (an alias): change it by hand.',
    ],
    ['a missing group', 'a: 1\n', ['b', 'c'], 'b.c is not to be found in the file: change it by hand.'],
    ['a list', 'a: [1]\n', ['a'], 'a is no plain value: change it by hand.'],
  ])('%s', (_, text, path, refused) => {
    expect(write(text, path, 2)).toEqual({ refused });
  });
});

it.each([
  ['write.shared', 'a: &x { c: 1 }\nb: *x\n', ['b', 'c']],
  ['write.missing', 'a: 1\n', ['b', 'c']],
  ['write.not-plain', 'a: [1]\n', ['a']],
])('no is said in the language asked for: %s', (sentence, text, path) => {
  const language = { decimal: ',', sentences: { [sentence]: 'NEIN {place}' } } as const;
  expect(writeValues(text, [{ path, mm: 2 }], 'mm', language)).toEqual({ refused: `NEIN ${path.join('.')}` });
});
