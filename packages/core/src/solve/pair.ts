import type { Job } from '../job/job.ts';
import { type MetBoth, meetBoth } from './meet-both.ts';
import { LEAST_MOVE } from './moves.ts';
import { type Rounded, roundSetting } from './round.ts';
import { searchSetting } from './search.ts';
import { findSetting, type Setting } from './settings.ts';
import { readWhereReadable, type Target } from './targets.ts';

/** How far from where it is a size is looked for, mm. */
export const RANGE = 25;
/** Places of the first size that are looked at on either side, and steps in which the best is then closed in on. */
const LOOKED_AT = 24;
const CLOSING_IN = 40;

/** A job's two sizes, set together. */
export class Pair {
  readonly #job: Job;
  readonly #a: Setting;
  readonly #b: Setting;

  constructor(job: Job, a: Setting, b: Setting) {
    this.#job = job;
    this.#a = a;
    this.#b = b;
  }

  /** The job with both set. */
  at(x: number, y: number): Job {
    return this.#secondOf(this.#a.set(x)).set(y);
  }

  /** The settings nearest to the present ones at which both figures are as wanted. */
  meetBoth(first: Target, value: number, second: Target, other: number): MetBoth {
    const read = (target: Target) => (x: number, y: number) => readWhereReadable(target, this.at(x, y));
    const room = ({ now, least, most }: Setting) => ({
      now,
      least: Math.max(least, now - RANGE),
      most: Math.min(most, now + RANGE),
    });
    return meetBoth({ first: read(first), second: read(second) }, value, other, room(this.#a), room(this.#b));
  }

  /** Of all pairs that give the figure, the one that moves least. */
  moveLeast(target: Target, value: number): [number, number] | null {
    const a = this.#a;
    let best: { x: number; y: number; total: number } | null = null;
    const look = (x: number): number => {
      if (x < a.least || x > a.most) return Number.POSITIVE_INFINITY;
      const room = Math.min(RANGE, best === null ? RANGE : best.total - Math.abs(x - a.now));
      const y = room <= 0 ? null : this.#searchSecond(x, target, value, this.#b.now, room);
      if (y === null) return Number.POSITIVE_INFINITY;
      const total = Math.abs(x - a.now) + Math.abs(y - this.#b.now);
      if (best === null || total < best.total - LEAST_MOVE) best = { x, y, total };
      return total;
    };
    // The second alone, then the first alone.
    look(a.now);
    const alone = searchSetting(
      (x) => readWhereReadable(target, a.set(x)),
      value,
      a.now,
      Math.max(a.least, a.now - RANGE),
      Math.min(a.most, a.now + RANGE),
    ).found;
    if (alone) look(alone.setting);
    // Then both: nothing beyond the best total can be better.
    const reach = (): number => best?.total ?? RANGE;
    const step = reach() / LOOKED_AT;
    for (let i = 1; i < LOOKED_AT; i++) {
      look(a.now - i * step);
      look(a.now + i * step);
    }
    for (let width = step, turn = 0; best !== null && turn < CLOSING_IN; turn++, width *= 0.7) {
      const { x }: { x: number } = best;
      look(x - width);
      look(x + width);
    }
    const { x, y } = (best as { x: number; y: number } | null) ?? {};
    return x === undefined || y === undefined ? null : [x, y];
  }

  /** Both in round figures: the first rounded, then the second for what it has to keep. */
  round(
    x: number,
    y: number,
    target: Target,
    value: number,
    kept: { readonly target: Target; readonly value: number },
  ): [number, number] {
    const { units } = this.#job;
    const first: Rounded = roundSetting(x, units, (mm) => readWhereReadable(target, this.at(mm, y)), value);
    const keep = (mm: number) => readWhereReadable(kept.target, this.at(first.setting, mm));
    const second = roundSetting(y, units, keep, kept.value);
    return [first.setting, second.setting];
  }

  #secondOf(job: Job): Setting {
    return findSetting(job, this.#b.name) ?? this.#b;
  }

  #searchSecond(x: number, target: Target, value: number, from: number, room: number): number | null {
    const setting = this.#secondOf(this.#a.set(x));
    const curve = (y: number) => readWhereReadable(target, setting.set(y));
    const least = Math.max(setting.least, from - room);
    const most = Math.min(setting.most, from + room);
    return least > most ? null : (searchSetting(curve, value, from, least, most).found?.setting ?? null);
  }
}
