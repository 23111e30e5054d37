import { edgeOutline, readJobData, type Units } from '@fielded/core';
import { beginJob, type NewJob, type StartShape } from '../../job/new-job.ts';
import type { ShapeDrawing } from '../sizes/shape-row.tsx';
import { askFor, USUAL } from './new-lengths.ts';

const SHAPES: readonly StartShape[] = ['rebate', 'bevel', 'cove', 'ovolo', 'ogee'];
/** How much of the plain panel is drawn beyond a cut, mm. */
const BEYOND = 4;
/** How far in a panel without a cut is drawn, mm. */
const PLAIN = 20;

type Back = StartShape | 'none';

/**
 * Front and back drawn with each shape, in the sizes asked for; a shape that cannot be made in these, and every shape where
 * `ask` is null, in the usual sizes.
 */
export function drawShapes(
  ask: NewJob | null,
  units: Units,
): readonly [readonly ShapeDrawing<StartShape>[], readonly ShapeDrawing<Back>[]] {
  const usual = askFor(USUAL[units], '', units, 'ogee', 'cove');
  const draw = (side: 'front' | 'back') =>
    SHAPES.flatMap((shape) => {
      const drawing = (ask && drawOne(ask, side, shape)) ?? drawOne(usual, side, shape);
      return drawing === null ? [] : [drawing];
    });
  const thickness = (ask ?? usual).stock;
  const none = {
    value: 'none',
    word: 'no cut',
    outline: `M0 0H${PLAIN}V${thickness}H0Z`,
    width: PLAIN,
    thickness,
  } as const;
  return [draw('front'), [none, ...draw('back')]];
}

function drawOne(ask: NewJob, side: 'front' | 'back', shape: StartShape): ShapeDrawing<StartShape> | null {
  const begun = beginJob({ ...ask, [side]: shape });
  const job = 'data' in begun ? readJobData(begun.data).job : null;
  const cuts = job?.cuts.filter((cut) => cut.side === side) ?? [];
  if (job === null || cuts.length === 0) return null;
  const width = cuts[0]!.reach + BEYOND;
  return { value: shape, word: shape, outline: edgeOutline(job.panel, cuts), width, thickness: job.panel.measured };
}
