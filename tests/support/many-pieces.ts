import type { Job, Profile } from '@fielded/core';
import type { Curve } from '@fielded/geometry';
import { Random } from './random.ts';

/**
 * A job whose two cuts together have about `pieces` lines and arcs: free outlines that step from the edge up to the face in
 * short lines, hollows and rounds, as a scanned or a reeded profile does.
 */
export function manyPieces(pieces: number, seed: number): Job {
  const random = new Random(seed);
  const front = steppedOutline(random, Math.ceil(pieces * 0.6), 38, 9);
  const back = steppedOutline(random, Math.floor(pieces * 0.4), 16, 4.8);
  return {
    title: `${pieces} pieces`,
    units: 'mm',
    panel: { thickness: 20, measured: 20, sawn: 'flat' },
    frame: { thickness: 22, groove: { width: 6.4, depth: 11, setback: 7.5 }, swellGap: 2 },
    cuts: [
      { name: 'raise', side: 'front', profile: front, depth: front.depth, reach: front.reach, run: 'under', tilt: 0 },
      { name: 'relief', side: 'back', profile: back, depth: back.depth, reach: back.reach, run: 'over', tilt: 0 },
    ],
    fit: { target: 0.2, snug: 0.05, loose: 0.5 },
    doors: [],
  };
}

function steppedOutline(random: Random, count: number, reach: number, depth: number): Profile {
  const chain: Curve[] = [];
  let x = 0;
  let y = depth;
  for (let i = 0; i < count - 1; i++) {
    const x1 = ((i + 1) * reach) / (count - 1);
    const y1 = depth - ((i + 1) * (depth - 1)) / (count - 1);
    chain.push(stretch(random.oneOf([0, 1, -1] as const), x, y, x1, y1));
    x = x1;
    y = y1;
  }
  chain.push({ x0: x, y0: y, x1: x, y1: 0, cx: 0, cy: 0, r: 0, turn: 0 });
  return { shape: 'outline', reach, depth, chain };
}

/** A line, or an arc of a sixth of a turn or less that still falls steadily. */
function stretch(turn: -1 | 0 | 1, x0: number, y0: number, x1: number, y1: number): Curve {
  if (turn === 0) return { x0, y0, x1, y1, cx: 0, cy: 0, r: 0, turn: 0 };
  const dx = x1 - x0;
  const dy = y1 - y0;
  const chord = Math.hypot(dx, dy);
  const r = chord * 3;
  const out = (turn * Math.sqrt(r * r - (chord / 2) ** 2)) / chord;
  return { x0, y0, x1, y1, cx: (x0 + x1) / 2 - out * dy, cy: (y0 + y1) / 2 + out * dx, r, turn };
}
