import type { Voice } from '../problem/language.ts';
import { say, told } from '../problem/say.ts';
import type { Plan, Step } from '../setup/plan.ts';
import type { FrameCut, SetUp } from '../setup/set-up-report.ts';

/**
 * A step of the order of work in words.
 *
 * @example sayStep(plan.steps[0], plan, { units: 'mm' }) // 'Set up "main" for raise.'
 */
export function sayStep(step: Step, plan: Pick<Plan, 'setups' | 'steps'>, voice: Voice): string {
  const frame = plan.setups[step.setUp ?? -1]?.frame;
  const cuts = frame === undefined ? step.cuts.join(' + ') : say(`work.${frame.kind}`, {}, voice);
  const names = { machine: step.machine ?? '', cuts };
  const before = plan.steps.slice(0, plan.steps.indexOf(step)).filter(({ kind }) => kind === step.kind);
  const again = before.some(({ setUp }) => setUp === step.setUp);
  switch (step.kind) {
    case 'set-up':
      if (isSecond(step, plan)) return saySecondSetUp(plan.setups[step.setUp!]!, names, voice);
      return say(again ? 'step.set-up.again' : 'step.set-up', names, voice);
    case 'test-piece':
      return say(isSecond(step, plan) ? 'step.test-piece.second' : testPieceFor(step, plan, again), {}, voice);
    case 'measure': {
      if (frame !== undefined) return sayFrameMeasure(frame, plan.setups[step.setUp ?? -1]!, voice);
      const test = testPieceOf(step, plan);
      const how = step.cuts.length > 1 ? 'step.measure.stacked' : 'step.measure';
      // Set up again, its test piece is a fresh one, without the cuts before.
      const figures = test && { at: test.at, thickness: again ? test.alone : test.thickness };
      return figures ? say(how, figures, voice) : say('step.measure.other', {}, voice);
    }
    case 'run-edges':
      if (step.panels === 'frame') return sayFrameCut(frame, names, voice);
      return say('step.run-edges', { ...names, panels: sayPanels(step, voice) }, voice);
    case 'run-ends':
    case 'rip': {
      if (step.panels === 'frame') return sayFrameCut(frame, names, voice);
      const said = say(`step.${step.kind}`, { ...names, panels: sayPanels(step, voice) }, voice);
      const more = [
        ...(step.carrier.length > 0 ? [say('panels.carrier', { doors: listNames(step.carrier) }, voice)] : []),
        ...(step.shaped.length > 0 ? [say('panels.shaped', { doors: listNames(step.shaped) }, voice)] : []),
      ];
      return [said, ...more].join(' ');
    }
    case 'run-heads':
      return sayHeads(step, plan, { ...names, panels: sayPanels(step, voice) }, voice);
    default:
      return say(`step.${step.kind}`, {}, voice);
  }
}

/** The cope on ends, the sticking along edges, the back's arris round the inside of a frame, where no fence can stand. */
function sayFrameCut(cut: FrameCut | undefined, names: { machine: string; cuts: string }, voice: Voice): string {
  if (cut === undefined) return '';
  if (cut.kind === 'back edge') return say('step.back-edge', { ...names, ...cut }, voice);
  if (cut.kind === 'sticking') return say('step.sticking', { ...names, ...cut.groove }, voice);
  const { length: long, depth: deep } = cut.shoulder;
  const shoulder = deep > 0 ? [say('step.cope.shoulder', { long, deep }, voice)] : [];
  return [say('step.cope', names, voice), ...shoulder].join(' ');
}

function sayFrameMeasure(cut: FrameCut, { cuttingPoint }: SetUp, voice: Voice): string {
  if (cut.kind === 'cope') return say('step.measure.cope', { setback: cuttingPoint }, voice);
  if (cut.kind === 'sticking' && cut.coped) return say('step.measure.sticking', {}, voice);
  return say('step.measure.other', {}, voice);
}

/** Whether a step belongs to the second rotation of shaped heads. */
function isSecond({ setUp }: Step, { setups }: Pick<Plan, 'setups'>): boolean {
  return setups[setUp ?? -1]?.curve?.alone ?? false;
}

function saySecondSetUp(setUp: SetUp, names: { machine: string; cuts: string }, voice: Voice): string {
  const { knife, head, run, rotation, feedDirection } = setUp;
  const figures = {
    ...names,
    knife: knife ?? '',
    head,
    run: told(`run.${run}`, {}),
    rotation: told(`rotation.${rotation}`, {}),
    feed: told(feedDirection === 'left to right' ? 'feed.left-to-right' : 'feed.right-to-left', {}),
  };
  return say('step.set-up.second', figures, voice);
}

/** The half of the shaped heads that a set-up runs, or the whole and which half of it tears. */
function sayHeads(
  { setUp, shoulder }: Step,
  { setups }: Pick<Plan, 'setups'>,
  names: { machine: string; cuts: string; panels: string },
  voice: Voice,
): string {
  const curve = setups[setUp ?? -1]!.curve!;
  if (shoulder === null || shoulder === 'both')
    return say('step.run-heads', { ...names, shoulder: told(`half.${curve.tears}`, {}) }, voice);
  const half = { ...names, shoulder: told(`half.${shoulder}`, {}) };
  return say(curve.alone ? 'step.run-heads.second' : 'step.run-heads.first', half, voice);
}

