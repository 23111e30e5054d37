import { useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useRef } from 'preact/hooks';
import { useDesk } from '../../desk/context.ts';
import { useOutline } from '../../files/outline-files.ts';
import { type DrawnPoint, drawnPath, GRID, lacksOf, snapPoint } from './drawn-outline.ts';

const WIDE = 60;

/** A piece of squared paper: each press goes on by a line or an arc, which set off as the one before ended. Arrow keys and Enter do the same. */
export function DrawingPad({ index }: { index: number }): JSX.Element {
  const desk = useDesk();
  const pad = useRef<SVGSVGElement>(null);
  const points = useSignal<readonly DrawnPoint[]>([]);
  const by = useSignal<DrawnPoint['by']>('line');
  const at = useSignal({ x: 0, y: 5 });
  const deep = Math.ceil(desk.job.value.panel.thickness);
  const lacks = lacksOf(points.value);
  const path = points.value.length > 0 ? drawnPath(points.value) : '';
  const go = () => {
    points.value = [...points.value, snapPoint(points.value, at.value.x, at.value.y, by.value)];
  };
  const follow = (event: PointerEvent) => {
    const box = pad.current!.getBoundingClientRect();
    const scale = (WIDE + 4) / box.width;
    at.value = {
      x: Math.max(0, (event.clientX - box.left) * scale - 2),
      y: Math.max(0, (event.clientY - box.top) * scale - 2),
    };
  };
  const keys = (event: KeyboardEvent) => {
    const way = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] }[event.key];
    if (way === undefined && event.key !== 'Enter') return;
    event.preventDefault();
    if (way === undefined) return go();
    const step = event.shiftKey ? GRID : 2 * GRID;
    at.value = {
      x: Math.min(WIDE, Math.max(0, at.value.x + way[0]! * step)),
      y: Math.min(deep, Math.max(0, at.value.y + way[1]! * step)),
    };
  };
  const next = snapPoint(points.value, at.value.x, at.value.y, by.value);
  return (
    <div class="pad">
      <p>
        Or draw it: {lacks ?? 'it reaches the face.'}{' '}
        <span class="quiet" aria-live="polite">
          {next.x.toFixed(1)} in, {next.y.toFixed(1)} down (mm)
        </span>
      </p>
      <svg
        ref={pad}
        class="squared"
        viewBox={`-2 -2 ${WIDE + 4} ${deep + 4}`}
        role="application"
        aria-label="Squared paper. Arrow keys move the point, Enter goes to it."
        tabindex={0}
        onPointerMove={follow}
        onPointerDown={(event) => {
          follow(event);
          go();
        }}
        onKeyDown={keys}
      >
        <path class="grid" d={gridPath(deep)} />
        <path class="wood" d={`M0 0H${WIDE}V${deep}H0Z`} />
        <path class="drawn" d={path} />
        {points.value.length > 0 && <path class="next" d={drawnPath([...points.value, next])} />}
        {points.value.map(({ x, y }, i) => (
          <circle key={`${i}`} cx={x} cy={y} r={0.7} />
        ))}
        <circle class="at" cx={next.x} cy={next.y} r={0.9} />
      </svg>
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
        <button
          type="button"
          disabled={points.value.length === 0}
          onClick={() => {
            points.value = points.value.slice(0, -1);
          }}
        >
          One back
        </button>
        <button
          type="button"
          class="main"
          disabled={lacks !== null}
          onClick={() => useOutline(desk, index, inJobUnits(points.value, desk.job.value.units))}
        >
          Cut it so
        </button>
      </div>
    </div>
  );
}

function inJobUnits(points: readonly DrawnPoint[], units: 'mm' | 'in'): string {
  return drawnPath(
    units === 'mm' ? points : points.map((point) => ({ ...point, x: point.x / 25.4, y: point.y / 25.4 })),
  );
}

/** Lines every 5 mm. */
function gridPath(deep: number): string {
  const lines: string[] = [];
  for (let x = 5; x < WIDE; x += 5) lines.push(`M${x} 0V${deep}`);
  for (let y = 5; y < deep; y += 5) lines.push(`M0 ${y}H${WIDE}`);
  return lines.join('');
}
