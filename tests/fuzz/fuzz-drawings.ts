import { evaluate, readJob } from '@fielded/core';
import { readOutlineFile, writeDxf } from '@fielded/exchange';
import type { Curve } from '@fielded/geometry';
import { Random } from '../support/random.ts';
import type { Finding } from './fuzz-jobs.ts';
import { judgeCase } from './judge-case.ts';
import { spoil } from './spoil.ts';

const PATH = 'M 0 9 H 11 C 20 9 18 4 26 4 Q 30 4 33 2 A 3 3 0 0 1 36 1.5 L 38 1.5 V 0';

const line = (x0: number, y0: number, x1: number, y1: number): Curve => ({
  x0,
  y0,
  x1,
  y1,
  cx: 0,
  cy: 0,
  r: 0,
  turn: 0,
});
const drawn = [
  line(0, -9, 11, -9),
  { ...line(11, -9, 16, -4), cx: 11, cy: -4, r: 5, turn: 1 as const },
  line(16, -4, 16, 0),
];
const STARTS = [
  { name: 'outline.dxf', text: writeDxf([{ name: 'OUTLINE', chains: [drawn] }]) },
  {
    name: 'outline.svg',
    text: `<svg xmlns="http://www.w3.org/2000/svg"><title>outline</title><path d="${PATH}"/></svg>`,
  },
  { name: 'a path', text: PATH },
];
const PIECES = [
  'M',
  'm 1 1',
  'Z',
  'A 1 1 0 1 1 0 0',
  'C 1 2 3 4 5 6',
  'T 3 3',
  '1e309',
  '-',
  '.',
  '0',
  '9',
  '999\n',
  '0\nARC\n',
  '10\n',
  '<path d="M0 0"/>',
  '&amp;',
  '<!--',
  '"',
  '\u0000',
];

/** Spoils an outline, as path data, DXF or SVG, by seed, and runs the job that it is the profile of. */
export function fuzzDrawing(seed: number): Finding[] {
  const { name, text } = STARTS[seed % STARTS.length]!;
  const spoilt = new TextDecoder().decode(spoil(new TextEncoder().encode(text), new Random(seed), PIECES));
  return judgeCase(seed, () => tryOutline(name, spoilt)).map(({ what }) => ({ seed, what: `${name}: ${what}` }));
}

function tryOutline(name: string, text: string): string[] {
  const profile = name === 'a path' ? { shape: 'outline', path: text } : { shape: 'outline', file: `./${name}` };
  const file = {
    fielded: 1,
    panel: { thickness: 20 },
    frame: { thickness: 22, groove: { width: 6.4, depth: 11, setback: 7.5 }, swellGap: 2 },
    cuts: [{ side: 'front', profile }],
  };
  const { job, faults } = readJob(JSON.stringify(file), { loadOutline: (path) => readOutlineFile(path, text) });
  if (job === null)
    return faults.length > 0 && faults.every(({ message }) => message !== '') ? [] : ['neither a job nor a fault'];
  const { section } = evaluate(job);
  return Number.isFinite(section.removedArea) && !section.outline.includes('NaN')
    ? []
    : ['an area or outline that is no number'];
}
