import { SAME_LENGTH } from '@fielded/geometry';
import type { FitLimits } from '../joint/frame.ts';
import type { Joint, JointFigures } from './joint.ts';
import { createRandom, FURTHEST_NORMAL, type Random } from './random.ts';
import type { Distribution, SimulatedSpread, SimulationOptions } from './simulation.ts';
import type { Source, SpreadFigure } from './sources.ts';
import { createTally, createVerdictTally, type Tally, type VerdictTally } from './tally.ts';
import { worstCase } from './worst-case.ts';

/** Joints between two yields: about 20 ms. */
const CHUNK = 32_768;
/** Joints per batch; small enough for the CPU cache. */
const DRAW = 512;

/**
 * Makes joints at random and measures each one's clearance and face step, yielding how many are done every 30 000 or so.
 *
 * Every source varies for itself. The same seed gives the same joints. Ask the generator for its next value until it is
 * done and it returns the result; call its `return()` to drop it, or stop asking and call {@link simulateSpread} with a
 * smaller count. Sampling error of the mean is deviation/√count.
 *
 * @throws RangeError for a count that is not a whole number above 0.
 */
export function* simulateInChunks(
  joint: Joint,
  sources: readonly Source[],
  limits: FitLimits,
  options: SimulationOptions,
  stopped: () => boolean = () => false,
): Generator<number, SimulatedSpread> {
  const { count, seed, distribution } = options;
  if (!Number.isSafeInteger(count) || count < 1) {
    throw new RangeError(`a simulation needs a whole number of joints above 0, got ${count}`);
  }
  const random = createRandom(seed);
  // Only sources with a ± are drawn; tallies need bounds that no joint exceeds.
  const varied = sources.filter((source) => source.plusMinus > 0);
  const tallyOf = (figure: SpreadFigure) => createTally(bounds(joint, varied, distribution, figure));
  const tallies: Tallies = {
    clearance: tallyOf('clearance'),
    frontLeast: tallyOf('frontLeast'),
    frontMost: tallyOf('frontMost'),
    verdicts: createVerdictTally(limits),
    bottomedOut: 0,
  };
  const make = createMaker(joint, varied, random, distribution, tallies);
  let done = 0;
  do {
    const now = Math.min(CHUNK, count - done);
    make(now);
    done += now;
    yield done;
  } while (done < count && !stopped());
  return readTallies(tallies, seed, distribution);
}

interface Tallies {
  readonly clearance: Tally;
  readonly frontLeast: Tally;
  readonly frontMost: Tally;
  readonly verdicts: VerdictTally;
  /** Joints whose panel reaches the groove's bottom. */
  bottomedOut: number;
}

function readTallies(tallies: Tallies, seed: number, distribution: Distribution): SimulatedSpread {
  const { clearance, frontLeast, frontMost, verdicts, bottomedOut } = tallies;
  const sample = clearance.read()!;
  return {
    clearance: {
      ...sample,
      seed,
      distribution,
      shares: verdicts.shares(),
      bottomsOut: bottomedOut / sample.count,
      histogram: clearance.histogram(),
    },
    frontFace: { least: frontLeast.read(), most: frontMost.read() },
  };
}

/**
 * Makes `count` joints at random in one go; see {@link simulateInChunks}.
 *
 * `progress` is called with how many are done and returns false to stop.
 */
export function simulateSpread(
  joint: Joint,
  sources: readonly Source[],
  limits: FitLimits,
  options: SimulationOptions,
  progress: (done: number) => boolean = () => true,
): SimulatedSpread {
  let going = true;
  const run = simulateInChunks(joint, sources, limits, options, () => !going);
  for (;;) {
    const step = run.next();
    if (step.done) return step.value;
    going = progress(step.value);
  }
}

/** Parts looked at for the bounds of a tally, which need not be close. */
const ROUGH = 40;

/** Least and most of a figure that no draw exceeds, mm. */
function bounds(
  joint: Joint,
  varied: readonly Source[],
  distribution: Distribution,
  figure: SpreadFigure,
): [number, number] {
  const stretch = distribution === 'normal' ? FURTHEST_NORMAL / 3 : 1;
  const stretched = varied.map((source) => ({ ...source, plusMinus: source.plusMinus * stretch }));
  return [worstCase(joint, stretched, figure, -1, ROUGH), worstCase(joint, stretched, figure, 1, ROUGH)];
}

/** Makes a number of joints into the tallies. */
function createMaker(
  joint: Joint,
  varied: readonly Source[],
  random: Random,
  distribution: Distribution,
  tallies: Tallies,
): (count: number) => void {
  const moves = new Float64Array(joint.moveCount);
  const draws = new Float64Array(Math.max(1, varied.length) * DRAW);
  const places = Int32Array.from(varied, (source) => source.place);
  const scales = Float64Array.from(varied, ({ plusMinus }) => (distribution === 'normal' ? plusMinus / 3 : plusMinus));
  const figures: JointFigures = { clearance: 0, frontMost: 0, frontLeast: 0, bottomGap: 0 };
  const draw = distribution === 'normal' ? random.fillNormal : random.fillEven;
  const clearances = new Float64Array(DRAW);
  const least = new Float64Array(DRAW);
  const most = new Float64Array(DRAW);
  return (count) => {
    for (let start = 0; start < count; start += DRAW) {
      // Draw a batch of random numbers for all sources.
      draw(draws);
      const size = Math.min(DRAW, count - start);
      let next = 0;
      let together = 0;
      for (let i = 0; i < size; i++) {
        // Set every source off and measure the joint.
        for (let k = 0; k < places.length; k++) moves[places[k]!] = draws[next++]! * scales[k]!;
        joint.measure(moves, figures);
        const { clearance } = figures;
        clearances[i] = clearance;
        if (figures.bottomGap < -SAME_LENGTH) tallies.bottomedOut++;
        // Does it go together? Only then has its face a step to count.
        if (clearance >= -SAME_LENGTH) {
          tallies.verdicts.add(clearance, true);
          least[together] = figures.frontLeast;
          most[together++] = figures.frontMost;
          continue;
        }
        // It does not: whether at least the tip enters tells the two verdicts apart.
        joint.measure(moves, figures, 0);
        tallies.verdicts.add(clearance, figures.clearance >= -SAME_LENGTH);
      }
      tallies.clearance.add(clearances, size);
      tallies.frontLeast.add(least, together);
      tallies.frontMost.add(most, together);
    }
  };
}
