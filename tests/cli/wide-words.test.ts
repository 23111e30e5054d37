// Words of other languages in tables of a terminal: longer ones, and signs that are two columns wide.
import { describe, expect, it } from 'vitest';
import { columnsOf } from '../../packages/cli/src/terminal/columns.ts';
import { left, right, setPairs, setTable, wrap } from '../../packages/cli/src/terminal/table.ts';
import { run } from './command.ts';

describe('columns that a text takes', () => {
  // East Asian Width (UAX 11): W and F take two, marks that are set over a sign none.
  it.each([
    ['Panel', 5],
    ['Füllung', 7],
    ['Fu\u0308llung', 7],
    ['面板', 4],
    ['パネル', 6],
    ['ﾊﾟﾈﾙ', 4],
    ['패널', 4],
    ['Ａ１', 4],
    ['ａ、ｂ', 6],
    ['✓ – ± ≈ ½', 9],
    ['🪚', 2],
    ['لوحة', 4],
  ])('%s', (text, columns) => {
    expect(columnsOf(text)).toBe(columns);
  });
});

describe('tables and labels', () => {
  it('line up at the widest cell, wide signs or not', () => {
    const rows = [
      ['面板', '20'],
      ['Rahmen', '1234567'],
    ];
    const lines = setTable([left('部品'), right('厚さ')], rows);
    expect(lines).toEqual(['  部品       厚さ', '  面板         20', '  Rahmen  1234567']);
    expect(new Set(lines.map(columnsOf))).toEqual(new Set([17]));
  });

  it('leave room after the longest label', () => {
    expect(setPairs([['Panel', '1']])).toEqual([`  ${'Panel'.padEnd(19)}1`]);
    const pairs = setPairs([
      ['溝の底のすきまの大きさです', '1'],
      ['x', '2'],
    ]);
    expect(pairs.map((line) => columnsOf(line.slice(0, -1)))).toEqual([29, 29]);
  });

  it('break lines between words, and anywhere but before a stop where a script parts no words', () => {
    expect(wrap('one two three', 7, 2)).toEqual(['one two', '  three']);
    expect(wrap('板は溝に入ります。', 8, 0)).toEqual(['板は溝に', '入りま', 'す。']);
    for (const line of wrap('板は溝に 0.2 mm のすきまで入り、全部の深さまで行きます。', 20, 2))
      expect(columnsOf(line)).toBeLessThanOrEqual(20);
  });
});

describe('the German example', () => {
  it('keeps a report within 80 columns, every label apart from its figure', async () => {
    const { out } = await run(['check', 'examples/kitchen/job.yaml', '--language', 'examples/languages/german.yaml']);
    for (const line of out.split('\n')) expect(columnsOf(line)).toBeLessThanOrEqual(80);
    expect(out).toContain('  Abplattung sichtbar 29,00 mm');
  });
});
