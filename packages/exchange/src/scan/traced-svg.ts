import type { Point } from '@fielded/geometry';
import { encode } from 'fast-png';
import type { GreyImage } from './grey-image.ts';
import type { Traced } from './trace-scan.ts';

/** The picture is drawn with no more pixels across than this. */
const MOST_ACROSS = 1600;
/** Paper drawn round the sample, mm. */
const ROUND = 4;
const INCH = 25.4;

/**
 * What was read over what was seen: the scan round the sample at its own size in millimetres, with the lines and arcs of front and back
 * drawn over it and, unless it is to be `bare`, the figures below.
 */
export function tracedSvg(image: GreyImage, traced: Traced, options: { readonly bare?: boolean } = {}): string {
  const { seen, dpi } = traced;
  const [across, down] = [INCH / dpi[0], INCH / dpi[1]];
  const box = boxOf(seen.silhouette);
  const x0 = Math.max(0, Math.floor(box.x0 - ROUND / across));
  const y0 = Math.max(0, Math.floor(box.y0 - ROUND / down));
  const x1 = Math.min(image.width, Math.ceil(box.x1 + ROUND / across));
  const y1 = Math.min(image.height, Math.ceil(box.y1 + ROUND / down));
  const every = Math.max(1, Math.ceil((x1 - x0) / MOST_ACROSS));
  const picture = crop(image, x0, y0, x1, y1, every);
  const [width, height] = [(x1 - x0) * across, (y1 - y0) * down];
  // A pixel's middle is where its shade was read.
  const place = ({ x, y }: Point) => `${((x + 0.5 - x0) * across).toFixed(3)} ${((y + 0.5 - y0) * down).toFixed(3)}`;
  const outline = (points: readonly Point[], colour: string) =>
    points.length === 0
      ? ''
      : `<path d="M ${points.map(place).join(' L ')}" fill="none" stroke="${colour}" stroke-width="0.15" stroke-linejoin="round"/>`;
  const lines = options.bare ? [] : describe(traced);
  const foot = options.bare ? 0 : 5 + 5 * lines.length;
  // A line of 56 letters fits the width, in a wide font too.
  const size = Math.min(3.2, width / 36);
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width.toFixed(2)}mm" height="${(height + foot).toFixed(2)}mm" viewBox="0 0 ${width.toFixed(2)} ${(height + foot).toFixed(2)}" role="img" aria-label="Traced outline over its scan">`,
    `<title>Traced outline over its scan</title>`,
    `<rect width="100%" height="100%" fill="#ffffff"/>`,
    `<image width="${width.toFixed(3)}" height="${height.toFixed(3)}" preserveAspectRatio="none" href="data:image/png;base64,${picture}"/>`,
    outline(seen.read.front, '#c8321f'),
    outline(seen.read.back, '#0b5fa5'),
    ...lines.map(
      ({ words, colour }, i) =>
        `<text x="2" y="${(height + 5 + 5 * i).toFixed(2)}" font-family="IBM Plex Sans, DejaVu Sans, Arial, sans-serif" font-size="${size}" fill="${colour}">${words}</text>`,
    ),
    '</svg>',
    '',
  ].join('\n');
}

function describe({ thickness, front, back, turned }: Traced): { words: string; colour: string }[] {
  const side = (name: string, { reach, depth, deviation }: Traced['front']) =>
    `${name}: ${reach.toFixed(2)} mm in, ${depth.toFixed(2)} mm deep; drawn within ${deviation.toFixed(2)} mm`;
  return [
    {
      words: `Thickness ${thickness.toFixed(2)} mm; turned ${turned < 0 ? '−' : ''}${Math.abs(turned).toFixed(1)}° until level`,
      colour: '#1d2430',
    },
    { words: side('Front', front), colour: '#c8321f' },
    ...(back ? [{ words: side('Back', back), colour: '#0b5fa5' }] : []),
  ];
}

function boxOf(points: readonly Point[]): { x0: number; y0: number; x1: number; y1: number } {
  const box = { x0: Infinity, y0: Infinity, x1: -Infinity, y1: -Infinity };
  for (const { x, y } of points) {
    box.x0 = Math.min(box.x0, x);
    box.y0 = Math.min(box.y0, y);
    box.x1 = Math.max(box.x1, x);
    box.y1 = Math.max(box.y1, y);
  }
  return box;
}

/** Part of a picture as a PNG in base 64, every so many pixels taken together. */
function crop({ width, grey }: GreyImage, x0: number, y0: number, x1: number, y1: number, every: number): string {
  const across = Math.floor((x1 - x0) / every);
  const down = Math.floor((y1 - y0) / every);
  const data = new Uint8Array(across * down);
  for (let y = 0; y < down; y++) {
    for (let x = 0; x < across; x++) {
      let sum = 0;
      for (let k = 0; k < every * every; k++)
        sum += grey[(y0 + y * every + Math.floor(k / every)) * width + x0 + x * every + (k % every)]!;
      data[y * across + x] = sum / (every * every);
    }
  }
  const png = encode({ width: across, height: down, data, channels: 1, depth: 8 });
  let text = '';
  for (const byte of png) text += String.fromCharCode(byte);
  return btoa(text);
}
