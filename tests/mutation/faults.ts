import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Random } from '../support/random.ts';
import { isInCode } from './plant.ts';

/** A small fault: in one place of one file, one text in place of another. */
export interface SmallFault {
  readonly file: string;
  readonly line: number;
  readonly at: number;
  readonly from: string;
  readonly to: string;
  /** Its line of code with the fault in. */
  readonly becomes: string;
}

/** What figures and shapes are computed by: where faults are spread unless rooms are named. */
const ROOMS = [
  'packages/geometry/src',
  'packages/core/src/profile',
  'packages/core/src/machining',
  'packages/core/src/joint',
  'packages/core/src/knife',
];

/** Slips of the kind that people make. */
const SLIPS: readonly (readonly [string, string])[] = [
  [' + ', ' - '],
  [' - ', ' + '],
  [' * ', ' / '],
  ['Math.max(', 'Math.min('],
  ['Math.min(', 'Math.max('],
  ['Math.sin(', 'Math.cos('],
  ['Math.cos(', 'Math.sin('],
  [' && ', ' || '],
  [' === ', ' !== '],
  [' > 0', ' < 0'],
  [' < 0', ' > 0'],
];

/** A slip that was proved to change nothing, and why. */
interface NoFault extends Pick<SmallFault, 'file' | 'becomes'> {
  readonly because: string;
}

/** The same proof for several lines of a file. */
function none(file: string, because: string, lines: readonly string[]): NoFault[] {
  return lines.map((becomes) => ({ file, becomes, because }));
}

/**
 * Slips that no test can see: by the proof beside each, and by 5,000 to 100,000 random inputs to which the code gave the same answer
 * with it as without. Another one of the same file is made in place of each.
 */
