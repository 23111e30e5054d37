import type { Job } from '../job/job.ts';
import type { Edge } from '../joint/edge.ts';

/** Lines and arcs that may be looked at for the advice on one job, in sections and in what makes it: some hundredths of a second each. */
const MOST_LOOKED_AT = { sections: 24_000, making: 80_000 };

/** What the knives and the plan of a job cost, in sections of the same profiles. */
const KNIFE_COST = 200;

/** The cost of a door with its panels and blanks, in lines and arcs. */
const DOOR_COST = 500;

/** What looking for advice may still cost: a profile of thousands of lines and arcs is not tried a hundred times over. */
export class Effort {
  readonly #section: number;
  readonly #making: number;
  readonly #left = { ...MOST_LOOKED_AT };
  #short = false;

  constructor({ cuts, shop, doors }: Job, edge: Edge) {
    const pieces = edge.cuts.reduce((sum, { sweep }) => sum + sweep.swept.length, 0);
    const heads = shop === undefined ? 0 : cuts.filter(({ head }) => head !== undefined).length;
    // Cuts that cross each other have crossings in each other's pieces.
    this.#section = pieces * (1 + cuts.length / 4);
    this.#making = (heads > 0 ? this.#section * KNIFE_COST : 0) + doors.length * DOOR_COST;
  }

  /** Whether `count` more sections fit the budget; if so, they are charged to it. */
  cutsSections(count: number): boolean {
    return this.#spend('sections', count * this.#section);
  }

  /** Whether trying the joint of one more job fits the budget; if so, it is charged to it. */
  triesJob(): boolean {
    return this.#spend('sections', 2 * this.#section);
  }

  /** The same for its knives, doors and set-ups. */
  makesJob(): boolean {
    return this.#spend('making', this.#making);
  }

  /** Whether anything was skipped to stay within the budget. */
  get spent(): boolean {
    return this.#short;
  }

  #spend(on: keyof typeof MOST_LOOKED_AT, pieces: number): boolean {
    if (pieces > this.#left[on]) {
      this.#short = true;
      return false;
    }
    this.#left[on] -= pieces;
    return true;
  }
}
