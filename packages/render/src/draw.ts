import type { Report } from '@fielded/core';
import { SCALES } from './paper.ts';
import type { Scene } from './scene.ts';
import { group, itemsBox, moveItems } from './scene.ts';
import { BAR_ABOVE, drawCheckBar } from './sheet/check-bar.ts';
import type { Theme } from './style.ts';
import { sceneToSvg } from './svg.ts';
import { drawFoot } from './views/foot.ts';
import type { PlainView } from './views/views.ts';
import { usualScale, VIEWS } from './views/views.ts';
import { scaleText } from './words/lengths.ts';
import { describe } from './words/title.ts';
import type { InBothUnits, UnitsChoice } from './words/units-choice.ts';
import { inUnits } from './words/units-choice.ts';

export interface SceneOptions {
  readonly view: PlainView;
  /** Paper mm for one mm of wood; by default what suits the view: 2 (2:1) for sections, less for doors. */
  readonly scale?: number;
  /** Which of the job's doors `door` and `panel` draw, from 0. */
  readonly door?: number;
  /** The job's own unless told; `both` puts the other ones under the line. */
  readonly units?: UnitsChoice;
  /** How wide the paper is, mm, to suit the document it goes into: the largest standard scale that fits is taken unless one is given. */
  readonly width?: number;
  /** Puts a bar under the drawing to check a print with a rule. */
  readonly checkBar?: boolean;
}

export interface DrawOptions extends SceneOptions {
  /** `print`: ink on white; `light` and `dark` for screens. */
  readonly theme?: Theme;
  /** Leaves out everything but the drawing: no foot, no sheet behind it. */
  readonly bare?: boolean;
}

interface BareOptions extends SceneOptions {
  readonly bare?: boolean;
  /** Room for pieces of a drawing beside each other, mm: the cuts stand in as many columns as it takes. By default one. */
  readonly across?: number;
  /** The values whose dimensions are laid out on a door or its panel; all unless told. */
  readonly only?: readonly string[] | null;
  /** Leaves out the grain of a door and its panel, for the size of the drawing alone. */
  readonly plain?: boolean;
  /** Empty paper round the drawing, mm; 8 unless told. */
  readonly margin?: number;
}

/** Empty paper round the drawing, mm. */
const MARGIN = 8;
/** Paper narrower than this, mm, gets a bar of half the length. */
const BAR_ROOM = 120;
/** How far the ends of the rule under a drawing reach beyond it, mm. */
const RULE_ENDS = 0.5;

/**
 * A drawing of a report as plain data, on paper just large enough for it or as wide as told.
 *
 * @throws RangeError for a view that there is not, unless the scale is above 0, for a door that the job does not have, and for a width that the drawing
 * does not fit, naming the least that it does.
 */
export function scene(given: Report, options: BareOptions): Scene {
  const { view, door = 0, width } = options;
  if (!Object.hasOwn(VIEWS, view))
    throw new RangeError(`there is no view ${view}: take ${Object.keys(VIEWS).join(', ')}`);
  const report = inUnits(given, options.units);
  if (width !== undefined && options.scale === undefined) return sceneOfWidth(report, options, width);
  const scale = options.scale ?? usualScale(view, report, door);
  if (!(scale > 0 && Number.isFinite(scale))) throw new RangeError(`scale ${scale}`);
  const made = sceneAt(report, options, scale);
  if (width === undefined) return made;
  if (made.width <= width + NEAR) return widen(made, width);
  throw new RangeError(
    `${VIEWS[view].name(report, door)} is ${say(made.width)} mm wide at ${scaleText(scale)}. Give that much, or a smaller scale.`,
  );
}

/** What rounding may add to a width, mm. */
const NEAR = 1e-6;

function say(mm: number): string {
  return String(Math.ceil(mm));
}

/** A drawing at the largest standard scale at which it is no wider than told. */
function sceneOfWidth(report: Report & InBothUnits, options: SceneOptions, width: number): Scene {
  const { view, door = 0 } = options;
  const { least, name } = VIEWS[view];
  const largest = usualScale(view, report, door);
  let narrowest = Infinity;
  for (const scale of SCALES.filter((known) => known <= largest && known >= least)) {
    const made = sceneAt(report, options, scale);
    if (made.width <= width + NEAR) return widen(made, width);
    narrowest = Math.min(narrowest, made.width);
  }
  throw new RangeError(`${name(report, door)} needs a width of ${say(narrowest)} mm. Give that or more.`);
}

function sceneAt(
  report: Report & InBothUnits,
  { view, door = 0, bare, width, checkBar, across, only = null, plain = false, margin = MARGIN }: BareOptions,
  scale: number,
): Scene {
  const name = VIEWS[view].name(report, door);
  const drawing = VIEWS[view].draw(report, scale, door, null, { across, only, plain });
  const above = itemsBox(drawing)!;
  const least = width === undefined ? undefined : Math.max(above.x1 - above.x0, width - 2 * MARGIN - RULE_ENDS);
  const foot = bare ? [] : drawFoot(report, name, scale, above, VIEWS[view].notes(report, door), least);
  const items = [...drawing, ...foot];
  if (checkBar) {
    const box = itemsBox(items)!;
    const short = width !== undefined && width < BAR_ROOM;
    items.push(group('check bar', drawCheckBar(above.x0 + RULE_ENDS, box.y1 + 5 + BAR_ABOVE, report, short)));
  }
  const box = itemsBox(items)!;
  return {
    width: box.x1 - box.x0 + 2 * margin,
    height: box.y1 - box.y0 + 2 * margin,
    scale,
    title: VIEWS[view].title(report, door),
    description: describe(report, drawing),
    items: moveItems(items, margin - box.x0, margin - box.y0),
  };
}

/** Puts a drawing into the middle of wider paper. */
function widen(made: Scene, width: number): Scene {
  return { ...made, width, items: moveItems(made.items, (width - made.width) / 2, 0) };
}

/** A drawing of a report as SVG text: the same bytes for the same report. */
export function draw(report: Report, options: DrawOptions): string {
  return sceneToSvg(scene(report, options), { theme: options.theme ?? 'print', bare: options.bare ?? false });
}
