import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import {
  evaluate,
  evaluateJoint,
  type Job,
  readFileData,
  readJob,
  readShop,
  type Shop,
  simulateJob,
} from '@fielded/core';
import { depthPath, pathData } from '@fielded/geometry';
import { draw } from '@fielded/render';
import { makeEdge } from '../../packages/core/dist/joint/edge.js';
import { outlinePath } from '../../packages/core/dist/joint/outline-path.js';
import { cutSection } from '../../packages/core/dist/joint/section.js';
import { knifeFace } from '../../packages/core/dist/knife/knife-face.js';
import { seeProfile } from '../../packages/core/dist/knife/seen-profile.js';
import { steelOutline } from '../../packages/core/dist/knife/steel-outline.js';
import { sweepCut } from '../../packages/core/dist/machining/sweep.js';
import { profileChain } from '../../packages/core/dist/profile/chain.js';
import { joinFrame } from '../../packages/core/dist/report/join.js';
import { tryJob } from '../../packages/core/dist/report/try-job.js';
import { manyPieces } from '../support/many-pieces.ts';
import { timeEach } from '../support/timing.ts';

// The parts are those that were built, as they are published: what runs a benchmark's own sources puts a call into every closure.

/** What one call takes, warm, ms, with the goal it is held to. */
export interface Warm {
  readonly what: string;
  readonly ms: number;
  readonly goal: number | null;
}

/** Times the calls a page or a long list of jobs makes over and over. */
export function timeWarmCalls(): Warm[] {
  const read = (path: string) =>
    readFileSync(fileURLToPath(new URL(`../../examples/${path}`, import.meta.url)), 'utf8');
  const text = read('ogee-cove/job.yaml');
  let reads = 0;
  const job = readJob(text).job!;
  const report = evaluate(job);
  const [twelve, many] = [manyPieces(12, 12), manyPieces(500, 500)];
  const [twelveFit, manyFit] = [inWideGroove(twelve), inWideGroove(many)];
  return [
    // Another comment each time: a text that was read before is not parsed again.
    { what: 'read the first example', ms: timeEach(() => readJob(`${text}# ${reads++}\n`).faults.length), goal: null },
    {
      what: 'its YAML alone, as plain data',
      ms: timeEach(() => readFileData(`${text}# ${reads++}\n`).faults.length),
      goal: null,
    },
    { what: 'evaluate the first example', ms: timeEach(() => evaluate(job).section.removedArea), goal: null },
    {
      what: 'evaluate 12 pieces that fit, the whole report',
      ms: timeEach(() => evaluate(twelveFit).section.removedArea),
      goal: 0.05,
    },
    {
      what: 'evaluate 500 pieces that fit, the whole report',
      ms: timeEach(() => evaluate(manyFit).section.removedArea),
      goal: 0.6,
    },
    {
      what: 'evaluate 12 pieces that stop short, the whole report with advice',
      ms: timeEach(() => evaluate(twelve).section.removedArea),
      goal: 0.05,
    },
    {
      what: 'evaluate 500 pieces that stop short, the whole report with advice',
      ms: timeEach(() => evaluate(many).section.removedArea),
      goal: 0.6,
    },
    {
      what: 'the joint alone, 12 pieces and a shop, as in a drag',
      ms: timeEach(() => evaluateJoint(withHead(twelve)).section.removedArea),
      goal: 0.05,
    },
    { what: 'knife outline of 12 pieces, fitted', ms: timeEach(() => fitKnife(manyPieces(20, 12))), goal: 5 },
    {
      what: 'draw the joint of the first example',
      ms: timeEach(() => draw(report, { view: 'joint' }).length),
      goal: 2,
    },
  ];
}

