import { facePhrase, formatLength, type Solved } from '@fielded/core';
import type { JSX } from 'preact';
import { useDesk } from '../../desk/context.ts';
import { keepTogether } from '../../words/keep-together.ts';
import { movesOf } from './movable-sizes.ts';
import { makeMove, type Proposal } from './proposal.ts';

/** Under an answer: makes the move, where there is one to make (null for one that cannot be made), and cancels. */
export function AnswerButtons({ close, make }: { close: () => void; make?: (() => void) | null }): JSX.Element {
  return (
    <div class="buttons">
      {make !== undefined && (
        <button type="button" class="main" disabled={make === null} onClick={() => make?.()}>
          Make the move
        </button>
      )}
      <button type="button" class="quiet" onClick={close}>
        Cancel
      </button>
    </div>
  );
}

export interface AnswerProps {
  readonly solved: Solved;
  readonly proposal: Proposal | null;
  readonly close: () => void;
}

export function Answer({ solved, proposal, close }: AnswerProps): JSX.Element {
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
        <AnswerButtons close={close} />
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
            ? 'It is already there.'
            : keepTogether(`Take ${names} from ${say(now)} to ${say(solved.round?.setting ?? now)}: ${solved.move}.`)}
        </p>
        {solved.changes.length > 0 && (
          <ul class="changes">
            {solved.changes.map(({ name, before, after }) => (
              <li key={name}>
                {keepTogether(`${sayFigure(name)}: from ${sayChange(name, before)} to ${sayChange(name, after)}`)}
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
      <AnswerButtons close={close} make={moves ? make : null} />
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
  insertion: 'Should go in',
  bottomGap: 'Gap at the bottom',
  visibleMargin: 'Margin',
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
