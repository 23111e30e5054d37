/// <reference path="./untyped-libraries.d.ts" />
import { arcBeziers, type Loop } from '@fielded/geometry';
import type PDFDocument from 'pdfkit';
import { shapeText } from '../letters/shape-text.ts';
import type { Typefaces } from '../letters/typefaces.ts';
import type { ImageItem, Item, PathItem, TextItem } from '../scene.ts';
import { PALETTES, STYLES } from '../style.ts';
import { CAPITAL } from '../text/measure-text.ts';
import { hasLeftwards } from '../text/safe-text.ts';

type Document = InstanceType<typeof PDFDocument>;

const INK = PALETTES.print;

/** Paints items on the current page of a PDF, ink on white; the page's own scale makes a millimetre of its points. */
export function paintItems(document: Document, items: readonly Item[], typefaces: Typefaces): void {
  for (const item of items) {
    if (item.kind === 'path') paintPath(document, item);
    else if (item.kind === 'text') paintText(document, item, typefaces);
    else if (item.kind === 'image') paintImage(document, item);
    else paintItems(document, item.items, typefaces);
  }
}

function paintPath(document: Document, { role, loops }: PathItem): void {
  if (!traceLoops(document, loops)) return;
  const { fill, stroke, width = 0, dash, cap = 'butt' } = STYLES[role];
  if (stroke) {
    document.lineWidth(width).lineCap(cap);
    if (dash) document.dash(dash);
  }
  if (fill && stroke) document.fillAndStroke(INK[fill], INK[stroke], 'even-odd');
  else if (fill) document.fill(INK[fill], 'even-odd');
  else if (stroke) document.stroke(INK[stroke]);
  if (dash) document.undash();
}

/** Lays a path down, to 0.001 mm as an SVG has it. False where there is nothing to draw. */
function traceLoops(document: Document, loops: readonly Loop[]): boolean {
  let drawn = false;
  for (const { curves, closed } of loops) {
    const first = curves[0];
    if (first === undefined) continue;
    drawn = true;
    document.moveTo(round(first.x0), round(first.y0));
    curves.forEach((curve, i) => {
      if (curve.turn === 0) {
        // A closing straight line is drawn by closing.
        if (!closed || i < curves.length - 1) document.lineTo(round(curve.x1), round(curve.y1));
      } else
        for (const [x1, y1, x2, y2, x, y] of arcBeziers(curve))
          document.bezierCurveTo(round(x1), round(y1), round(x2), round(y2), round(x), round(y));
    });
    if (closed) document.closePath();
  }
  return drawn;
}

function paintText(document: Document, item: TextItem, typefaces: Typefaces): void {
  if (item.text === '') return;
  const size = item.height / CAPITAL;
  const { runs, width } = shapeText(item.text, typefaces);
  const start = item.anchor === 'start' ? 0 : item.anchor === 'middle' ? -(width * size) / 2 : -width * size;
  if (item.upright) document.save().rotate(-90, { origin: [item.x, item.y] });
  document.fillColor(INK[STYLES[item.role].fill ?? 'ink']);
  for (const { typeface, text, x } of runs)
    document.font(typeface.name, size).text(text, round(item.x + start + x * size), round(item.y), {
      lineBreak: false,
      baseline: 'alphabetic',
      // Word by word, each laid out once; what runs leftwards is laid out as a whole, or its words would change places.
      ...(hasLeftwards(text) && { features: [] }),
    });
  if (item.upright) document.restore();
}

function paintImage(document: Document, { png, x, y, width, height }: ImageItem): void {
  document.image(png.slice().buffer, x, y, { width, height });
}

function round(length: number): number {
  return Math.round(length * 1000) / 1000;
}
