import { evaluateWithPlan, type Job, readJob, type SetUp, type StackReport, type Way } from '@fielded/core';
import { Random } from '../support/random.ts';
import type { Finding } from './fuzz-jobs.ts';
import { judgeCase, notNumbers, refusedInWords } from './judge-case.ts';
import { randomDoors } from './random-doors.ts';
import { randomHead, randomKnife, randomMachine } from './random-shop.ts';
import { limitsBroken, limitsOfSetUp } from './set-up-limits.ts';

/** Odd shops and one to three cuts: what is called working keeps every limit, worked out again; what is not breaks one. */
export function fuzzPlans(seed: number): Finding[] {
  return judgeCase(seed, () => {
    const { job, faults } = readPlanJob(new Random(seed));
    if (job === null) return refusedInWords(faults);
    const { planned } = evaluateWithPlan(job);
    if (planned === undefined) return [];
    const { plan } = planned;
    return [
      ...notNumbers(plan, 'plan'),
      ...plan.ways.flatMap((way) => wayFaults(job, way)),
      ...plan.setups.flatMap((setUp) => setUpFaults(job, setUp, plan.ways, plan.stack)),
      ...(plan.stack === null ? [] : stackFaults(job, plan.stack)),
      ...(plan.steps.some(({ setUp }) => setUp !== null && plan.setups[setUp] === undefined)
        ? ['a step of no set-up']
        : []),
      ...(plan.correction.length === plan.setups.length ? [] : ['corrections of other set-ups']),
    ];
  });
}

export function readPlanJob(random: Random) {
  const named = <T>(count: number, of: (k: number) => T) =>
    Object.fromEntries(Array.from({ length: count }, (_, k) => [String.fromCharCode(97 + k), of(k)]));
  const count = 1 + Math.floor(random.unit() * 3);
  const presented = Array.from({ length: count }, () =>
    random.oneOf(['flat', 'flat', 'flat', 'on-edge', random.between(5, 60)]),
  );
  const shop = {
    fielded: 1,
    heads: named(count, () => randomHead(random)),
    machines: named(1 + Math.floor(random.unit() * 3), () => randomMachine(random)),
    knives: named(count, (k) => randomKnife(random, 'abc'[k]!, k === 0 ? 9 : 6, presented[k])),
  };
  const cuts = presented.map((held, k) => ({
    name: `cut ${k}`,
    side: k === 0 ? 'front' : random.oneOf(['front', 'back']),
    knife: 'abc'[k],
    run: held === 'on-edge' ? undefined : random.oneOf(['under', 'over', undefined]),
    presented: held,
  }));
  const job = {
    fielded: 1,
    shop: './shop.yaml',
    panel: {
      thickness: random.oneOf([18, 20, random.between(16, 28)]),
      width: random.unit() < 0.3 ? random.between(100, 500) : undefined,
    },
    frame: { thickness: 30, groove: { width: 6.4, depth: 11, setback: 7.5 }, swellGap: 2 },
    cuts,
    doors: random.unit() < 0.15 ? randomDoors(random, 2) : undefined,
  };
  return readJob(JSON.stringify(job), { loadShop: () => JSON.stringify(shop) });
}

function wayFaults(job: Job, way: Way): string[] {
  const broken = limitsBroken(job, way);
  const name = `${way.cut} on ${way.machine}, ${way.run} and ${way.rotation}`;
  if (broken === null) return [];
  if (way.works && broken.length > 0) return [`${name} works, and breaks ${broken}`];
  if (!way.works && broken.length === 0) return [`${name} breaks nothing, and is refused for ${way.against}`];
  return [];
}

function setUpFaults(job: Job, setUp: SetUp, ways: readonly Way[], stack: StackReport | null): string[] {
  const faults = limitsOfSetUp(job, setUp).map((what) => `${setUp.cut}: ${what}`);
  const together = stack?.works === true;
  const way = ways.find(
    ({ cut, machine, run, rotation }) =>
      cut === setUp.cut && machine === setUp.machine && run === setUp.run && rotation === setUp.rotation,
  );
  if (!together && way?.works !== true) faults.push(`${setUp.cut} is set up in a way that does not work`);
  return faults;
}

/** Both heads at once: one fence, opposite hands, room on the spindle, a speed both may turn at. */
function stackFaults(job: Job, stack: StackReport): string[] {
  if (!stack.works) return [];
  const faults: string[] = [];
  const shop = job.shop!;
  const cuts = [stack.lower, stack.upper].map((name) => job.cuts.find((cut) => cut.name === name)!);
  const heads = cuts.map(({ head }) => shop.heads[head!]!);
  const [lower, upper] = cuts as [(typeof cuts)[0], (typeof cuts)[0]];
  const machine = shop.machines[stack.machine!]!;
  const from = cuts.map(({ knife }) => shop.knives[knife!]!.fromFace!);
  const spacer = job.panel.thickness - lower.depth - upper.depth - from[0]! - from[1]!;
  if (Math.abs(spacer - stack.spacer!) > 1e-9 || spacer < -1e-9)
    faults.push(`a spacer of ${stack.spacer}, should be ${spacer}`);
  const fences = cuts.map(({ reach }, k) => heads[k]!.cuttingDiameter / 2 - reach);
  if (Math.abs(fences[0]! - fences[1]!) > 0.01 + 1e-9) faults.push('two fences');
  if (
    machine.spindleLength !== undefined &&
    heads[0]!.height + heads[1]!.height + spacer > machine.spindleLength + 1e-5
  )
    faults.push('a spindle too short for both');
  if (heads.some((head) => stack.speed! > head.maxSpeed || stack.speed! < (head.minSpeed ?? 0)))
    faults.push('a speed that one head may not turn at');
  if (stack.rotation === 'clockwise' && !machine.reversing) faults.push('a spindle that does not turn so');
  return faults;
}
