import { batch } from '@preact/signals';
import type { Desk } from '../desk/desk.ts';
import { dragStep, nextStep, snap } from '../entry/steps.ts';
import { writeLength } from '../job/write-length.ts';
import { dimensionsOf } from './dimensions-of.ts';
import { type Handle, type Move, moveChanges, openMoves } from './handles.ts';
import { makeSteps } from './steps.ts';

/** A drag of an arris: told where the hand is, it moves the size that lies that way. */
export interface Drag {
  readonly handle: Handle;
  /** Follows the hand, pixels from where it took hold; `fine` for smaller steps. Returns the size moved, null until that is clear. */
  to(dx: number, dy: number, fine: boolean): Move | null;
  end(): void;
  cancel(): void;
}

/** A hand that has moved less than this, pixels, only trembles. */
const TREMBLE = 4;
/** A hand further than this from the line of its move, pixels, moves the size this many times slower. */
const AWAY = 60;
const SLOWER = 4;
/** How often a size was taken in hand or let go: a hand that lets go settles nothing once the next has moved. */
let takes = 0;

/** Takes hold of a handle. `pixels` is how many a mm of wood takes on the screen. */
export function startDrag(desk: Desk, handle: Handle, pixels: number): Drag {
  const base = { data: desk.doc.value.data, job: desk.job.value, report: desk.report.value };
  const moves = openMoves(handle, base.data, base.job, base.report);
  takes += 1;
  const key = `drag ${takes}`;
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
 * Ends a drag. The drawing is fitted anew and settles; the whole report is computed, then shown round the drawing, then at the
 * side. All of it goes in tasks of a few milliseconds, so that a touch is answered between them; the next move ends it.
 */
export function letGo(desk: Desk): void {
  const { dragged, moving, late, asideLate, lookAhead } = desk;
  takes += 1;
  const own = takes;
  const ended = () => takes !== own;
  const settle = () =>
    batch(() => {
      dragged.value = false;
      moving.value = null;
      late.value = true;
      asideLate.value = true;
    });
  const show = [
    () => {
      late.value = false;
    },
    () => {
      asideLate.value = false;
    },
  ];
  makeSteps(inRow(desk.beforeRest), ended, () => {
    settle();
    makeSteps(
      lookAhead(),
      () => false,
      () => inTurn(show),
    );
  });
}

/** Steps of several, one after the other. */
function* inRow(all: Iterable<() => Generator<void, void>>): Generator<void, void> {
  for (const each of all) yield* each();
}

/** Runs acts one after the other, each in a task of its own. */
function inTurn([first, ...others]: readonly (() => void)[]): void {
  setTimeout(() => {
    first?.();
    if (others.length > 0) inTurn(others);
  });
}

/** Moves a handle by one step of the arrow keys. Returns the size moved, null where it does not go that way. */
export function nudge(desk: Desk, handle: Handle, dx: number, dy: number, fine: boolean): Move | null {
  const base = { data: desk.doc.value.data, job: desk.job.value, report: desk.report.value };
  const moves = openMoves(handle, base.data, base.job, base.report);
  const move = dx !== 0 ? moves.level : moves.plumb;
  if (move === undefined) return null;
  takes += 1;
  const way = ((dx || dy) * move.sense > 0 ? 1 : -1) as 1 | -1;
  const step = dragStep(desk.units.value, fine);
  const mm = nextStep(move.mm, step, way);
  desk.moving.value = dimensionsOf(move.of);
  applyMove(desk, base, move, mm, step, `nudge ${handle.key} ${move.of}`);
  return move;
}

/** Writes a size as moved, or as near to that as the job allows. */
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
  // The job cannot be made so: stop at the last step at which it can, found by halving.
  let good = 0;
  let bad = Math.round((mm - move.mm) / step);
  while (Math.abs(bad - good) > 1) {
    const middle = Math.trunc((good + bad) / 2);
    if (desk.check(moveChanges(move, move.mm + middle * step, base, write)).length === 0) good = middle;
    else bad = middle;
  }
  put(good === 0 ? move.mm : snap(move.mm + good * step, step));
}
