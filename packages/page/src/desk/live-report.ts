import type { Job, Report, Units } from '@fielded/core';
import { computed, type ReadonlySignal, type Signal, signal } from '@preact/signals';
import { reportJoint } from '../job/answer-joint.ts';
import { attempt, fetchPart } from './fetch-part.ts';
import type { Notice } from './notice.ts';
import type { WholeAnswer } from './whole-report.ts';

/** The report that follows the job on the desk. */
export interface LiveReport {
  /** The whole report; the joint alone while `busy`, and until what answers the rest is fetched. */
  readonly report: ReadonlySignal<Report>;
  /** Works the whole report out in steps of a few milliseconds, so that it is ready when it is shown; ends where the job changes. */
  lookAhead(): Generator<void, void>;
}

/** What a report follows. */
interface Followed {
  readonly job: ReadonlySignal<Job>;
  readonly units: ReadonlySignal<Units>;
  /** Whether only the joint is wanted. */
  readonly busy: ReadonlySignal<boolean>;
  /** Whether problems need no words: nobody is shown any. */
  readonly mute: ReadonlySignal<boolean>;
  /** Where it is said what cannot be fetched. */
  readonly notice: Signal<Notice>;
}

/** Follows a job. */
export function followJob({ job, units, busy, mute, notice }: Followed): LiveReport {
  const whole = fetchWholeAnswer(notice);
  const shownJob = computed(() => ({ ...job.value, units: units.value }));
  const report = computed(() => {
    const shown = shownJob.value;
    const joint = reportJoint(mute.value ? { ...shown, mute: true } : shown);
    if (busy.value || !asksForMore(shown, joint)) return joint;
    const { value: answer } = whole.ready;
    if (answer !== null) return answer.answer(shown);
    whole.fetch();
    return withRestOpen(joint);
  });
  return {
    report,
    *lookAhead() {
      const shown = shownJob.peek();
      if (!asksForMore(shown, reportJoint(shown))) return;
      for (const step of whole.ready.peek()?.prepare(shown) ?? []) {
        yield step;
        if (shownJob.peek() !== shown) return;
      }
    },
  };
}

/** Whether a job asks for more than its joint, or has a problem that wants advice. */
function asksForMore({ spread, season, doors, cuts }: Job, joint: Report): boolean {
  const headed = cuts.some(({ head }) => head !== undefined);
  const more = spread !== undefined || season !== undefined || (doors ?? []).length > 0;
  return headed || more || joint.problems.length > 0;
}

/** What answers a whole job, fetched when one asks for it. */
interface LaterAnswer {
  /** null until it is fetched; signals that read it are then computed again. */
  readonly ready: ReadonlySignal<WholeAnswer | null>;
  /** Fetches it, once at a time; where that fails a notice says so, and the next call tries again. */
  fetch(): void;
}

const JOINT_ALONE =
  'The part of the page that checks knives, spread, seasons and doors could not be fetched. What you see is the joint alone.';

function fetchWholeAnswer(notice: Signal<Notice>): LaterAnswer {
  const ready = signal<WholeAnswer | null>(null);
  let fetching = false;
  return {
    ready,
    fetch() {
      if (fetching || ready.peek() !== null) return;
      fetching = true;
      void attempt(
        { notice },
        async () => {
          const { createWholeAnswer } = await fetchPart(() => import('./whole-report.ts'));
          ready.value = createWholeAnswer();
        },
        { missing: JOINT_ALONE },
      ).finally(() => {
        fetching = false;
      });
    },
  };
}

/** A joint whose other answers are not known yet: nothing says so far that it can be run. */
function withRestOpen(joint: Report): Report {
  const { statements } = joint;
  return statements.canBeRun === true ? { ...joint, statements: { ...statements, canBeRun: null } } : joint;
}
