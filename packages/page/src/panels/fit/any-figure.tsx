import { facePhrase, formatLength, parseLength, type Report, type Solved } from '@fielded/core';
import { useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useEffect, useId } from 'preact/hooks';
import { useDesk } from '../../desk/context.ts';
import type { Desk } from '../../desk/desk.ts';
import { entryText } from '../../entry/entry-text.ts';
import { keepTogether } from '../../words/keep-together.ts';
import { sayMisread } from '../../words/say-misread.ts';
import { makeMove, type Proposal, proposeMove, SERVES, showProposal } from './proposal.ts';
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
        <label for={`${id}-what`}>I want</label>
        <select
          id={`${id}-what`}
          value={wanted.value}
          onChange={(event) => choose(event.currentTarget.value as WantedName)}
        >
          {WANTED.map(([name, words]) => (
            <option key={name} value={name}>
              {words}
            </option>
          ))}
        </select>
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
        <label for={`${id}-by`}>and may move</label>
        <select
          id={`${id}-by`}
          value={by.value}
          onChange={(event) => {
            by.value = event.currentTarget.value;
          }}
        >
          {movesOf(desk).map(([name, words]) => (
            <option key={name} value={name}>
              {words}
            </option>
          ))}
        </select>
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
          <div class="buttons">
            <button type="button" class="quiet" onClick={close}>
              Cancel
            </button>
          </div>
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

interface AnswerProps {
  readonly solved: Solved;
  readonly proposal: Proposal | null;
  readonly close: () => void;
}

function Answer({ solved, proposal, close }: AnswerProps): JSX.Element {
  const desk = useDesk();
  const say = (mm: number | string | null) =>
    typeof mm === 'number' ? formatLength(mm, desk.units.value) : String(mm ?? 'none').replaceAll('-', ' ');
  /** A face stands proud or recessed; a figure less than nothing would say neither. */
  const sayChange = (name: string, value: number | string | null) =>
    name.includes('Face') && typeof value === 'number'
      ? facePhrase({ least: value, most: value }, desk.units.value)
      : say(value);
  const names = movesOf(desk).find(([name]) => name === solved.by)?.[1] ?? solved.by;
  const moves = solved.setting !== null && solved.move !== null;
  const refused = solved.setting === null || (moves && proposal === null);
  if (refused)
    return (
      <>
        <div class="answer" role="status">
          <p class="fault">
            {keepTogether(
              solved.reason ?? 'That cannot be cut with this shape. Choose another shape, or something else to move.',
            )}
          </p>
        </div>
        <div class="buttons">
          <button type="button" class="quiet" onClick={close}>
            Cancel
          </button>
        </div>
      </>
    );
  const make = () => {
    if (proposal !== null) makeMove(desk, proposal);
    close();
  };
  const now = (solved.setting ?? 0) - (solved.change ?? 0);
  return (
    <>
      <div class="answer" role="status">
        <p class="move">
          {solved.move === null
            ? 'It is already there: nothing needs moving.'
            : keepTogether(`Take ${names} from ${say(now)} to ${say(solved.round?.setting ?? now)}: ${solved.move}.`)}
        </p>
        {solved.changes.length > 0 && (
          <ul class="changes">
            {solved.changes.map(({ name, before, after }) => (
              <li key={name}>
                {keepTogether(`${sayFigure(name)}: ${sayChange(name, before)} → ${sayChange(name, after)}`)}
              </li>
            ))}
          </ul>
        )}
        {solved.problems.come.map(({ code, message }) => (
          <p key={code} class="fault">
            {keepTogether(message)}
          </p>
        ))}
      </div>
      <div class="buttons">
        <button type="button" class="main" disabled={!moves} onClick={make}>
          Make the move
        </button>
        <button type="button" class="quiet" onClick={close}>
          Cancel
        </button>
      </div>
    </>
  );
}

const CHANGE_WORDS: Readonly<Record<string, string>> = {
  verdict: 'Verdict',
  clearance: 'Clearance',
  thicknessAtTip: 'Tongue at tip',
  thicknessAtMouth: 'Tongue at mouth',
  grooveNeeded: 'Groove needed',
  deepestInsertion: 'Goes in at most',
  insertion: 'Insertion',
  bottomGap: 'Gap at the bottom',
  visibleMargin: 'Visible margin',
  'frontFace.most': 'Front face, pressed forward',
  'frontFace.least': 'Front face, pressed back',
  'backFace.most': 'Back face, pressed back',
  'backFace.least': 'Back face, pressed forward',
};

/** What a figure of the solver is called here. @example sayFigure('season.driest.clearance') // 'Clearance at the driest' */
function sayFigure(name: string): string {
  const [, season, figure] = /^season\.(driest|dampest)\.(\w+)/.exec(name) ?? [];
  const words = CHANGE_WORDS[figure ?? name] ?? name;
  return season === undefined ? words : `${words} at the ${season}`;
}

/** What may move: every cut's depth and reach, the stock and the groove. */
function movesOf(desk: Desk): (readonly [string, string])[] {
  const cuts = desk.job.value.cuts;
  return [
    ...cuts.map(({ name }) => [`${name}.depth`, `the depth of the ${name}`] as const),
    ['panel.thickness', 'the stock'] as const,
    ['frame.groove.width', 'the width of the groove'] as const,
    ['frame.groove.setback', 'the setback of the groove'] as const,
    ...cuts.map(({ name }) => [`${name}.reach`, `the reach of the ${name}`] as const),
  ];
}

/** A cut on the back sizes the tongue and shows least. */
function firstMove(desk: Desk): string {
  const { cuts } = desk.job.value;
  const cut = cuts.find(({ side }) => side === 'back') ?? cuts[0];
  return cut === undefined ? 'panel.thickness' : `${cut.name}.depth`;
}
