import type { KnifeReport, Report, WallReport } from '@fielded/core';
import { formatNumber } from '@fielded/core';
import { spokenLength } from './lengths.ts';

/** Ends of a wall that differ by less than this, mm, read the same. */
const LEVEL = 0.005;

/** A wall that side relief is ground on, with the letter it has on the drawing. */
export interface ReliefWall extends WallReport {
  readonly letter: string;
}

/** The walls of a knife that side relief is for; an undercut one is no matter of relief. */
export function reliefWalls({ walls }: KnifeReport): ReliefWall[] {
  return walls
    .filter((wall) => !wall.undercut)
    .map((wall, i) => ({ ...wall, letter: i < 26 ? String.fromCharCode(65 + i) : `A${i - 25}` }));
}

/** What the grinder is told about side relief: how much, and on which walls; no lines where none needs any. */
export function reliefNotes(knife: KnifeReport, units: Report['units']): string[] {
  const walls = reliefWalls(knife);
  if (knife.sideRelief === null || walls.length === 0) return [];
  const { least, ground } = knife.sideRelief;
  const angle = (degrees: number) => `${formatNumber(degrees, 1)}°`;
  const named = walls.map((wall) => `${wall.letter}, ${placeOf(wall, units)}`).join('; ');
  if (ground !== null) {
    const enough = ground + 1e-9 >= least ? '' : `, less than the ${angle(least)} wanted`;
    return [`Side relief: the knife has ${angle(ground)} ground${enough}, on ${named}.`];
  }
  return [`Side relief: grind at least ${angle(least)} here, behind the edge: on ${named}.`];
}

/** Where a wall is, in from the panel's edge and down from its face. */
function placeOf({ from, to, straight }: WallReport, units: Report['units']): string {
  const say = (mm: number) => spokenLength(Math.abs(mm) < LEVEL ? 0 : mm, units);
  const what = straight ? '' : 'the curve ';
  if (Math.abs(from.b - to.b) < LEVEL)
    return `${straight ? 'the flat' : 'the curve'} from ${say(from.a)} to ${say(to.a)} in, ${say(from.b)} down`;
  if (Math.abs(from.a - to.a) < LEVEL)
    return `${straight ? 'the wall' : 'the curve'} from ${say(from.b)} to ${say(to.b)} down, ${say(from.a)} in`;
  return `${what}from ${say(from.a)} in and ${say(from.b)} down to ${say(to.a)} in and ${say(to.b)} down`;
}
