import { batch } from '@preact/signals';
import type { Desk } from '../desk/desk.ts';
import { dragStep, nextStep, snap } from '../entry/steps.ts';
import { writeLength } from '../job/write-length.ts';
import { dimensionsOf } from './dimensions-of.ts';
import { type Handle, type Move, moveChanges, openMoves } from './handles.ts';

/** A hand on an arris: told where it is, it moves the size that goes that way. */
export interface Drag {
  readonly handle: Handle;
  /** Pixels from where it took hold; `fine` for smaller steps. Gives the size that is moved, once that is clear. */
  to(dx: number, dy: number, fine: boolean): Move | null;
  end(): void;
  cancel(): void;
}

/** Movement below this, pixels, is a tremble. */
const TREMBLE = 4;
/** How far from its line a hand is away, pixels, and how many times slower its size then moves. */
const AWAY = 60;
const SLOWER = 4;
let drags = 0;

/** Takes hold of a handle. `pixels` is how many a mm of wood takes on the screen. */
export function startDrag(desk: Desk, handle: Handle, pixels: number): Drag {
  const base = { data: desk.doc.value.data, job: desk.job.value, report: desk.report.value };
  const moves = openMoves(handle, base.data, base.job, base.report);
  drags += 1;
  const key = `drag ${drags}`;
  let move: Move | null = null;
  let [last, went] = [0, 0];
  return {
    handle,
    to(dx, dy, fine) {
      if (move === null) {
        if (Math.hypot(dx, dy) < TREMBLE) return null;
        const level = Math.abs(dx) >= Math.abs(dy) ? (moves.level ?? moves.plumb) : (moves.plumb ?? moves.level);
        if (level === undefined) return null;
        move = level;
        desk.dragged.value = true;
        desk.moving.value = dimensionsOf(move.of);
      }
      const [along, aside] = move === moves.level ? [dx, dy] : [dy, dx];
      // Away from the line of the move the hand has four times the way for the same size.
      went += (along - last) * (Math.abs(aside) > AWAY ? 1 / SLOWER : 1);
      last = along;
      const step = dragStep(desk.units.value, fine);
      applyMove(desk, base, move, snap(move.mm + (move.sense * went) / pixels, step), step, key);
      return move;
    },
    end() {
      desk.settle();
      letGo(desk);
    },
    cancel() {
      if (move !== null && desk.doc.value.data !== base.data) desk.undo();
      desk.settle();
      letGo(desk);
    },
  };
}

/**
 * The drawing settles at once. What is asked beyond the joint is worked out, then shown round the drawing, then at the side:
 * in a task each, so that a touch is answered between them.
 */
export function letGo({ dragged, moving, late, asideLate, lookAhead }: Desk): void {
  batch(() => {
    dragged.value = false;
    moving.value = null;
    late.value = true;
    asideLate.value = true;
  });
  inTurn([
    lookAhead,
    () => {
      late.value = false;
    },
    () => {
      asideLate.value = false;
    },
  ]);
}

function inTurn([first, ...others]: readonly (() => void)[]): void {
  setTimeout(() => {
    first?.();
    if (others.length > 0) inTurn(others);
  });
}

/** Moves a handle by one step of the arrow keys. Gives the size moved, or null where it does not go that way. */
export function nudge(desk: Desk, handle: Handle, dx: number, dy: number, fine: boolean): Move | null {
  const base = { data: desk.doc.value.data, job: desk.job.value, report: desk.report.value };
  const moves = openMoves(handle, base.data, base.job, base.report);
  const move = dx !== 0 ? moves.level : moves.plumb;
  if (move === undefined) return null;
  const way = ((dx || dy) * move.sense > 0 ? 1 : -1) as 1 | -1;
  const step = dragStep(desk.units.value, fine);
  const mm = nextStep(move.mm, step, way);
  desk.moving.value = dimensionsOf(move.of);
  applyMove(desk, base, move, mm, step, `nudge ${handle.key} ${move.of}`);
  return move;
}

function applyMove(
  desk: Desk,
  base: Parameters<typeof moveChanges>[2],
  move: Move,
  mm: number,
  step: number,
  key: string,
): void {
  const { units, job } = desk;
  const write = (value: number) => writeLength(value, units.value, job.value.units);
  const put = (value: number) => desk.change(moveChanges(move, value, base, write), key).length === 0;
  if (put(mm)) return;
  // The job cannot be made so: the hand feels a stop, at the last step that can.
  let good = 0;
  let bad = Math.round((mm - move.mm) / step);
  while (Math.abs(bad - good) > 1) {
    const middle = Math.trunc((good + bad) / 2);
    if (desk.check(moveChanges(move, move.mm + middle * step, base, write)).length === 0) good = middle;
    else bad = middle;
  }
  put(good === 0 ? move.mm : snap(move.mm + good * step, step));
}
