import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

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

/** What figures and shapes are computed by. */
const FOLDERS = [
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

/** Slips that no test can see. Another one of the same file is made in place of each. */
const NO_FAULTS: readonly NoFault[] = [
  {
    file: 'packages/geometry/src/path/svg-arc.ts',
    becomes: 'if (Math.abs(rx - ry) <= 1e-12 * Math.min(rx, ry)) return [circular(x0, y0, x1, y1, chord, rx, shape)];',
    because:
      'the bounds differ by 1e-24 of the radius, and a circle that only one of them tells is else fitted to 1e-9 mm',
  },
];

/**
 * `count` faults, spread evenly over all that could be made, the same ones for the same sources. In place of a slip that changes nothing
 * stands the next one of its file that is not among them.
 */
export function listFaults(root: string, count: number): SmallFault[] {
  const all = FOLDERS.flatMap((folder) =>
    readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
      .filter((name) => name.endsWith('.ts') && !name.endsWith('index.ts'))
      .sort()
      .flatMap((name) => faultsOf(root, `${folder}/${name}`)),
  );
  const number = Math.min(count, all.length);
  return Array.from({ length: number }, (_, i) => faultFrom(all, Math.floor((i * all.length) / number)));
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
  const isNone = (fault: SmallFault) =>
    NO_FAULTS.some((none) => none.file === fault.file && none.becomes === fault.becomes);
  return all.slice(place).find((fault) => fault.file === file && !isNone(fault)) ?? all[place]!;
}

/** Every slip that could be made in the code of a file; comments and imports are left as they are. */
function faultsOf(root: string, file: string): SmallFault[] {
  const faults: SmallFault[] = [];
  let at = 0;
  for (const [index, text] of readFileSync(join(root, file), 'utf8').split('\n').entries()) {
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
  return faults;
}
