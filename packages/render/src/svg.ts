import { paperData } from '@fielded/geometry';
import type { GroupItem, ImageItem, Item, PathItem, Scene, TextItem } from './scene.ts';
import type { Style, Theme } from './style.ts';
import { FONT_FAMILY, PALETTES, STYLES } from './style.ts';
import { base64 } from './text/base64.ts';
import { CAPITAL } from './text/measure-text.ts';
import { escapeXml, runsLeftwards, safeText } from './text/safe-text.ts';
import { writeNumber } from './write-number.ts';

/** The outlines of a line of text of a font size in mm, as SVG path data from its start on the baseline, and how far it runs. */
export type Letters = (text: string, size: number) => { readonly data: string; readonly width: number };

export interface SvgOptions {
  readonly theme?: Theme;
  /** Leaves the sheet of paper behind the drawing out. */
  readonly bare?: boolean;
  /** Writes texts as outlines, for programs that lack the font. */
  readonly letters?: Letters;
}

interface Pen {
  readonly theme: Theme;
  readonly letters: Letters | undefined;
}

/**
 * A scene as SVG text: millimetre size, live text, no ids, the same bytes for the same scene.
 *
 * Title and description are for screen readers; texts are escaped. `bare` leaves the sheet of paper behind the drawing out.
 */
export function sceneToSvg(scene: Scene, options: SvgOptions = {}): string {
  const theme = options.theme ?? 'print';
  const pen: Pen = { theme, letters: options.letters };
  const width = writeNumber(scene.width);
  const height = writeNumber(scene.height);
  const title = escapeXml(safeText(scene.title));
  const lines = [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}" role="img" aria-label="${title}">`,
    `<title>${title}</title>`,
    `<desc>${escapeXml(safeText(scene.description))}</desc>`,
  ];
  if (!options.bare) lines.push(`<rect width="${width}" height="${height}" fill="${PALETTES[theme].paper}"/>`);
  lines.push(`<g fill="none" stroke-linejoin="round" font-family="${FONT_FAMILY}">`);
  for (const item of scene.items) writeItem(item, pen, lines);
  lines.push('</g>', '</svg>', '');
  return lines.join('\n');
}

function writeItem(item: Item, pen: Pen, lines: string[]): void {
  if (item.kind === 'path') writePath(item, pen.theme, lines);
  else if (item.kind === 'text')
    lines.push(pen.letters ? writeLetters(item, pen.theme, pen.letters) : writeText(item, pen.theme));
  else if (item.kind === 'image') lines.push(writeImage(item));
  else {
    lines.push(`<g${groupAttributes(item)}>`);
    for (const inner of item.items) writeItem(inner, pen, lines);
    lines.push('</g>');
  }
}

/** A picture within the file itself: nothing is loaded from elsewhere. */
function writeImage({ x, y, width, height, png, alt }: ImageItem): string {
  const place = `x="${writeNumber(x)}" y="${writeNumber(y)}" width="${writeNumber(width)}" height="${writeNumber(height)}"`;
  return `<image ${place} role="img" aria-label="${escapeXml(safeText(alt))}" href="data:image/png;base64,${base64(png)}"/>`;
}

function writePath(item: PathItem, theme: Theme, lines: string[]): void {
  const d = paperData(item.loops);
  if (d) lines.push(`<path${styleAttributes(STYLES[item.role], theme)} d="${d}"/>`);
}

function groupAttributes(item: GroupItem): string {
  let attributes = ` data-key="${escapeXml(item.key)}"`;
  if (item.of !== undefined) attributes += ` data-of="${escapeXml(item.of)}"`;
  if (item.value !== undefined) attributes += ` data-value="${item.value}"`;
  return attributes;
}

/** A text that runs from right to left as a whole says so with the signs of Unicode for it: its place stays the drawing's own. */
function isolate(text: string): string {
  return runsLeftwards(text) ? `\u2067${text}\u2069` : text;
}

function writeText(item: TextItem, theme: Theme): string {
  const x = writeNumber(item.x);
  const y = writeNumber(item.y);
  const anchor = item.anchor === 'start' ? '' : ` text-anchor="${item.anchor}"`;
  const turned = item.upright ? ` transform="rotate(-90 ${x} ${y})"` : '';
  const size = writeNumber(item.height / CAPITAL);
  return `<text x="${x}" y="${y}" font-size="${size}"${anchor}${turned}${styleAttributes(STYLES[item.role], theme)}>${escapeXml(isolate(item.text))}</text>`;
}

/** A text as outlines, moved and turned as the text would be. */
function writeLetters(item: TextItem, theme: Theme, letters: Letters): string {
  const { data, width } = letters(item.text, item.height / CAPITAL);
  const before = item.anchor === 'start' ? 0 : item.anchor === 'middle' ? width / 2 : width;
  const [x, y] = item.upright ? [item.x, item.y + before] : [item.x - before, item.y];
  const turned = item.upright ? ' rotate(-90)' : '';
  const place = `translate(${writeNumber(x)} ${writeNumber(y)})${turned}`;
  return data ? `<path transform="${place}"${styleAttributes(STYLES[item.role], theme)} d="${data}"/>` : '';
}

function styleAttributes(style: Style, theme: Theme): string {
  const palette = PALETTES[theme];
  let attributes = '';
  if (style.fill) attributes += ` fill="${palette[style.fill]}" fill-rule="evenodd"`;
  if (style.stroke) attributes += ` stroke="${palette[style.stroke]}" stroke-width="${style.width}"`;
  if (style.dash) attributes += ` stroke-dasharray="${style.dash.join(' ')}"`;
  if (style.cap === 'round') attributes += ' stroke-linecap="round"';
  return attributes;
}