const NO_FAULTS: readonly NoFault[] = [
  ...none(
    'packages/geometry/src/path/path-ink.ts',
    'the buffer is as long as asked for either way; that it is twice as long as before only saves copies',
    ['const more = new Uint8Array(Math.max(2 / bytes.length, at + count));'],
  ),
  ...none(
    'packages/geometry/src/path/svg-arc.ts',
    'the bounds differ by 1e-24 of the radius, and radii by whole numbers of their last digit, 1e-16 of them: none lies between',
    ['if (Math.abs(rx - ry) <= 1e-12 * Math.min(rx, ry)) return [circular(x0, y0, x1, y1, chord, rx, shape)];'],
  ),
  ...none(
    'packages/geometry/src/path/svg-arc.ts',
    'the radius is 1, or half the chord, and then the centre lies on the chord either way',
    ['const off = Math.sqrt(Math.max(0, r / r - half * half)) / (2 * half);'],
  ),
  ...none(
    'packages/geometry/src/curve/curve-box.ts',
    'the signs of a product and a quotient are the same; where the side is 0 the extreme is the end of the arc itself',
    ['return c.turn / side < 0;'],
  ),
  ...none('packages/geometry/src/curve/along.ts', 'a step is 1 or -1, and dividing by it is multiplying by it', [
    'for (let k = step > 0 ? Math.floor(first) + 1 : Math.ceil(first) - 1; (last - k) / step > 0; k += step) {',
  ]),
  ...none(
    'packages/geometry/src/curve/along.ts',
    'a quarter turn that lies before the start is passed over in the loop',
    ['const first = c.turn > 0 ? Math.floor(start / quarter) - 1 : Math.ceil(start / quarter) - 1;'],
  ),
  ...none(
    'packages/geometry/src/offset/box-tree.ts',
    'the order decides which boxes share a node; each box that may meet the one asked for is compared itself',
    [
      'const ids = Uint32Array.from(boxes.keys()).sort((a, b) => across[a]! + across[b]!);',
      'ids.subarray(from, from + stripe).sort((a, b) => up[a]! + up[b]!);',
    ],
  ),
  ...none(
    'packages/geometry/src/offset/box-tree.ts',
    'a node’s box becomes NaN (4 / 0 and 4 / 8 are no places of it), which leaves out nothing; each box itself is compared rightly',
    [
      'box[0] = Math.min(box[0]!, level[4 / k]!);',
      'box[1] = Math.min(box[1]!, level[4 / k + 1]!);',
      'box[2] = Math.max(box[2]!, level[4 / k + 2]!);',
      'box[3] = Math.max(box[3]!, level[4 / k + 3]!);',
    ],
  ),
  ...none(
    'packages/geometry/src/offset/split.ts',
    'the same number more for every point of a line leaves them in order',
    [
      'if (c.turn === 0) return (x + c.x0) * (c.x1 - c.x0) + (y - c.y0) * (c.y1 - c.y0);',
      'if (c.turn === 0) return (x - c.x0) * (c.x1 - c.x0) + (y + c.y0) * (c.y1 - c.y0);',
    ],
  ),
  ...none(
    'packages/geometry/src/loop/self-crossing.ts',
    'which half is split first decides only in which order, and how soon, the same curves are compared',
    ['} else if (q >= size || (p < size || p <= q)) stack.push(2 * p, q, 2 * p + 1, q);'],
  ),
  ...none(
    'packages/geometry/src/loop/self-crossing.ts',
    'directions are compared after whole turns are taken off, and both signs of half a turn are one direction',
    [
      'return [along - Math.PI, along];',
      'return before ? [direction(before, before.x1, before.y1) - Math.PI, direction(c, c.x0, c.y0)] : null;',
      'return after ? [direction(c, c.x1, c.y1) - Math.PI, direction(after, after.x0, after.y0)] : null;',
    ],
  ),
  ...none(
    'packages/geometry/src/loop/self-crossing.ts',
    'boxes that only touch hold a crossing only at a joint, whose other curve lies on the other side and is compared as well',
    [
      'boxes[i]! > boxes[j + 2]! - SAME_LENGTH ||',
      'boxes[j]! > boxes[i + 2]! - SAME_LENGTH ||',
      'boxes[i + 1]! > boxes[j + 3]! - SAME_LENGTH ||',
      'boxes[j + 1]! > boxes[i + 3]! - SAME_LENGTH',
    ],
  ),
  ...none(
    'packages/geometry/src/fit/scan-headings.ts',
    'the scale of the lengths falls out of the point and of the direction of the heading; it only keeps rounding small',
    [
      'const scale = Math.min(along[to]! - along[i]!, along[i]! - along[from]!) || 1;',
      'const scale = Math.max(along[to]! + along[i]!, along[i]! - along[from]!) || 1;',
      'const scale = Math.max(along[to]! - along[i]!, along[i]! + along[from]!) || 1;',
    ],
  ),
  ...none(
    'packages/core/src/knife/face-reach.ts',
    'more places are tried; without shear, and on a line, an end of the curve is the worst of them',
    ['const places = c.turn !== 0 || face.sinShear !== 0 ? ARC_PLACES : 1;'],
  ),
  ...none(
    'packages/core/src/knife/limiter-profile.ts',
    'a rhombus at any place of the profile lies under the limiter already: one more changes no shape, only where rounding parts a line by 1e-15 mm',
    ['const turns = [steep, -steep].some((k) => Math.min(...slopes) <= k || Math.max(...slopes) >= k);'],
  ),
  ...none(
    'packages/core/src/spread/side-depth.ts',
    'more places of the same surface are looked at, none outside the tongue: its least is the same',
    ['for (let m = 0; m < met.length; m += 2) if (met[m]! >= from || met[m]! <= till) look(met[m]! + right[k]!);'],
  ),
  ...none(
    'packages/core/src/job/check-given-profile.ts',
    'a figure that is no number makes sum and difference none alike; each is then looked at by itself',
    [
      'const sum = c.x0 - c.y0 + c.x1 + c.y1 + c.cx + c.cy + c.r + c.turn;',
      'const sum = c.x0 + c.y0 - c.x1 + c.y1 + c.cx + c.cy + c.r + c.turn;',
      'const sum = c.x0 + c.y0 + c.x1 - c.y1 + c.cx + c.cy + c.r + c.turn;',
      'const sum = c.x0 + c.y0 + c.x1 + c.y1 - c.cx + c.cy + c.r + c.turn;',
      'const sum = c.x0 + c.y0 + c.x1 + c.y1 + c.cx - c.cy + c.r + c.turn;',
      'const sum = c.x0 + c.y0 + c.x1 + c.y1 + c.cx + c.cy - c.r + c.turn;',
      'const sum = c.x0 + c.y0 + c.x1 + c.y1 + c.cx + c.cy + c.r - c.turn;',
    ],
  ),
  ...none(
    'packages/exchange/src/read-dxf.ts',
    'a figure that is no number makes sum and difference none alike, and no other is read',
    [
      'x0 - c.y0 + c.x1 + c.y1 + c.r',
      'x0 + c.y0 - c.x1 + c.y1 + c.r',
      'x0 + c.y0 + c.x1 - c.y1 + c.r',
      'x0 + c.y0 + c.x1 + c.y1 - c.r',
    ].map((sum) => `const isWild = (c: Curve) => !Number.isFinite(c.${sum});`),
  ),
];

