import { parseLength, type Report } from '@fielded/core';
import { useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useId } from 'preact/hooks';
import { useDesk } from '../../desk/context.ts';
import { entryText } from '../../entry/entry-text.ts';
import { useAmount } from '../../entry/use-amount.ts';
import { sayMisread } from '../../words/say-misread.ts';
import { Amount, Misread, NameChoice } from './ask-line.tsx';
import { Answer, AnswerButtons, type AnswerProps } from './figure-answer.tsx';
import { firstMove, movesOf } from './movable-sizes.ts';
import { proposeMove, SERVES, useShownProposal } from './proposal.ts';
import { useSolver } from './use-solver.ts';
import { Working } from './working.tsx';

const WANTED = [
  ['clearance', 'a clearance of'],
  ['visibleMargin', 'a margin of'],
  ['frontFace', 'a front face proud by'],
] as const;
type WantedName = (typeof WANTED)[number][0];

/** What is wanted and what may move for it; the move is shown, and drawn behind the joint, before it is made. */
export function AnyFigure({ close }: { close: () => void }): JSX.Element {
  const desk = useDesk();
  const id = useId();
  const { fit } = desk.job.value;
  const units = desk.units.value;
  const wanted = useSignal<WantedName>('clearance');
  const text = useAmount(fit.target);
  const by = useSignal(firstMove(desk));
  const value = parseLength(text.value, units);
  const { answer, long } = useMove(wanted.value, by.value, value);

  const choose = (name: WantedName) => {
    wanted.value = name;
    const now = { clearance: fit.target, visibleMargin: desk.report.value.fit.visibleMargin, frontFace: 0 }[name];
    text.value = entryText(now ?? 0, units);
  };
  return (
    <>
      <div class="ask">
        <NameChoice id={`${id}-what`} label="I want" names={WANTED} value={wanted.value} choose={choose} />
        <Amount name="How much" text={text} units={units} />
        <NameChoice
          id={`${id}-by`}
          label="and may move"
          names={movesOf(desk)}
          value={by.value}
          choose={(name) => {
            by.value = name;
          }}
        />
      </div>
      <Misread words={'read' in value ? sayMisread(text.value, value) : ''} />
      {'mm' in value && <MoveAnswer answer={answer} long={long} close={close} />}
    </>
  );
}

type Move = Pick<AnswerProps, 'solved' | 'proposal'>;

/** The move of a size that gives the figure wanted, drawn behind the joint; null until it is known, or where no length is asked for. */
function useMove(wanted: WantedName, by: string, value: ReturnType<typeof parseLength>) {
  const desk = useDesk();
  const units = desk.units.value;
  const mm = 'mm' in value ? value.mm : null;
  const solving = useSolver<Move>(
    mm === null
      ? null
      : async (ask) => {
          const job = { ...desk.job.peek(), units };
          const solved = await ask({ ask: 'one', job, wanted: { for: wanted, value: mm, by }, names: movesOf(desk) });
          const serves = servesFor(wanted, solved.value);
          return { solved, proposal: solved.move === null ? null : proposeMove(desk, solved.writes, serves) };
        },
    [units, wanted, by, mm],
  );
  useShownProposal(solving.answer?.proposal ?? null);
  return solving;
}

function MoveAnswer({ answer, long, close }: { answer: Move | null; long: boolean; close: () => void }): JSX.Element {
  if (answer !== null) return <Answer solved={answer.solved} proposal={answer.proposal} close={close} />;
  return (
    <>
      <div class="answer" role="status">
        {long && <Working />}
      </div>
      <AnswerButtons close={close} />
    </>
  );
}

/** Whether a joint has the figure that was wanted. */
function servesFor(wanted: WantedName, value: number): (report: Report) => boolean {
  return ({ fit }) => {
    const figure = wanted === 'frontFace' ? (fit.frontFace?.most ?? null) : fit[wanted];
    return figure !== null && Math.abs(figure - value) <= SERVES;
  };
}
