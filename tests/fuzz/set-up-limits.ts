// The limits of set-ups from the definitions of docs/formulas.md (U1 to U9), with nothing of the engine.
import type { Job, SetUp, Way } from '@fielded/core';

const CLOSE = 1e-5;
const CLEAR = 3;
const RIM_MOST = 70;
const MARK = 1.27;
const ENERGY = 40;

/**
 * Limits that a way breaks, by what the job and the shop say; null where they cannot be told without geometry: work held at a tilt,
 * whose height, hole and fence are left to other tests, breaks only those it is sure to.
 */
export function limitsBroken(
  job: Job,
  { cut: name, machine: machineName, run, rotation, works }: Way,
): string[] | null {
  const cut = job.cuts.find((each) => each.name === name)!;
  const shop = job.shop!;
  const [head, machine, knife] = [shop.heads[cut.head!]!, shop.machines[machineName]!, shop.knives[cut.knife!]!];
  const tilted = cut.tilt > 0 && cut.tilt < 1.5;
  const onEdge = cut.tilt > 1.5;
  const broken: string[] = [];
  const limit = (broke: boolean, what: string) => {
    if (broke) broken.push(what);
  };
  const sign = (word: string) => (word === 'under' || word === 'counterclockwise' ? 1 : -1);
  const ground = knife.groundFor ?? { run: cut.run, rotation: 'counterclockwise' };
  limit(sign(run) * sign(rotation) !== sign(ground.run) * sign(ground.rotation), 'the hand');
  limit(rotation === 'clockwise' && !machine.reversing, 'the rotation');
  limit(knife.presented !== undefined && Math.abs(knife.presented - cut.tilt) > 1e-9, 'how it was ground to be held');
  limit(onEdge && machine.tallFence === false, 'the tall fence');
  const lean = run === 'under' ? cut.tilt : -cut.tilt;
  limit(tilted && (lean < machine.tilt[0] - 1e-9 || lean > machine.tilt[1] + 1e-9), 'the tilt');
  limit(
    head.bore !== undefined && machine.spindle !== undefined && Math.abs(head.bore - machine.spindle) > 0.02,
    'the bore',
  );
  limit(machine.spindleLength !== undefined && head.height > machine.spindleLength + CLOSE, 'the spindle');
  limit(speedsOf(head, machine).length === 0, 'every speed');
  limit(head.feed === 'mechanical' && machine.feeds.length === 0, 'the feed');
  if (tilted) return works || broken.length > 0 ? broken : null;
  const out = onEdge ? cut.depth : cut.reach;
  const station = onEdge ? cut.reach : run === 'under' ? cut.depth : job.panel.thickness - cut.depth;
  const below = run === 'under' || onEdge;
  const seat =
    knife.fromFace === undefined ? null : below ? station + knife.fromFace - head.height : station - knife.fromFace;
  limit(seat !== null && (seat < machine.seat[0] - CLOSE || seat > machine.seat[1] + CLOSE), 'the seat');
  const hole = below ? head.cuttingDiameter : seat !== null && seat < 0 ? head.bodyDiameter : 0;
  limit(hole > 0 && hole + 2 * CLEAR > Math.max(machine.opening, ...machine.rings) + CLOSE, 'the hole');
  const toAxis = head.cuttingDiameter / 2 - out;
  limit(head.bodyDiameter / 2 >= toAxis - 1e-6, 'the body');
  limit(machine.nutDiameter / 2 >= toAxis - 1e-6, 'the nut');
  const gap = 2 * Math.sqrt(Math.max(0, out * (head.cuttingDiameter - out))) + 2 * CLEAR;
  limit(machine.fenceGap !== undefined && gap > machine.fenceGap + CLOSE, 'the fence');
  return broken;
}

function speedsOf(
  head: { cuttingDiameter: number; maxSpeed: number; minSpeed?: number },
  { speeds }: { speeds: readonly number[] },
): number[] {
  return speeds.filter(
    (n) => n <= head.maxSpeed && n >= (head.minSpeed ?? 0) && (Math.PI * head.cuttingDiameter * n) / 60_000 <= RIM_MOST,
  );
}

/** What is wrong with a set-up's own figures: speed, feed, marks, passes and power. */
export function limitsOfSetUp(job: Job, setUp: SetUp): string[] {
  const faults: string[] = [];
  const shop = job.shop!;
  const [head, machine] = [shop.heads[setUp.head]!, shop.machines[setUp.machine]!];
  const { speed, feedRate, passes, powerEnd, mark, problems } = setUp;
  const warned = (code: string) => problems.some((problem) => problem.code === code);
  if (!speedsOf(head, machine).includes(speed)) faults.push(`${speed} a minute is not allowed`);
  const z = head.jointed ? head.knives : 1;
  const pitch = (1000 * feedRate) / (speed * z);
  if (Math.abs(pitch - mark.pitch) > 1e-9) faults.push(`marks ${mark.pitch} apart, should be ${pitch}`);
  if (pitch > MARK + 1e-9 && !warned('coarse-marks')) faults.push(`marks ${pitch} apart, unsaid`);
  if (machine.feeds.length > 0 && setUp.curve?.alone !== true && !machine.feeds.includes(feedRate))
    faults.push(`feeds at ${feedRate}`);
  const most =
    machine.power === undefined ? Number.POSITIVE_INFINITY : (0.8 * machine.power * 60_000) / (2 * ENERGY * feedRate);
  const greatest = Math.max(...passes.map(({ area }) => area));
  if (greatest > 1.02 * most + 0.05 && !warned('motor-too-weak'))
    faults.push(`a pass of ${greatest} mm², up to ${most}`);
  const likely = (2 * ENERGY * greatest * feedRate) / 60;
  if (Math.abs(powerEnd.likely - likely) > 1e-6 * Math.max(1, likely))
    faults.push(`${powerEnd.likely} W, should be ${likely}`);
  if (passes.some(({ depth, area }, k) => !(area >= -1e-9) || depth < (passes[k - 1]?.depth ?? 0)))
    faults.push('passes out of order');
  if (
    setUp.turnedOver !==
    (setUp.run !== (shop.knives[setUp.knife!]?.groundFor?.run ?? job.cuts.find(({ name }) => name === setUp.cut)!.run))
  )
    faults.push('turned over, or not, by mistake');
  return faults;
}
