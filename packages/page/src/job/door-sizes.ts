import type { DoorReport, Report } from '@fielded/core';
import { type Data, getAt } from './data.ts';
import { type Editable, plainSize, turned } from './sizes.ts';

type Side = 'width' | 'height';

/** Where an opening stands, by the side that its neighbours there share. */
const PLACES = { width: 'column', height: 'row' } as const;

/** A door as the job gives it, and as the report has it. */
interface GivenDoor {
  readonly data: Data;
  /** Its path in the job. */
  readonly at: string;
  readonly door: DoorReport;
}

/** A size of a door's elevation or of its panel, by its path on the drawings; null for anything else. */
export function doorSize(data: Data, report: Report, of: string): Editable | null {
  const [, at, index, key] = /^(doors\[(\d+)\])\.([\w.[\]]+)$/.exec(of) ?? [];
  const door = report.doors?.[Number(index)];
  if (at === undefined || key === undefined || door === undefined) return null;
  const given = { data, at, door };
  if (Object.hasOwn(PARTS, key)) return partSize(given, key as Part);
  if (/^head\.(rise|crown|ears)$/.test(key)) return plainSize(`${at}.${key}`);
  if (key === 'width' || key === 'height') return outerSize(given, key);
  const [, list, part, side] = /^(opening|panel)(s\[\d+\])?\.(width|height)$/.exec(key) ?? [];
  if (list === 'opening' && part === undefined) return openingsSize(given, side as Side);
  if (list === 'opening') return openingSize(given, side as Side, Number(/\d+/.exec(part!)![0]));
  if (list === 'panel' && part === undefined) return panelSize(given, side as Side);
  return headSize(given, key);
}

type Part = 'stile' | 'rail' | 'topRail' | 'bottomRail' | 'midRail' | 'muntin';

/** How often each part counts in a door's width and in its height. */
const PARTS: Readonly<Record<Part, (given: GivenDoor) => Readonly<Record<Side, number>>>> = {
  stile: () => ({ width: 2, height: 0 }),
  rail: () => ({ width: 0, height: 2 }),
  topRail: () => ({ width: 0, height: 1 }),
  bottomRail: () => ({ width: 0, height: 1 }),
  midRail: ({ door }) => ({ width: 0, height: door.up - 1 }),
  // Mid rails are as wide as muntins unless they are given.
  muntin: ({ data, at, door }) => ({
    width: door.across - 1,
    height: getAt(data, `${at}.midRail`) === undefined ? door.up - 1 : 0,
  }),
};

/** A part's width: where every opening is given, the door grows by it. Both rails at once take the place of rails given apart. */
function partSize(given: GivenDoor, part: Part): Editable {
  const { data, at, door } = given;
  const path = `${at}.${part}`;
  const apart = part === 'rail' ? [`${at}.topRail`, `${at}.bottomRail`] : [];
  const times = PARTS[part](given);
  const now = part === 'rail' ? door.topRail : door[part];
  const grows = (['width', 'height'] as const).filter((side) => times[side] > 0 && leavesNoRest(given, side));
  return {
    size: {
      path,
      changes: (mm, write, written) => [
        [path, written ?? write(mm)] as const,
        ...apart.filter((key) => getAt(data, key) !== undefined).map((key) => [key, undefined] as const),
        ...grows.flatMap(
          (side) => wholeSize(given, side).size?.changes(door[side] + (mm - now) * times[side], write) ?? [],
        ),
      ],
    },
    fixed: null,
  };
}

/** Whether every opening of a row or column is given. */
function leavesNoRest(given: GivenDoor, side: Side): boolean {
  const { sizes } = listOf(given, side);
  return sizes.length > 0 && !sizes.includes('rest');
}

/** The door's whole width or height, typed over: where every opening is given, the last one follows. */
function outerSize(given: GivenDoor, side: Side): Editable {
  const { door } = given;
  const whole = wholeSize(given, side);
  if (whole.size === null || !leavesNoRest(given, side)) return whole;
  const { path, sizes } = listOf(given, side);
  const { size } = whole;
  const last = door.openings.find((opening) => opening[PLACES[side]] === sizes.length - 1) ?? door.opening;
  return {
    size: {
      path: size.path,
      changes: (mm, write, written) => [
        ...size.changes(mm, write, written),
        [`${path}[${sizes.length - 1}]`, write(last[side] + mm - door[side])] as const,
      ],
    },
    fixed: null,
  };
}

