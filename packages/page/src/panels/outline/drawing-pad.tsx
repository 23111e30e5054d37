import { type Cut, formatLength, parseLength, sweptOutline, type Units } from '@fielded/core';
import type { Signal } from '@preact/signals';
import type { JSX } from 'preact';
import { useRef } from 'preact/hooks';
import { useDesk } from '../../desk/context.ts';
import { type OutlinePlace, useOutlineAndSay } from '../../files/outline-files.ts';
import { type DrawnPoint, drawnPath, GRIDS } from './drawn-outline.ts';
import { PlaceFields } from './place-fields.tsx';
import { type Drawing, useDrawing } from './use-drawing.ts';

/** Paper left free round the wood, mm. */
const ROUND = 2;
/** The least width of the paper, mm, and how far it reaches beyond the cut that is there. */
const LEAST_WIDE = 40;
const BEYOND = 22;

/** Squared paper to draw an outline on by presses or keys, and the button that makes it the outline of a place. */
export function DrawingPad({ place }: { place: OutlinePlace }): JSX.Element {
  const desk = useDesk();
  const { panel, frame, cuts, units } = desk.job.value;
  const cut = place === 'sticking' ? undefined : cuts[place];
  const deep = Math.ceil(place === 'sticking' ? frame.thickness : panel.thickness);
  const wide = Math.ceil(Math.max(LEAST_WIDE, (cut?.reach ?? 0) + BEYOND));
  const drawing = useDrawing(wide, deep, GRIDS[units]);
  const { points, next, lacks } = drawing;
  const say = (mm: number) => formatLength(mm, units, 2);
  return (
    <div class="pad">
      <p>
        From the edge at the left to the face at the top. {lacks ?? 'It reaches the face.'}{' '}
        <span class="quiet" aria-live="polite">
          {say(next.x)} in, {say(next.y)} down
        </span>
      </p>
      <SquaredPaper wide={wide} deep={deep} cut={cut} drawing={drawing} />
      <PadButtons by={drawing.by} back={points.length === 0 ? null : drawing.back} />
      <PlaceFields units={units} go={drawing.goTo} read={(text) => parseLength(text, units)} />
      <button
        type="button"
        class="main"
        disabled={lacks !== null}
        onClick={() => useOutlineAndSay(desk, place, pathIn(units, points), 'What you drew')}
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
  const { points, next, follow } = drawing;
  const pad = useRef<SVGSVGElement>(null);
  const followPointer = (event: PointerEvent) => {
    const box = pad.current!.getBoundingClientRect();
    const scale = (wide + 2 * ROUND) / box.width;
    follow((event.clientX - box.left) * scale - ROUND, (event.clientY - box.top) * scale - ROUND);
  };
  return (
    <svg
      ref={pad}
      class="squared"
      viewBox={`${-ROUND} ${-ROUND} ${wide + 2 * ROUND} ${deep + 2 * ROUND}`}
      role="application"
      aria-label="Squared paper. Arrow keys move the point, Enter goes to it, Backspace takes the last one back."
      tabindex={0}
      onPointerDown={(event) => {
        pad.current?.setPointerCapture(event.pointerId);
        followPointer(event);
      }}
      onPointerMove={followPointer}
      onPointerUp={(event) => {
        followPointer(event);
        drawing.goOn();
      }}
      onKeyDown={drawing.listen}
    >
      <path class="grid" d={gridPath(wide, deep)} />
      <path class="wood" d={`M0 0H${wide}V${deep}H0Z`} />
      {cut !== undefined && <path class="was" d={sweptOutline(cut)} />}
      <path class="drawn" d={points.length > 0 ? drawnPath(points) : ''} />
      {points.length > 0 && <path class="next" d={drawnPath([...points, next])} />}
      {points.map(({ x, y }, i) => (
        <circle key={`${i}`} cx={x} cy={y} r={0.7} />
      ))}
      <circle class="at" cx={next.x} cy={next.y} r={0.9} />
    </svg>
  );
}

/** Chooses how the next point is reached, and takes the last one back. */
function PadButtons({ by, back }: { by: Signal<DrawnPoint['by']>; back: (() => void) | null }): JSX.Element {
  return (
    <div class="buttons">
      {(['line', 'arc'] as const).map((kind) => (
        <button
          key={kind}
          type="button"
          aria-pressed={by.value === kind}
          onClick={() => {
            by.value = kind;
          }}
        >
          {kind === 'line' ? 'By a line' : 'By an arc'}
        </button>
      ))}
      <button type="button" disabled={back === null} onClick={() => back?.()}>
        Take the last point back
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
