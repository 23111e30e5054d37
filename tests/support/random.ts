/** A small seeded generator (mulberry32): the same numbers on every machine, so that a failing case can be named by its seed. */
export class Random {
  #state: number;

  constructor(seed: number) {
    this.#state = seed >>> 0;
  }

  /** In [0, 1). */
  unit(): number {
    this.#state = (this.#state + 0x6d2b79f5) >>> 0;
    let t = this.#state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  }

  between(least: number, most: number): number {
    return least + (most - least) * this.unit();
  }

  oneOf<T>(choices: readonly T[]): T {
    return choices[Math.floor(this.unit() * choices.length)]!;
  }
}
