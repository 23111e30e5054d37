import { parseLength, type Report } from '@fielded/core';
import { useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useDesk } from '../../desk/context.ts';
import type { Desk } from '../../desk/desk.ts';
import { useAmount } from '../../entry/use-amount.ts';
import { keepTogether } from '../../words/keep-together.ts';
import { sayMisread } from '../../words/say-misread.ts';
import { Amount, Misread, NameChoice } from './ask-line.tsx';
import { AnswerButtons } from './figure-answer.tsx';
import { depthSteps, sayDepths } from './move-words.ts';
import { makeMove, type Proposal, proposeMove, SERVES, useShownProposal } from './proposal.ts';
import type { AskSolver } from './solve-beside.ts';
import { useSolver } from './use-solver.ts';
import { sayWhyNot } from './why-not.ts';
import { Working } from './working.tsx';

type Face = 'flush' | 'proud' | 'recessed';

const FACES: readonly (readonly [Face, string])[] = [
  ['flush', 'flush'],
  ['proud', 'proud by'],
  ['recessed', 'recessed by'],
];
/** Nearer to flush than this, mm, flush is what is meant. */
const NEARLY_FLUSH = 0.35;

/** The answer: nothing to do, a move to make, or why there is none. */
type Answer =
  | { readonly kind: 'there' }
  | { readonly kind: 'move'; readonly proposal: Proposal }
  | { readonly kind: 'none'; readonly words: string };

/** The fit that the job aims at and the face that is wanted, by the depths of front and back at once. */
export function BothCuts({ front, back, close }: { front: string; back: string; close: () => void }): JSX.Element {
  const desk = useDesk();
  const units = desk.units.value;
  const now = middleOf(desk.report.peek());
  const face = useSignal<Face>(Math.abs(now) < NEARLY_FLUSH ? 'flush' : now > 0 ? 'proud' : 'recessed');
  const text = useAmount(rounded(Math.abs(now), units));
  const read = parseLength(text.value, units);
  const amount = face.value === 'flush' ? 0 : 'mm' in read ? read.mm : null;
  const wanted = amount === null ? null : face.value === 'recessed' ? -amount : amount;
  const { answer, long } = useSolver(wanted === null ? null : (ask) => workOut(ask, desk, wanted, front, back), [
    units,
    wanted,
    front,
    back,
  ]);
  const proposal = answer?.kind === 'move' ? answer.proposal : null;
  useShownProposal(proposal);
  return (
    <>
      <div class="ask">
        <NameChoice
          id="face-wanted"
          label="A sliding fit, the face"
          names={FACES}
          value={face.value}
          choose={(name) => {
            face.value = name;
          }}
        />
        {face.value !== 'flush' && <Amount name={`Face ${face.value} by`} text={text} units={units} />}
      </div>
      <Misread words={'read' in read && face.value !== 'flush' ? sayMisread(text.value, read) : ''} />
      <div class="answer" role="status">
        {long && <Working />}
        {answer !== null && <AnswerWords answer={answer} />}
      </div>
      <AnswerButtons
        close={close}
        make={
          proposal &&
          (() => {
            makeMove(desk, proposal);
            close();
          })
        }
      />
    </>
  );
}

/** One sentence: what goes from what to what, and what comes of it; or why nothing does. */
function AnswerWords({ answer }: { answer: Answer }): JSX.Element {
  const { job } = useDesk();
  if (answer.kind === 'there') return <p>It is already there.</p>;
  if (answer.kind === 'none') return <p class="fault">{answer.words}</p>;
  const { proposal } = answer;
  return (
    <>
      <p class="move">{sayDepths(depthSteps(job.value, proposal.job), proposal.report)}</p>
      {proposal.come.map((problem) => (
        <p key={`${problem.code} ${problem.at}`} class="fault">
          {keepTogether(problem.message)}
        </p>
      ))}
    </>
  );
}

async function workOut(ask: AskSolver, desk: Desk, wanted: number, front: string, back: string): Promise<Answer> {
  const job = { ...desk.job.peek(), units: desk.units.peek() };
  if (isThere(desk.report.peek(), wanted)) return { kind: 'there' };
  const by = [`${front}.depth`, `${back}.depth`] as const;
  const solved = await ask({ ask: 'two', job, wanted: { for: 'face', value: wanted, by } });
  if (solved.reason !== null) return { kind: 'none', words: await sayWhyNot(ask, job, solved) };
  const serves = ({ fit }: Report) =>
    Math.abs((fit.clearance ?? Infinity) - job.fit.target) <= SERVES &&
    fit.frontFace !== null &&
    Math.abs((fit.frontFace.least + fit.frontFace.most) / 2 - wanted) <= SERVES;
  const proposal = proposeMove(desk, solved.writes, serves);
  return proposal === null
    ? {
        kind: 'none',
        words: 'The depths that would do it cannot be cut with these shapes. Choose another shape, or ask for less.',
      }
    : { kind: 'move', proposal };
}

/** A length to begin with: in tenths of a millimetre, or in 64ths of an inch. */
function rounded(mm: number, units: Report['units']): number {
  const step = units === 'mm' ? 0.1 : 25.4 / 64;
  return Math.round(mm / step) * step;
}

/** How far the front face stands proud with the panel in the middle of its float, mm; 0 where there is no face. */
function middleOf({ fit }: Report): number {
  return fit.frontFace === null ? 0 : (fit.frontFace.least + fit.frontFace.most) / 2;
}

/** Whether the tongue slides and the face stands as wanted somewhere in the panel's float. */
function isThere({ fit }: Report, wanted: number): boolean {
  const { frontFace, verdict } = fit;
  return (
    verdict === 'sliding' && frontFace !== null && frontFace.least <= wanted + 1e-6 && frontFace.most >= wanted - 1e-6
  );
}
