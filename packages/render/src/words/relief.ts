import type { KnifeReport, WallReport } from '@fielded/core';
import { sayKnife } from './english/knife.ts';
import type { InVoice } from './lengths.ts';

/** Ends of a wall that differ by less than this, mm, read the same. */
const LEVEL = 0.005;

/** A wall that side relief is ground on, with the letter it has on the drawing. */
export interface ReliefWall extends WallReport {
  readonly letter: string;
}

/** The walls of a knife that side relief is ground on; relief does not help an undercut one. */
export function reliefWalls({ walls }: KnifeReport): ReliefWall[] {
  return walls
    .filter((wall) => !wall.undercut)
    .map((wall, i) => ({ ...wall, letter: i < 26 ? String.fromCharCode(65 + i) : `A${i - 25}` }));
}

/** What the grinder is told about side relief: how much, and on which walls; no lines where none needs any. */
export function reliefNotes(knife: KnifeReport, voice: InVoice): string[] {
  const named = reliefWalls(knife);
  if (knife.sideRelief === null || named.length === 0) return [];
  const { least, ground } = knife.sideRelief;
  const walls = named.map((wall) => placeOf(wall, voice)).join('; ');
  if (ground === null) return [sayKnife('note.relief.wanted', { least, walls }, voice)];
  const enough = ground + 1e-9 >= least;
  return [sayKnife(enough ? 'note.relief.ground' : 'note.relief.less', { ground, least, walls }, voice)];
}

/** A wall by its letter, and where it is: in from the panel's edge and down from its face. */
function placeOf({ letter, from, to, straight }: ReliefWall, voice: InVoice): string {
  const level = (mm: number) => (Math.abs(mm) < LEVEL ? 0 : mm);
  const figures = { letter, a0: level(from.a), b0: level(from.b), a1: level(to.a), b1: level(to.b) };
  const lies =
    Math.abs(from.b - to.b) < LEVEL ? 'flat' : Math.abs(from.a - to.a) < LEVEL ? 'steep' : ('slope' as const);
  return sayKnife(straight ? `wall.${lies}` : `wall.${lies}.curved`, figures, voice);
}
