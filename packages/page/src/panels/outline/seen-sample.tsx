import { formatLength, formatNumber } from '@fielded/core';
import type { JSX } from 'preact';
import { useMemo, useRef } from 'preact/hooks';
import { useDesk } from '../../desk/context.ts';
import type { Desk } from '../../desk/desk.ts';
import { type OutlinePlace, outlineChanges, pathInUnits, useOutlines } from '../../files/outline-files.ts';
import type { SeenSide, TraceAnswer } from '../../files/trace-picture.ts';
import type { JobChange } from '../../job/changes.ts';
import { keepTogether } from '../../words/keep-together.ts';
import { useStayInSight } from './stay-in-sight.ts';

type Seen = Extract<TraceAnswer, { kind: 'traced' }>;

/** Figures below this, mm, are not said: they would be rounded to 0. */
const LEAST_SAID = 0.005;

/** What was read of a sample, drawn over the picture and in figures, and the buttons that use it and are `done` then. */
export function SeenSample({ seen, place, done }: { seen: Seen; place: OutlinePlace; done: () => void }): JSX.Element {
  const desk = useDesk();
  const say = (mm: number) => keepTogether(formatLength(mm, desk.units.value, 2));
  const picture = useMemo(() => `data:image/svg+xml;charset=utf-8,${encodeURIComponent(seen.svg)}`, [seen]);
  const { front, back, thickness, turned } = seen;
  const part = useRef<HTMLDivElement>(null);
  useStayInSight(part);
  const use = (changes: readonly JobChange[], what: string) => () => {
    if (!useOutlines(desk, changes)) return;
    desk.notice.value = { kind: 'note', text: `The sample is now the ${what}. Undo takes it back.` };
    done();
  };
  const path = (side: SeenSide) => pathInUnits(rounded(side.path), desk.job.value.units);
  return (
    <div class="seen" ref={part}>
      <img
        src={picture}
        alt={`What was read drawn over the picture: front ${say(front.reach)} in, ${say(front.depth)} deep`}
      />
      <p>
        {say(thickness)} thick, turned by {formatNumber(turned, 1)}° until level. Check the thickness with a calliper.
      </p>
      <SideWords name="Front" side={front} say={say} />
      {back ? <SideWords name="Back" side={back} say={say} /> : <p>Back: no cut.</p>}
      <div class="buttons">
        {place === 'sticking' ? (
          <button type="button" class="main" onClick={use(outlineChanges('sticking', path(front)), 'sticking')}>
            Use it as the sticking
          </button>
        ) : (
          <>
            {back !== null && (
              <button
                type="button"
                class="main"
                onClick={use(
                  [...sideChanges(desk, 'front', path(front)), ...sideChanges(desk, 'back', path(back), 'front')],
                  'outline of front and back',
                )}
              >
                Use both outlines
              </button>
            )}
            <button
              type="button"
              class={back === null ? 'main' : ''}
              onClick={use(sideChanges(desk, 'front', path(front)), 'outline of the front')}
            >
              Use as front outline
            </button>
            <button type="button" onClick={use(sideChanges(desk, 'back', path(back ?? front)), 'outline of the back')}>
              Use as back outline
            </button>
          </>
        )}
      </div>
    </div>
  );
}

function SideWords({ name, side, say }: { name: string; side: SeenSide; say: (mm: number) => string }): JSX.Element {
  const { reach, depth, deviation, arcs } = side;
  const atMost = (mm: number) => (mm < LEAST_SAID ? `less than ${say(2 * LEAST_SAID)}` : say(mm));
  return (
    <>
      <p>
        <b>{name}</b>: {say(reach)} in, {say(depth)} deep. Lines and arcs within{' '}
        {say(Math.max(deviation, 2 * LEAST_SAID))} of what was seen.
      </p>
      {arcs.length > 0 && (
        <ul class="arcs">
          {arcs.map(({ from, to, radius, uncertainty, nominal, deviation: off }) => (
            <li key={from}>
              {say(from)} to {say(to)} in: radius {say(radius)} ± {atMost(uncertainty)}
              {nominal !== null && `; ${say(nominal)} would lie ${atMost(off)} off in its middle`}
            </li>
          ))}
        </ul>
      )}
    </>
  );
}

/** The changes that give the first cut on a side an outline; a new cut where there is none. `added` names a side to which a change made before adds one. */
function sideChanges(desk: Desk, side: 'front' | 'back', path: string, added?: 'front'): JobChange[] {
  const { cuts } = desk.job.value;
  const index = cuts.findIndex((cut) => cut.side === side);
  if (index >= 0) return outlineChanges(index, path);
  const before = added !== undefined && !cuts.some((cut) => cut.side === added) ? 1 : 0;
  return [[`cuts[${cuts.length + before}]`, { name: side, side, profile: { shape: 'outline', path } }]];
}

/** Path data to a thousandth of a millimetre: finer than any scan. */
function rounded(path: string): string {
  return path.replace(/-?\d+\.\d+(?:e-?\d+)?/g, (number) => String(Math.round(Number(number) * 1000) / 1000 + 0));
}