/** The job with a groove as wide as its tongue needs, so that it fits and no advice is looked for. */
export function inWideGroove(job: Job): Job {
  const { frame, fit, panel } = job;
  const width = evaluateJoint(job).tongue.grooveNeeded! + fit.target;
  const wide = { ...job, frame: { ...frame, thickness: 2 * panel.thickness, groove: { ...frame.groove, width } } };
  const { problems } = evaluate(wide);
  if (problems.length > 0) throw new RangeError(`it was to fit: ${problems.map(({ message }) => message).join(' ')}`);
  return wide;
}

/** What a report of 12 and of 500 pieces is made of, ms. */
export interface ReportPart {
  readonly what: string;
  readonly twelve: number;
  readonly many: number;
}

/** Times the parts of a report one by one, and one remedy tried out as advice has it done. */
export function timeReportParts(): ReportPart[] {
  const parts = [12, 500].map((pieces) => {
    const stopsShort = manyPieces(pieces, pieces);
    const job = inWideGroove(stopsShort);
    const edge = makeEdge(job.panel, job.cuts);
    const swept = edge.cuts.map(({ sweep }) => sweep.swept);
    const shown = () =>
      outlinePath(edge.section).length + depthPath(swept[0]!).length + pathData(swept[1]!, 20, false).length;
    return {
      section: timeEach(() => makeEdge(job.panel, job.cuts).section.wood.area),
      fit: timeEach(() => joinFrame(job, edge).fit.clearance!),
      shown: timeEach(shown),
      tried: timeEach(() => tryJob(stopsShort, new Map()).fit().length),
    };
  });
  const row = (what: string, part: keyof (typeof parts)[number]): ReportPart => ({
    what,
    twelve: parts[0]![part],
    many: parts[1]![part],
  });
  return [
    row('the section', 'section'),
    row('tongue and fit', 'fit'),
    row('section and cuts as path data', 'shown'),
    row('one remedy tried out', 'tried'),
  ];
}

/** What the section of 12 pieces is made of, ms: the cuts swept to their settings, and the stock cut strip by strip. */
export function timeSectionParts(): { readonly whole: number; readonly sweeps: number; readonly strips: number } {
  const job = manyPieces(12, 12);
  const { cuts, section } = makeEdge(job.panel, job.cuts);
  const regions = cuts.map(({ cut, sweep }) => ({ side: cut.side, edge: sweep.swept }));
  return {
    whole: timeEach(() => makeEdge(job.panel, job.cuts).section.wood.area),
    sweeps: timeEach(() => job.cuts.reduce((sum, cut) => sum + sweepCut(cut, cut.depth).swept.length, 0)),
    strips: timeEach(() => cutSection(section.thickness, section.width, regions).wood.area),
  };
}

/** The job with a head for each of its cuts. */
function withHead(job: Job): Job {
  return { ...job, cuts: job.cuts.map((cut) => ({ ...cut, head: 'small' })), shop: HEAD_ALONE };
}

const HEAD_ALONE: Shop = readShop(
  'fielded: 1\nheads: { small: { cuttingDiameter: 160, bodyDiameter: 70, height: 60, rake: 18, maxSpeed: 9000 } }',
).shop!;

/** The outline on the steel of a raked head for a job's first cut, fitted with arcs. */
function fitKnife(job: Job): number {
  const radians = Math.PI / 180;
  const face = knifeFace({ cuttingDiameter: 160, rake: 18 * radians, shear: 0 });
  return steelOutline(seeProfile(profileChain(job.cuts[0]!.profile), 0), face).chain.length;
}

/** Simulated joints a second on one core, for the first example with every ± given. */
export function jointsPerSecond(): number {
  const path = fileURLToPath(new URL('../../examples/ogee-cove/job.yaml', import.meta.url));
  const spread = { thickness: 0.15, height: 0.1, fence: 0.2, grooveWidth: 0.1, film: 0.02 };
  const job = { ...readJob(readFileSync(path, 'utf8')).job!, spread };
  const count = 1_000_000;
  const run = () => {
    const simulation = simulateJob(job, { count, seed: 1, distribution: 'normal' });
    while (!simulation.next().done);
    return 1;
  };
  return (count / timeEach(run)) * 1000;
}
