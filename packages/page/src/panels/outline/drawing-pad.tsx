import { type Cut, formatLength, parseLength, sweptOutline } from '@fielded/core';
import { type Signal, useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useRef } from 'preact/hooks';
import { useDesk } from '../../desk/context.ts';
import { type OutlinePlace, useOutlineAndSay } from '../../files/outline-files.ts';
import { type DrawnPoint, drawnPath, GRIDS, lacksOf, snapPoint } from './drawn-outline.ts';
import { PlaceFields } from './place-fields.tsx';

/** Paper round the wood, mm. */
const ROUND = 2;
/** The paper is at least so wide, mm, and so much wider than the cut that is there. */
const LEAST_WIDE = 40;
const BEYOND = 22;
/** A press this near to the face, mm, means the face: a finger is no finer. */
const NEAR_FACE = 0.8;

/** A piece of squared paper: each press goes on by a line or an arc, which set off as the one before ended. Arrow keys and Enter do the same. */
export function DrawingPad({ place }: { place: OutlinePlace }): JSX.Element {
  const desk = useDesk();
  const points = useSignal<readonly DrawnPoint[]>([]);
  const by = useSignal<DrawnPoint['by']>('line');
  const at = useSignal({ x: 0, y: 5 });
  const { panel, frame, cuts, units } = desk.job.value;
  const cut = place === 'sticking' ? undefined : cuts[place];
  const deep = Math.ceil(place === 'sticking' ? frame.thickness : panel.thickness);
  const wide = Math.ceil(Math.max(LEAST_WIDE, (cut?.reach ?? 0) + BEYOND));
  const grid = GRIDS[units];
  const lacks = lacksOf(points.value);
  const snap = (x: number, y: number) => snapPoint(points.value, x, y, by.value, grid);
  const add = (point: DrawnPoint) => {
    points.value = [...points.value, point];
    at.value = { x: point.x, y: point.y };
  };
  const back = () => {
    points.value = points.value.slice(0, -1);
  };
  const keys = (event: KeyboardEvent) => {
    const way = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] }[event.key];
    if (way === undefined && event.key !== 'Enter' && event.key !== 'Backspace') return;
    event.preventDefault();
    if (event.key === 'Enter') return add(snap(at.value.x, at.value.y));
    if (way === undefined) return back();
    const step = event.shiftKey ? grid : 2 * grid;
    at.value = {
      x: within(wide, at.value.x + way[0]! * step),
      y: within(deep, at.value.y + way[1]! * step),
    };
  };
  const next = snap(at.value.x, at.value.y);
  const say = (mm: number) => formatLength(mm, units, 2);
  return (
    <div class="pad">
      <p>
        From the edge at the left to the face at the top. {lacks ?? 'It reaches the face.'}{' '}
        <span class="quiet" aria-live="polite">
          {say(next.x)} in, {say(next.y)} down
        </span>
      </p>
      <SquaredPaper
        wide={wide}
        deep={deep}
        cut={cut}
        points={points.value}
        next={next}
        follow={(x, y) => {
          at.value = { x: within(wide, x), y: y < NEAR_FACE ? 0 : Math.min(deep, y) };
        }}
        press={() => add(snap(at.value.x, at.value.y))}
        keys={keys}
      />
      <PadButtons by={by} back={points.value.length === 0 ? null : back} />
      <PlaceFields
        units={units}
        go={(x, y) =>
          add({ x: points.value.length === 0 ? 0 : x, y, by: points.value.length === 0 ? 'line' : by.value })
        }
        read={(text) => parseLength(text, units)}
      />
      <button
        type="button"
        class="main"
        disabled={lacks !== null}
        onClick={() => useOutlineAndSay(desk, place, inJobUnits(points.value, units), 'What you drew')}
      >
        Cut it so
      </button>
    </div>
  );
}

/** A length of no less than 0 and no more than `most`. */
function within(most: number, length: number): number {
  return Math.min(most, Math.max(0, length));
}

/** The paper with the stock, the cut as it was, and what is drawn so far; it tells where it is pressed, mm. */
function SquaredPaper({
  wide,
  deep,
  cut,
  points,
  next,
  follow,
  press,
  keys,
}: {
  wide: number;
  deep: number;
  cut: Cut | undefined;
  points: readonly DrawnPoint[];
  next: DrawnPoint;
  follow: (x: number, y: number) => void;
  press: () => void;
  keys: (event: KeyboardEvent) => void;
}): JSX.Element {
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
        press();
      }}
      onKeyDown={keys}
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

/** How the drawing goes on, and a step back. */
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
        One back
      </button>
    </div>
  );
}

function inJobUnits(points: readonly DrawnPoint[], units: 'mm' | 'in'): string {
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