/** A fresh piece for the first cut of the panel, then the same piece again; a spare where everything is set up anew. */
function testPieceFor({ setUp, kind }: Step, { setups, steps }: Pick<Plan, 'setups' | 'steps'>, again: boolean) {
  const frame = setups[setUp ?? -1]?.frame?.kind;
  if (frame !== undefined)
    return frame === 'cope'
      ? 'step.test-piece.cope'
      : frame === 'sticking'
        ? 'step.test-piece.frame'
        : 'step.test-piece.back-edge';
  if (again) return 'step.test-piece.again';
  const first = steps.find((each) => each.kind === kind && setups[each.setUp ?? -1]?.of === 'panel');
  return first?.setUp !== setUp ? 'step.test-piece.next' : 'step.test-piece';
}

/** What the test piece should measure: with both heads at once, after both. */
function testPieceOf({ cuts, setUp }: Step, { setups }: Pick<Plan, 'setups'>): SetUp['testPiece'] {
  const own = setups[setUp ?? -1];
  // The second rotation of a curve has a test piece of its own.
  const together = own?.curve?.alone
    ? [own]
    : setups.filter(({ cut, of, curve }) => of === 'panel' && cuts.includes(cut) && !curve?.alone);
  return (together.at(-1) ?? setups[setUp ?? -1])?.testPiece ?? null;
}

/** What goes through in a step: panels by themselves, blanks, or what was ripped from them. */
function sayPanels({ kind, panels, doors, blanks }: Step, voice: Voice): string {
  if (doors.length === 0) return say('panels.all', {}, voice);
  const figures = { doors: listNames(doors) };
  if (panels === 'narrow') return say(kind === 'run-edges' ? 'panels.ripped' : 'panels.narrow', figures, voice);
  if (blanks.length === 0) return say('panels.of', figures, voice);
  const single = doors.filter((door) => !blanks.includes(door));
  return say('panels.mixed', { doors: listNames(single), blanks: listNames(blanks) }, voice);
}

/** Doors by name; of many, the first and how many more. */
function listNames(names: readonly string[]): string {
  const MOST = 6;
  const shown = names.slice(0, MOST).join(', ');
  return names.length > MOST ? `${shown} + ${names.length - MOST}` : shown;
}

/** What a set-up is for: a cut by its name, or the work on a frame. */
export function sayCut({ cut, frame }: Pick<SetUp, 'cut' | 'frame'>, voice: Voice): string {
  return frame === undefined ? cut : say(`work.${frame.kind}`, {}, voice);
}

/** What was not checked, in words, and what to measure to have it checked. */
export function sayNotChecked(path: string, setUp: SetUp, voice: Voice): string {
  const { machine, head, knife } = setUp;
  const key = path.slice(path.lastIndexOf('.') + 1);
  switch (key) {
    case 'fromFace':
    case 'presented':
      return say(`unknown.${key}`, { knife: knife ?? '', key }, voice);
    case 'knives':
      return say('unknown.knives', { cut: sayCut(setUp, voice), head, key: 'fromFace' }, voice);
    case 'bore':
      return say('unknown.bore', { head, key }, voice);
    case 'spindle':
    case 'spindleLength':
    case 'fenceGap':
    case 'power':
    case 'tallFence':
      return say(`unknown.${key}`, { machine, key }, voice);
    case 'rings':
    case 'bearings':
      return say(`unknown.${key}`, { machine }, voice);
    default:
      return say('unknown.knife', {}, voice);
  }
}

/** What is checked before the spindle starts, in order (shaper makers' manuals; common practice); null: of whatever set-up. */
export function sayStartChecks(setUp: SetUp | null, voice: Voice): string[] {
  return [
    say('check.isolated', {}, voice),
    say('check.marks', {}, voice),
    say('check.knives', {}, voice),
    say('check.nut', {}, voice),
    say('check.ring', {}, voice),
    say(guardsOf(setUp), {}, voice),
    setUp === null ? say('check.rotation.each', {}, voice) : sayRotation(setUp, voice),
    say('check.by-hand', {}, voice),
    say('check.test-piece', {}, voice),
  ];
}

function guardsOf(setUp: SetUp | null) {
  if (setUp?.frame?.kind === 'cope') return 'check.guards.carrier';
  return setUp?.frame?.kind === 'back edge' ? 'check.guards.bearing' : 'check.guards';
}

function sayRotation({ rotation, feedDirection }: SetUp, voice: Voice): string {
  const feed = told(feedDirection === 'left to right' ? 'feed.left-to-right' : 'feed.right-to-left', {});
  return say('check.rotation', { rotation: told(`rotation.${rotation}`, {}), feed }, voice);
}

/** What goes before every figure of a plan, and what keeps hands whole (12 in: shaper makers' manuals). */
export function sayPlanCaution(voice: Voice): string {
  return say('plan.caution', { hands: voice.units === 'in' ? 304.8 : 300 }, voice);
}