/** The door's own size, or the opening that it hangs in: what the leaf gains, the opening gains once for every leaf. */
function wholeSize({ data, at, door }: GivenDoor, side: Side): Editable {
  const { hungIn } = door;
  if (hungIn === undefined || getAt(data, `${at}.opening`) === undefined) return plainSize(`${at}.${side}`);
  const leaves = side === 'width' ? door.leaves : 1;
  return turned(plainSize(`${at}.opening.${side}`), (mm) => hungIn[side] + (mm - door[side]) * leaves);
}

function listOf({ data, at }: GivenDoor, side: Side): { readonly path: string; readonly sizes: readonly Data[] } {
  const path = `${at}.${side === 'width' ? 'columns' : 'rows'}`;
  const sizes = getAt(data, path);
  return { path, sizes: Array.isArray(sizes) ? sizes : [] };
}

/** All openings of a door where they are alike: the door grows with them, and those that are given follow. */
function openingsSize(given: GivenDoor, side: Side): Editable {
  const { door } = given;
  const count = side === 'width' ? door.across : door.up;
  const { path, sizes } = listOf(given, side);
  const named = sizes.flatMap((size, k) => (size === 'rest' ? [] : [`${path}[${k}]`]));
  const whole = turned(wholeSize(given, side), (mm) => door[side] + (mm - door.opening[side]) * count);
  return withOthers(whole, named);
}

/** One of several openings: those that share the rest give way; where there are none, the door grows. */
function openingSize(given: GivenDoor, side: Side, index: number): Editable {
  const { door } = given;
  const { path, sizes } = listOf(given, side);
  const others = sizes.some((size, k) => size === 'rest' && k !== index);
  const own = `${path}[${index}]`;
  if (others) return plainSize(own);
  const now = door.openings.find((opening) => opening[PLACES[side]] === index) ?? door.opening;
  const whole = turned(wholeSize(given, side), (mm) => door[side] + mm - now[side]);
  return withOthers(whole, sizes[index] === 'rest' ? [] : [own]);
}

/** A size that is written at other places too, in the same length. */
function withOthers(editable: Editable, paths: readonly string[]): Editable {
  const { size } = editable;
  if (size === null || paths.length === 0) return editable;
  return {
    size: {
      path: paths[0]!,
      changes: (mm, write, written) => [
        ...paths.map((path) => [path, written ?? write(mm)] as const),
        ...size.changes(mm, write),
      ],
    },
    fixed: null,
  };
}

/** The first panel: its opening, and what goes into the groove on either side. */
function panelSize(given: GivenDoor, side: Side): Editable {
  const { door } = given;
  const alike = door.openings.every((opening) => Math.abs(opening[side] - door.opening[side]) < 1e-6);
  const first = door.openings.findIndex((opening) => opening[PLACES[side]] === 0);
  const opening = alike || first < 0 ? openingsSize(given, side) : openingSize(given, side, 0);
  return turned(opening, (mm) => mm - (door.panel[side] - door.opening[side]));
}

/** The radii of a head: an arch's gives its rise; those of the panel's edge lie as far out as it goes into the groove. */
function headSize({ at, door }: GivenDoor, key: string): Editable | null {
  const into = (door.panel.height - door.opening.height) / 2;
  const chord = door.opening.width;
  const byRadius = (r: number) => (2 * r < chord ? chord : r - Math.sqrt(r * r - chord ** 2 / 4));
  switch (key) {
    case 'head.radius':
      return turned(plainSize(`${at}.head.rise`), byRadius);
    case 'head.panelEdge.radius':
      return turned(plainSize(`${at}.head.rise`), (mm) => byRadius(mm - into));
    case 'head.panelEdge.crown':
      return turned(plainSize(`${at}.head.crown`), (mm) => mm - into);
    case 'head.panelEdge.ears':
      return turned(plainSize(`${at}.head.ears`), (mm) => mm + into);
    default:
      return null;
  }
}
