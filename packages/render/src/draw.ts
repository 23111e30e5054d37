import type { Report } from '@fielded/core';
import { verdictSentence } from '@fielded/core';
import { layDimensions } from './dimension/lay-dimensions.ts';
import type { Item, Scene } from './scene.ts';
import { itemsBox, moveItems } from './scene.ts';
import type { Theme } from './style.ts';
import { sceneToSvg } from './svg.ts';
import { safeText } from './text/safe-text.ts';
import { drawFoot } from './views/foot.ts';
import { sketchJoint } from './views/joint.ts';
import { sketchSection } from './views/section.ts';
import { facesSentence, tongueSentence, verdictHeading } from './words/verdict.ts';

/** The drawings there are: the panel's edge alone, or in its frame. */
export type View = 'section' | 'joint';

export interface SceneOptions {
  readonly view: View;
  /** Paper mm for one mm of wood; 2 unless told (2:1). */
  readonly scale?: number;
}

export interface DrawOptions extends SceneOptions {
  /** `print`: ink on white; `light` and `dark` for screens. */
  readonly theme?: Theme;
}

const MARGIN = 8;
const NAMES: Readonly<Record<View, string>> = { section: 'Section of the panel', joint: 'Joint in section' };

/**
 * A drawing of a report as plain data, on paper just large enough for it.
 *
 * @throws RangeError unless the scale is above 0.
 */
export function scene(report: Report, options: SceneOptions): Scene {
  const scale = options.scale ?? 2;
  if (!(scale > 0 && Number.isFinite(scale))) throw new RangeError(`scale ${scale}`);
  const name = NAMES[options.view];
  const sketch = options.view === 'section' ? sketchSection(report, scale) : sketchJoint(report, scale);
  const drawing = layDimensions(sketch);
  const notes = [tongueSentence(report), options.view === 'joint' ? facesSentence(report) : ''];
  const items = [...drawing, ...drawFoot(report, name, scale, itemsBox(drawing)!, notes)];
  const box = itemsBox(items)!;
  return {
    width: box.x1 - box.x0 + 2 * MARGIN,
    height: box.y1 - box.y0 + 2 * MARGIN,
    scale,
    title: `${safeText(report.title)}: ${name.toLowerCase()}`,
    description: describe(report, drawing),
    items: moveItems(items, MARGIN - box.x0, MARGIN - box.y0),
  };
}

/** A drawing of a report as SVG text: the same bytes for the same report. */
export function draw(report: Report, options: DrawOptions): string {
  return sceneToSvg(scene(report, options), { theme: options.theme ?? 'print' });
}

/** The drawing in words: the verdict, then every dimension. */
function describe(report: Report, items: readonly Item[]): string {
  const labels = (list: readonly Item[]): string[] =>
    list.flatMap((item) =>
      item.kind !== 'group' ? [] : item.label === undefined ? labels(item.items) : [`${item.label}.`],
    );
  return [`${verdictHeading(report.fit.verdict)}.`, verdictSentence(report), ...labels(items)].join(' ');
}