/**
 * `count` faults, spread evenly over all that could be made in some rooms, folders below the project, the same ones for the same
 * sources. In place of a slip that changes nothing stands the next one of its file that is not among them.
 */
export function listFaults(root: string, count: number, rooms: readonly string[] = ROOMS): SmallFault[] {
  const all = allFaults(root, rooms);
  const number = Math.min(count, all.length);
  return Array.from({ length: number }, (_, i) => faultFrom(all, Math.floor((i * all.length) / number)));
}

/**
 * `count` faults drawn at random from all in some rooms that change something, each at most once and none of the sixty: the same ones
 * for the same seed and sources.
 */
export function drawFaults(root: string, count: number, seed: number, rooms: readonly string[] = ROOMS): SmallFault[] {
  const random = new Random(seed);
  const keyOf = ({ file, at, from }: SmallFault) => `${file} ${at} ${from}`;
  const kept = new Set(keptFaults(root).map(keyOf));
  const left = allFaults(root, rooms).filter((fault) => !isNone(fault) && !kept.has(keyOf(fault)));
  return Array.from(
    { length: Math.min(count, left.length) },
    () => left.splice(Math.floor(random.unit() * left.length), 1)[0]!,
  );
}

function allFaults(root: string, rooms: readonly string[]): SmallFault[] {
  return rooms.flatMap((folder) =>
    readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
      .filter((name) => name.endsWith('.ts') && !name.endsWith('index.ts'))
      .sort()
      .flatMap((name) => faultsOf(root, `${folder}/${name}`)),
  );
}

/** A fault of the sixty that are kept: where it stood when they were chosen, evenly spread, and its line with the fault in. */
type KeptFault = Pick<SmallFault, 'file' | 'line' | 'becomes'>;

/** The sixty faults of `sixty.json`, the same ones whatever else is written; where a line was changed, the nearest one that could be made there now. */
export function keptFaults(root: string): SmallFault[] {
  const kept = JSON.parse(readFileSync(new URL('sixty.json', import.meta.url), 'utf8')) as readonly KeptFault[];
  return kept.map(({ file, line, becomes }) => {
    const farness = (fault: SmallFault) => (fault.becomes === becomes ? -1 : Math.abs(fault.line - line));
    return faultsOf(root, file).reduce((best, fault) => (farness(fault) < farness(best) ? fault : best));
  });
}

/** The fault at a place, or the next one of its file that changes something. */
function faultFrom(all: readonly SmallFault[], place: number): SmallFault {
  const { file } = all[place]!;
  return all.slice(place).find((fault) => fault.file === file && !isNone(fault)) ?? all[place]!;
}

function isNone(fault: SmallFault): boolean {
  return NO_FAULTS.some((none) => none.file === fault.file && none.becomes === fault.becomes);
}

/** Every slip that could be made in the code of a file; comments, imports and texts are left as they are. */
function faultsOf(root: string, file: string): SmallFault[] {
  const faults: SmallFault[] = [];
  const code = readFileSync(join(root, file), 'utf8');
  let at = 0;
  for (const [index, text] of code.split('\n').entries()) {
    if (!/^\s*(\*|\/\/|\/\*|import |export \{|export type)/.test(text)) {
      for (const [from, to] of SLIPS) {
        for (let found = text.indexOf(from); found >= 0; found = text.indexOf(from, found + from.length))
          faults.push({
            file,
            line: index + 1,
            at: at + found,
            from,
            to,
            becomes: `${text.slice(0, found)}${to}${text.slice(found + from.length)}`.trim(),
          });
      }
    }
    at += text.length + 1;
  }
  const inCode = isInCode(code, faults);
  return faults.filter((_, i) => inCode[i]);
}
