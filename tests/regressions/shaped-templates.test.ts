// Found by odd doors: templates of shaped heads whose ends did not meet, that were read back in two parts, or kept a field under one way of giving a head only.
import { evaluate, readJob, templateOutline } from '@fielded/core';
import { readDxf } from '@fielded/exchange';
import { expect, it } from 'vitest';
import { SOUND } from '../core/job-texts.ts';

const doorOf = (door: string) => {
  const { job, faults } = readJob(`${SOUND}doors: [{ name: A, ${door} }]\n`);
  if (job === null) throw new Error(faults.map(({ message }) => message).join('\n'));
  return evaluate(job).doors![0]!;
};

it('the arch of half a circle springs at the height of its centre: r² − c²/4 loses what is left of it', () => {
  const half = 396.46697369776666;
  const door = doorOf(
    `width: ${2 * half + 88}, height: 2216, stile: 44, rail: 67, head: { shape: arch, rise: ${half} }`,
  );
  const arc = templateOutline(door, 'rail', 38).find(({ turn }) => turn !== 0)!;
  expect(Math.abs(arc.y0)).toBeLessThan(1e-9);
  expect(Math.abs(arc.y1)).toBeLessThan(1e-9);
});

it('ends are joined that lie in the very middle of the square they are sought by', () => {
  const group = (...pairs: (string | number)[]) => pairs.join('\n');
  const line = (x0: number, y0: number, x1: number, y1: number) =>
    group(0, 'LINE', 8, 'A', 10, x0, 20, y0, 11, x1, 21, y1);
  // 2048.03125 mm is the middle of the 102,401,563rd square of 2e-5 mm: 1e-5 less and 1e-5 more round to the squares beside it.
  const lines = [line(0, 0, 9, 2048.03125), line(9, 2048.03125, 20, 0)];
  const text = group(0, 'SECTION', 2, 'ENTITIES', ...lines, 0, 'ENDSEC', 0, 'EOF', '');
  expect(readDxf(text, 1e-5).outlines).toHaveLength(1);
});

it('a low panel keeps a field beside its head, or keeps none, however the arch is given', () => {
  // Half a chord of 200 mm and a rise of 99: r = (200² + 99²) / (2 · 99).
  const r = (200 ** 2 + 99 ** 2) / (2 * 99);
  const heads = ['{ shape: arch, rise: 99 }', `{ shape: outline, path: "M 0 99 A ${r} ${r} 0 0 1 400 99" }`];
  for (const [row, kept] of [
    [120, false],
    [240, true],
  ] as const) {
    for (const head of heads) {
      const door = doorOf(
        `width: 520, height: 900, stile: 60, rail: 60, rows: [${row}, rest], muntin: 60, head: ${head}`,
      );
      expect(door.head!.field !== null, `${head} in ${row}`).toBe(kept);
    }
  }
});
