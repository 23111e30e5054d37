import type { Refusal } from '@fielded/core';
import { isLongerPath } from '@fielded/geometry';
import svgpath from 'svgpath';
import { MOST_STROKES } from './most-strokes.ts';

/** Millimetres for one of the units that an SVG's size may be given in (CSS: 96 px to the inch). */
const UNITS: Readonly<Record<string, number>> = { mm: 1, cm: 10, in: 25.4, pt: 25.4 / 72, pc: 25.4 / 6, px: 25.4 / 96 };

/**
 * The one path of an SVG drawing as path data in millimetres.
 *
 * The drawing's size and view box say how long a unit is; without them it is a millimetre. The view box's own origin is the
 * place where edge and face meet only if it is 0 0: numbers are taken as they are written. Refused: no path or several, and
 * transforms, which a drawing program's "flatten transforms" takes out.
 */
export function readSvgPath(text: string): string | Refusal {
  const plain = withoutComments(text);
  if (plain === null)
    return { refused: 'a comment in the drawing is opened and not closed', instead: 'Save it as plain SVG again' };
  const [root] = tagsOf(plain, 'svg');
  if (root === undefined) return { refused: 'this is not an SVG drawing', instead: 'Save it as plain SVG' };
  const paths = tagsOf(plain, 'path').flatMap((tag) => attribute(tag, 'd') ?? []);
  const [only] = paths;
  if (only === undefined)
    return { refused: 'there is no path in the drawing', instead: 'Turn its shapes into one path' };
  if (paths.length > 1)
    return {
      refused: `the drawing holds ${paths.length} paths`,
      instead: 'Leave one in it: the outline from the edge to the face',
    };
  if (/\stransform\s*=/i.test(plain))
    return {
      refused: 'the drawing is moved or scaled by a transform',
      instead: 'Save it with its transforms flattened',
    };
  const unit = lengthOfUnit(root);
  if (unit === undefined)
    return {
      refused: 'its width and its view box do not say how long a unit is',
      instead: 'Give the drawing a width in mm',
    };
  // What is no path data, or too long, goes on as it is: the reader of outlines says what is wrong with it.
  const data = decode(only);
  if (isLongerPath(data, MOST_STROKES)) return data;
  const path = svgpath(data) as ReturnType<typeof svgpath> & { readonly err: string };
  return path.err === '' ? path.scale(unit).toString() : data;
}

/** The text without its comments; null where one does not end. Searches with patterns would take the text's length squared. */
function withoutComments(text: string): string | null {
  const kept: string[] = [];
  let at = 0;
  for (;;) {
    const from = text.indexOf('<!--', at);
    if (from < 0) return kept.join('') + text.slice(at);
    kept.push(text.slice(at, from));
    const to = text.indexOf('-->', from + 4);
    if (to < 0) return null;
    at = to + 3;
  }
}

/** The tags of one name, from their < to the next >. */
function tagsOf(text: string, name: string): string[] {
  const tags: string[] = [];
  const start = new RegExp(`<${name}\\b`, 'gi');
  for (let found = start.exec(text); found !== null; found = start.exec(text)) {
    const end = text.indexOf('>', found.index);
    if (end < 0) break;
    tags.push(text.slice(found.index, end + 1));
    start.lastIndex = end + 1;
  }
  return tags;
}

/** Millimetres for one unit of the drawing; undefined where its size cannot be made sense of. */
function lengthOfUnit(root: string): number | undefined {
  const width = attribute(root, 'width');
  const box = attribute(root, 'viewBox')
    ?.trim()
    .split(/[\s,]+/)
    .map(Number);
  if (width === undefined || box === undefined) return 1;
  const [, size = '', unit = ''] = /^\s*([\d.]+)\s*([a-z%]*)\s*$/i.exec(width) ?? [];
  const length = UNITS[unit.toLowerCase() || 'px'];
  const across = box[2];
  if (unit === '%') return 1;
  if (size === '' || length === undefined || !(across !== undefined && across > 0)) return undefined;
  return (Number(size) * length) / across;
}

function attribute(tag: string, name: string): string | undefined {
  const found = new RegExp(`\\s${name}\\s*=\\s*(?:"([^"]*)"|'([^']*)')`, 'i').exec(tag);
  return found ? (found[1] ?? found[2]) : undefined;
}

/** Line breaks and tabs are often written as entities in path data. */
function decode(d: string): string {
  return d.replace(/&#(x?)([0-9a-f]+);/gi, (_, hex, code) => String.fromCharCode(Number.parseInt(code, hex ? 16 : 10)));
}
