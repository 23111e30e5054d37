import { type Correction, formatLength, parseLength, type SetUp } from '@fielded/core';
import type { JSX } from 'preact';
import { useId } from 'preact/hooks';
import { useDesk } from '../../desk/context.ts';
import { LengthLine } from '../../entry/length-line.tsx';
import { useAmount } from '../../entry/use-amount.ts';
import { useTold } from '../../words/aloud.ts';
import { keepTogether } from '../../words/keep-together.ts';
import { sayMisread } from '../../words/say-misread.ts';

/** Below this, mm, a calliper cannot tell and nothing is moved. */
const LEAST = 0.02;
/** How far the corrections reach, mm: beyond it something else is wrong. */
const MOST = 2;

/** What the test piece should measure; what it does measure, typed in, says what to move. */
export function TestPiece({
  setUp: { cut, testPiece },
  corrections,
}: {
  setUp: SetUp;
  corrections: readonly Correction[];
}): JSX.Element | null {
  const desk = useDesk();
  const units = desk.units.value;
  const id = useId();
  const text = useAmount(null);
  const read = text.value.trim() === '' ? null : parseLength(text.value, units);
  const say = (mm: number) => keepTogether(formatLength(mm, units));
  const words =
    testPiece === null || read === null
      ? ''
      : 'mm' in read
        ? sayCorrection(read.mm - testPiece.thickness, corrections, say)
        : sayMisread(text.value, read);
  useTold(words);
  if (testPiece === null) return null;
  return (
    <div class="test-piece">
      <p>
        A test piece should measure <b>{say(testPiece.thickness)}</b>, {say(testPiece.at)} from its edge.
      </p>
      <div class="field">
        <label for={id}>
          It measures<span class="unseen"> on the test piece of the {cut}</span>
        </label>
        <LengthLine
          id={id}
          units={units}
          placeholder="–"
          value={text.value}
          onInput={(event) => {
            text.value = event.currentTarget.value;
          }}
        />
      </div>
      {read !== null && (
        <p id={`${id}-fault`} class={'mm' in read ? 'correction' : 'fault'}>
          {words}
        </p>
      )}
    </div>
  );
}

/** @example sayCorrection(0.1, [{ reads: 0.1, spindle: 0.1, fence: null }], say) // 'Spindle up 0.1 mm.' */
function sayCorrection(off: number, corrections: readonly Correction[], say: (mm: number) => string): string {
  if (Math.abs(off) < LEAST) return 'As it should be: nothing to move.';
  if (Math.abs(off) > MOST) return `It is ${say(Math.abs(off))} off: check the stock, the cut and the set-up first.`;
  const near = nearest(off, corrections);
  if (near === undefined) return 'No setting of this cut changes it.';
  const part = off / near.reads;
  const moves = [
    near.spindle === null
      ? null
      : `spindle ${near.spindle * part > 0 ? 'up' : 'down'} ${say(Math.abs(near.spindle * part))}`,
    near.fence === null
      ? null
      : `knives ${near.fence * part > 0 ? 'out' : 'in'} ${say(Math.abs(near.fence * part))} beyond the fence`,
  ].filter((move): move is string => move !== null);
  if (moves.length === 0) return 'No setting of this cut changes it.';
  const words = moves.join(', or ');
  return `${words[0]!.toUpperCase()}${words.slice(1)}. Then cut a new test piece.`;
}

/** The correction that was worked out for a reading most like this one, on the same side. */
function nearest(off: number, corrections: readonly Correction[]): Correction | undefined {
  return corrections
    .filter(({ reads }) => reads * off > 0)
    .sort((one, other) => Math.abs(one.reads - off) - Math.abs(other.reads - off))[0];
}
