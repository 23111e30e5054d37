import type { Cut } from '@fielded/core';
import type { Desk } from '../../desk/desk.ts';
import { freeName } from '../../job/free-name.ts';

/** Adds a plain rebate on a side of the panel, under a name of its own. */
export function addCut(desk: Desk, side: Cut['side']): void {
  const { cuts, units } = desk.job.value;
  const names = new Set(cuts.map(({ name }) => name));
  const name = freeName(side === 'front' ? 'raise' : 'back relief', (taken) => names.has(taken));
  const sizes =
    units === 'in'
      ? { shape: 'rebate', reach: '1/2', depth: '1/8' }
      : { shape: 'rebate', reach: side === 'front' ? 20 : 12, depth: 3 };
  desk.change([[`cuts[${cuts.length}]`, { name, side, profile: sizes, run: side === 'front' ? 'under' : 'over' }]]);
}
