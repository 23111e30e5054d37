import { parseLength, type Report } from '@fielded/core';
import { useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useEffect, useId } from 'preact/hooks';
import { useDesk } from '../../desk/context.ts';
import { entryText } from '../../entry/entry-text.ts';
import { sayMisread } from '../../words/say-misread.ts';
import { Answer, AnswerButtons } from './figure-answer.tsx';
import { firstMove, movesOf } from './movable-sizes.ts';
import { proposeMove, SERVES, showProposal } from './proposal.ts';
import { useSolver } from './use-solver.ts';
import { Working } from './working.tsx';

const WANTED = [
  ['clearance', 'a clearance of'],
  ['visibleMargin', 'a visible margin of'],
  ['frontFace', 'a front face proud by'],
] as const;
type WantedName = (typeof WANTED)[number][0];

/** What is wanted and what may move for it; the move is shown, and drawn behind the joint, before it is made. */
export function AnyFigure({ close }: { close: () => void }): JSX.Element {
  const desk = useDesk();
  const id = useId();
  const { fit } = desk.job.value;
  const wanted = useSignal<WantedName>('clearance');
  const text = useSignal(entryText(fit.target, desk.units.value));
  const by = useSignal(firstMove(desk));
  const value = parseLength(text.value, desk.units.value);
  const units = desk.units.value;
  const { answer, long } = useSolver(
    'mm' in value
      ? async (ask) => {
          const asked = { for: wanted.value, value: value.mm, by: by.value };
          const job = { ...desk.job.peek(), units };
          const solved = await ask({ ask: 'one', job, wanted: asked, names: movesOf(desk) });
          const serves = servesFor(asked.for, solved.value);
          return { solved, proposal: solved.move === null ? null : proposeMove(desk, solved.writes, serves) };
        }
      : null,
    [units, wanted.value, by.value, text.value],
  );
  const proposal = answer?.proposal ?? null;
  useEffect(() => showProposal(desk, proposal), [proposal, desk]);
  useEffect(() => () => showProposal(desk, null), [desk]);

  const choose = (name: WantedName) => {
    wanted.value = name;
    const now = { clearance: fit.target, visibleMargin: desk.report.value.fit.visibleMargin, frontFace: 0 }[name];
    text.value = entryText(now ?? 0, desk.units.value);
  };
  return (
    <>
      <div class="ask">
        <NameChoice
          id={`${id}-what`}
          label="I want"
          names={WANTED}
          value={wanted.value}
          choose={(name) => choose(name as WantedName)}
        />
        <span class="line">
          <input
            type="text"
            inputMode={desk.units.value === 'mm' ? 'decimal' : 'text'}
            autocomplete="off"
            aria-label="How much"
            value={text.value}
            onInput={(event) => {
              text.value = event.currentTarget.value;
            }}
          />
          <span class="unit">{desk.units.value}</span>
        </span>
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
      {'read' in value ? (
        <p class="fault" role="alert">
          {sayMisread(text.value, value)}
        </p>
      ) : answer !== null ? (
        <Answer solved={answer.solved} proposal={proposal} close={close} />
      ) : (
        <>
          <div class="answer" role="status">
            {long && <Working />}
          </div>
          <AnswerButtons close={close} />
        </>
      )}
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

interface NameChoiceProps {
  readonly id: string;
  readonly label: string;
  /** Names with the words for them. */
  readonly names: readonly (readonly [string, string])[];
  readonly value: string;
  readonly choose: (name: string) => void;
}

function NameChoice({ id, label, names, value, choose }: NameChoiceProps): JSX.Element {
  return (
    <>
      <label for={id}>{label}</label>
      <select id={id} value={value} onChange={(event) => choose(event.currentTarget.value)}>
        {names.map(([name, words]) => (
          <option key={name} value={name}>
            {words}
          </option>
        ))}
      </select>
    </>
  );
}
