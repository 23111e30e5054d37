import { isGuideKnown } from './curve.ts';
import type { CurveSetting } from './set-up-report.ts';
import type { Judged } from './ways.ts';
import type { Work } from './work.ts';

/** Where the knife would have to be named: at the cut, or on the frame among the shop's, kept in the head with that profile. */
function missingKnife({ of, at }: Work): string {
  return of === 'frame' ? 'shop.knives' : `${at}.knife`;
}

/** What the set-up depends on and nobody said, by its place in the job or the shop file. */
export function listNotChecked(
  { work, machine, machineName, run, hole, pose }: Judged,
  curve: CurveSetting | undefined,
): string[] {
  const { cut, head, headName, knife } = work;
  const inMachine = (key: string) => `machines.${machineName}.${key}`;
  const missing: string[] = [];
  if (pose.seat === null) missing.push(knife === undefined ? missingKnife(work) : `knives.${cut.knife}.fromFace`);
  if (pose.seat === null && run === 'over' && hole === null) missing.push(inMachine('rings'));
  if (knife !== undefined && knife.presented === undefined && cut.tilt !== 0)
    missing.push(`knives.${cut.knife}.presented`);
  if (head.bore === undefined) missing.push(`heads.${headName}.bore`);
  if (machine.spindle === undefined) missing.push(inMachine('spindle'));
  if (machine.spindleLength === undefined) missing.push(inMachine('spindleLength'));
  if (machine.fenceGap === undefined && work.frame?.kind !== 'back edge') missing.push(inMachine('fenceGap'));
  if (machine.power === undefined) missing.push(inMachine('power'));
  if (cut.tilt === Math.PI / 2 && machine.tallFence === undefined) missing.push(inMachine('tallFence'));
  if (curve !== undefined && !isGuideKnown(machine)) missing.push(inMachine('bearings'));
  return missing;
}
