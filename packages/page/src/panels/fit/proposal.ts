import { evaluate, type FileValue, type Job, type Problem, type Report } from '@fielded/core';
import { useEffect } from 'preact/hooks';
import { useDesk } from '../../desk/context.ts';
import type { Desk } from '../../desk/desk.ts';
import { reportJoint } from '../../job/answer-joint.ts';
import { applyChanges, type JobChange } from '../../job/changes.ts';
import { pathOf } from '../../job/data.ts';
import { writeLength } from '../../job/write-length.ts';
import { plainFault } from '../../words/plain-fault.ts';
import { changesOf } from './written-changes.ts';

/** A move tried as it would be written: the job and the joint that come of it, and the problems that are new. */
export interface Proposal {
  readonly changes: readonly JobChange[];
  readonly job: Job;
  readonly report: Report;
  readonly come: readonly Problem[];
}

/** How near to what was wanted a move in round figures has to come, mm. */
export const SERVES = 0.05;

/**
 * The move for an answer of the solver: depth and reach written where the job keeps them, if the joint is then as wanted,
 * else as settings of the cuts, which is what the solver tried. null where neither can be written or serves.
 */
export function proposeMove(
  desk: Desk,
  writes: readonly FileValue[],
  serves: (report: Report) => boolean,
): Proposal | null {
  const units = desk.units.peek();
  const asSettings = (): readonly JobChange[] =>
    writes.map(({ path, mm }) => [pathOf(path), writeLength(mm, units, desk.job.peek().units)]);
  for (const changes of [changesOf(desk, writes), asSettings()]) {
    const read = desk.read(applyChanges(desk.doc.peek().data, changes)).job;
    if (read === null) continue;
    const job = { ...read, units };
    const report = reportJoint(job);
    if (serves(report)) return { changes, job, report, come: problemsThatCome(desk, job) };
  }
  return null;
}

function problemsThatCome(desk: Desk, { spread: _, ...job }: Job): Problem[] {
  const known = new Set(desk.problems.peek().map(({ code, at }) => `${code} ${at}`));
  return evaluate(job).problems.filter(({ code, at }) => !known.has(`${code} ${at}`));
}

/** Draws a proposal dashed over the joint as long as it is there; null draws none. */
export function useShownProposal(proposal: Proposal | null): void {
  const desk = useDesk();
  useEffect(() => {
    desk.proposal.value = proposal?.changes ?? null;
  }, [proposal, desk]);
  useEffect(
    () => () => {
      desk.proposal.value = null;
    },
    [desk],
  );
}

/** Makes a proposed move, one step of undo. */
export function makeMove(desk: Desk, { changes }: Proposal): void {
  const [fault] = desk.change(changes);
  desk.notice.value = fault
    ? { kind: 'fault', text: `Not moved: ${plainFault(fault, desk.units.peek())}` }
    : { kind: 'note', text: 'Moved. Undo takes it back.' };
}
