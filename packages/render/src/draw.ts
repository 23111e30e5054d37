import type { Report } from '@fielded/core';
import type { Scene } from './scene.ts';
import { itemsBox, moveItems } from './scene.ts';
import type { Theme } from './style.ts';
import { sceneToSvg } from './svg.ts';
import { drawFoot } from './views/foot.ts';
import type { PlainView } from './views/views.ts';
import { usualScale, VIEWS } from './views/views.ts';
import { describe, titleOf } from './words/title.ts';
import type { UnitsChoice } from './words/units-choice.ts';
import { inUnits } from './words/units-choice.ts';

export interface SceneOptions {
  readonly view: PlainView;
  /** Paper mm for one mm of wood; by default what suits the view: 2 (2:1) for sections, less for doors. */
  readonly scale?: number;
  /** Which of the job's doors `door` and `panel` draw, from 0. */
  readonly door?: number;
  /** The job's own unless told; `both` puts the other ones under the line. */
  readonly units?: UnitsChoice;
}

export interface DrawOptions extends SceneOptions {
  /** `print`: ink on white; `light` and `dark` for screens. */
  readonly theme?: Theme;
  /** Leaves out everything but the drawing: no foot, no sheet behind it. */
  readonly bare?: boolean;
}

const MARGIN = 8;

/**
 * A drawing of a report as plain data, on paper just large enough for it.
 *
 * @throws RangeError unless the scale is above 0, and for a door that the job does not have.
 */
export function scene(given: Report, options: SceneOptions & { readonly bare?: boolean }): Scene {
  const { view, door = 0 } = options;
  const report = inUnits(given, options.units);
  const scale = options.scale ?? usualScale(view, report, door);
  if (!(scale > 0 && Number.isFinite(scale))) throw new RangeError(`scale ${scale}`);
  const name = VIEWS[view].name(report, door);
  const drawing = VIEWS[view].draw(report, scale, door, null);
  const foot = options.bare ? [] : drawFoot(report, name, scale, itemsBox(drawing)!, VIEWS[view].notes(report));
  const items = [...drawing, ...foot];
  const box = itemsBox(items)!;
  return {
    width: box.x1 - box.x0 + 2 * MARGIN,
    height: box.y1 - box.y0 + 2 * MARGIN,
    scale,
    title: titleOf(report, name),
    description: describe(report, drawing),
    items: moveItems(items, MARGIN - box.x0, MARGIN - box.y0),
  };
}

/** A drawing of a report as SVG text: the same bytes for the same report. */
export function draw(report: Report, options: DrawOptions): string {
  return sceneToSvg(scene(report, options), { theme: options.theme ?? 'print', bare: options.bare ?? false });
}
