import { type Cut, formatLength, parseLength, sweptOutline, type Units } from '@fielded/core';
import type { JSX } from 'preact';
import { useRef } from 'preact/hooks';
import { useDesk } from '../../desk/context.ts';
import { type OutlinePlace, useOutlineAndSay } from '../../files/outline-files.ts';
import { useTold } from '../../words/aloud.ts';
import { keepTogether } from '../../words/keep-together.ts';
import { type DrawnPoint, drawnPath, FINE_GRIDS, GRIDS } from './drawn-outline.ts';
import { PlaceFields } from './place-fields.tsx';
import { useStayInSight } from './stay-in-sight.ts';
import { type Drawing, useDrawing } from './use-drawing.ts';
import { ROUND, usePress } from './use-press.ts';

/** The least width of the paper, mm, and how far it reaches beyond the cut that is there. */
const LEAST_WIDE = 40;
const BEYOND = 22;

/** So long after the last key it is told where that led, ms. */
const KEYS_REST = 250;

/** Squared paper to draw an outline on by presses or keys, and the button that makes it the outline of a place; `done` closes the part. */
export function DrawingPad({ place, done }: { place: OutlinePlace; done: () => void }): JSX.Element {
  const desk = useDesk();
  const { panel, frame, cuts, units } = desk.job.value;
  const cut = place === 'sticking' ? undefined : cuts[place];
  const deep = Math.ceil(place === 'sticking' ? frame.thickness : panel.thickness);
  const wide = Math.ceil(Math.max(LEAST_WIDE, (cut?.reach ?? 0) + BEYOND));
  const drawing = useDrawing(wide, deep, GRIDS[units], FINE_GRIDS[units]);
  const { points, next, chosen, lacks } = drawing;
  const shown = chosen === null ? next : points[chosen]!;
  const say = (mm: number) => keepTogether(formatLength(mm, units, 2));
  const spot = `${say(shown.x)} from the edge, ${say(shown.y)} down`;
  const reached = points.length === 0 || chosen === 0 ? '' : drawing.by === 'arc' ? ', by an arc' : ', by a line';
  useTold(`Point ${(chosen ?? points.length) + 1}${chosen === null ? '' : ' held'}${reached}: ${spot}`, KEYS_REST);
  useTold(lacks ?? 'It reaches the face.');
  return (
    <div class="pad">
      <p class="what-next">
        {chosen === null
          ? `From the edge at the left to the face at the top. ${lacks ?? 'It reaches the face.'}`
          : `Point ${chosen + 1}: drag it, or drag beside it to move it four times finer.`}
      </p>
      <p class="quiet">{spot}</p>
      <SquaredPaper wide={wide} deep={deep} cut={cut} drawing={drawing} />
      <p class="hint">Press, slide to the place and lift. Tap a point to move or delete it.</p>
      <PadButtons drawing={drawing} />
      <PlaceFields
        units={units}
        from={chosen === null ? null : points[chosen]!}
        go={drawing.goTo}
        read={(text) => parseLength(text, units)}
      />
      <button
        type="button"
        class="main"
        disabled={lacks !== null}
        onClick={() => {
          if (useOutlineAndSay(desk, place, pathIn(units, points), 'What you drew')) done();
        }}
      >
        Use this outline
      </button>
    </div>
  );
}

/** The paper with the stock, the cut as it was, and what is drawn so far. */
function SquaredPaper({
  wide,
  deep,
  cut,
  drawing,
}: {
  wide: number;
  deep: number;
  cut: Cut | undefined;
  drawing: Drawing;
}): JSX.Element {
  const { points, next, chosen } = drawing;
  const pad = useRef<SVGSVGElement>(null);
  useStayInSight(pad);
  const { held, ...presses } = usePress(pad, wide, drawing);
  const at = chosen === null ? next : points[chosen]!;
  return (
    <svg
      ref={pad}
      class="squared"
      viewBox={`${-ROUND} ${-ROUND} ${wide + 2 * ROUND} ${deep + 2 * ROUND}`}
      role="application"
      aria-label="Squared paper. Arrow keys move the point, Enter goes to it, Backspace takes the last step back. L and A reach it by a line or an arc. Page up and down choose a point to move, delete or reach otherwise, Escape draws on."
      tabindex={0}
      {...presses}
      onKeyDown={drawing.listen}
    >
      <path class="grid" d={gridPath(wide, deep)} />
      <path class="wood" d={`M0 0H${wide}V${deep}H0Z`} />
      {cut !== undefined && <path class="was" d={sweptOutline(cut)} />}
      {held.value && <path class="cross" d={`M${at.x} ${-ROUND}V${deep + ROUND}M${-ROUND} ${at.y}H${wide + ROUND}`} />}
      <path class="drawn" d={points.length > 0 ? drawnPath(points) : ''} />
      {points.length > 0 && chosen === null && <path class="next" d={drawnPath([...points, next])} />}
      {points.map(({ x, y }, i) => (
        <circle key={`${i}`} class={i === chosen ? 'in-hand' : ''} cx={x} cy={y} r={i === chosen ? 1.2 : 0.7} />
      ))}
      {chosen === null && <circle class="at" cx={next.x} cy={next.y} r={0.9} />}
    </svg>
  );
}

/** Chooses how the next point is reached, takes the last step back, and removes the point in hand. */
function PadButtons({ drawing: { by, reach, back, chosen, choose, remove } }: { drawing: Drawing }): JSX.Element {
  return (
    <div class="buttons">
      {/* The outline begins at its first point, which is reached by nothing. */}
      {chosen !== 0 &&
        (['line', 'arc'] as const).map((kind) => (
          <button key={kind} type="button" aria-pressed={by === kind} onClick={() => reach(kind)}>
            {kind === 'line' ? 'By a line' : 'By an arc'}
          </button>
        ))}
      {chosen !== null && (
        <>
          <button type="button" onClick={remove}>
            Delete the point
          </button>
          <button type="button" onClick={() => choose(null)}>
            Draw on
          </button>
        </>
      )}
      <button type="button" aria-disabled={back === null} onClick={() => back?.()}>
        Step back
      </button>
    </div>
  );
}

/** The outline as path data in the job's unit. */
function pathIn(units: Units, points: readonly DrawnPoint[]): string {
  return drawnPath(
    units === 'mm' ? points : points.map((point) => ({ ...point, x: point.x / 25.4, y: point.y / 25.4 })),
  );
}

/** Lines every 5 mm. */
function gridPath(wide: number, deep: number): string {
  const lines: string[] = [];
  for (let x = 5; x < wide; x += 5) lines.push(`M${x} 0V${deep}`);
  for (let y = 5; y < deep; y += 5) lines.push(`M0 ${y}H${wide}`);
  return lines.join('');
}
