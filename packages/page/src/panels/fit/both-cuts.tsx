import { parseLength, type Report, type SolvedByTwo, solveByTwo } from '@fielded/core';
import { useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useEffect, useMemo } from 'preact/hooks';
import { useDesk } from '../../desk/context.ts';
import { entryText } from '../../entry/entry-text.ts';
import { keepTogether } from '../../words/keep-together.ts';
import { sayMisread } from '../../words/say-misread.ts';
import { changesOf } from './written-changes.ts';

type Face = 'flush' | 'proud' | 'recessed';

const FACES: readonly (readonly [Face, string])[] = [
  ['flush', 'flush'],
  ['proud', 'proud by'],
  ['recessed', 'recessed by'],
];
/** Nearer to flush than this, mm, flush is what is meant. */
const NEARLY_FLUSH = 0.35;

/** The fit that the job aims at and the face that is wanted, by the depths of front and back at once. */
export function BothCuts({ front, back, close }: { front: string; back: string; close: () => void }): JSX.Element {
  const desk = useDesk();
  const units = desk.units.value;
  const now = middleOf(desk.report.peek());
  const face = useSignal<Face>(Math.abs(now) < NEARLY_FLUSH ? 'flush' : now > 0 ? 'proud' : 'recessed');
  const text = useSignal(entryText(Math.round(Math.abs(now) * 10) / 10, units));
  const read = parseLength(text.value, units);
  const job = { ...desk.job.value, units };
  const amount = face.value === 'flush' ? 0 : 'mm' in read ? read.mm : null;
  const wanted = amount === null ? null : face.value === 'recessed' ? -amount : amount;
  const there = wanted !== null && isThere(desk.report.value, wanted);
  const solved = useMemo(
    () =>
      wanted === null || there
        ? null
        : solveByTwo(
            job,
            { for: 'face', value: wanted, by: [`${front}.depth`, `${back}.depth`] },
            { ...job, namePlace: (path) => `the depth of the ${path === `${front}.depth` ? front : back}` },
          ),
    [desk.job.value, units, wanted, there, front, back],
  );
  useEffect(() => {
    desk.proposal.value = solved === null || solved.reason !== null ? null : changesOf(desk, solved.writes);
  }, [solved, desk]);
  useEffect(
    () => () => {
      desk.proposal.value = null;
    },
    [desk],
  );
  return (
    <>
      <div class="ask">
        <label for="face-wanted">A sliding fit, the face</label>
        <select
          id="face-wanted"
          value={face.value}
          onChange={(event) => {
            face.value = event.currentTarget.value as Face;
          }}
        >
          {FACES.map(([name, words]) => (
            <option key={name} value={name}>
              {words}
            </option>
          ))}
        </select>
        {face.value !== 'flush' && (
          <span class="line">
            <input
              type="text"
              aria-label={`Face ${face.value} by`}
              value={text.value}
              onInput={(event) => {
                text.value = event.currentTarget.value;
              }}
            />
            <span class="unit">{units}</span>
          </span>
        )}
      </div>
      {'read' in read && face.value !== 'flush' && (
        <p class="fault" role="alert">
          {sayMisread(text.value, read)}
        </p>
      )}
      {there && <p role="status">It is already there: nothing needs moving.</p>}
      {solved !== null && <BothAnswer solved={solved} />}
      <div class="buttons">
        <button
          type="button"
          class="main"
          disabled={solved === null || solved.writes.length === 0}
          onClick={() => {
            if (solved !== null) desk.change(changesOf(desk, solved.writes));
            desk.notice.value = { kind: 'note', text: 'Moved. Undo takes it back.' };
            close();
          }}
        >
          Make the move
        </button>
        <button type="button" class="quiet" onClick={close}>
          Cancel
        </button>
      </div>
    </>
  );
}

/** One sentence: what is moved, and what comes of it. */
function BothAnswer({ solved }: { solved: SolvedByTwo }): JSX.Element {
  if (solved.reason !== null)
    return (
      <p class="fault" role="status">
        {keepTogether(solved.reason)}
      </p>
    );
  const moves = (solved.settings ?? []).flatMap(({ move }) => (move === null ? [] : [move]));
  const words = moves.join(', and ');
  return (
    <div class="answer" role="status">
      <p class="move">{words[0]!.toUpperCase() + words.slice(1)}.</p>
      {solved.problems.come.map(({ code, message }) => (
        <p key={code} class="fault">
          {keepTogether(message)}
        </p>
      ))}
    </div>
  );
}

/** Where the front face stands with the panel in the middle of its float, mm proud; 0 where it is nowhere. */
function middleOf({ fit }: Report): number {
  return fit.frontFace === null ? 0 : (fit.frontFace.least + fit.frontFace.most) / 2;
}

/** Whether it slides and the face is as wanted somewhere in the panel's float. */
function isThere({ fit }: Report, wanted: number): boolean {
  const { frontFace, verdict } = fit;
  return (
    verdict === 'sliding' && frontFace !== null && frontFace.least <= wanted + 1e-6 && frontFace.most >= wanted - 1e-6
  );
}
