import type { Said, Subject } from '../problem/problem.ts';
import { told } from '../problem/say.ts';
import type { Machine } from '../shop/shop.ts';
import type { HeadPose } from './pose.ts';
import type { Hole, Rotation, Run } from './set-up-report.ts';
import type { ChosenSpeed } from './speed.ts';
import type { Work } from './work.ts';

/** One way of making a cut with its figures, before it is judged. */
export interface Trial {
  readonly work: Work;
  readonly machineName: string;
  readonly machine: Machine;
  readonly run: Run;
  readonly rotation: Rotation;
  readonly pose: HeadPose;
  readonly hole: Hole | null;
  readonly speed: ChosenSpeed | undefined;
}

/** Lengths that differ by less than this, mm, are the same to any rule. */
export const SAME = 1e-6;

/** What a problem of a way is about. */
export function aboutTrial({ work, machineName }: Trial): { readonly about: Subject } {
  const { cut, headName } = work;
  return { about: { cut: cut.name, head: headName, machine: machineName } };
}

/** The names that a problem of a way is told with. */
export function namesOf({ work, machineName, run }: Trial): {
  readonly cut: string;
  readonly machine: string;
  readonly head: string;
  readonly run: Said;
} {
  return { cut: work.cut.name, machine: machineName, head: work.headName, run: told(`run.${run}`, {}) };
}
