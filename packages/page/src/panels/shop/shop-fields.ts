import { sayTerm, type Term, type Terms } from '@fielded/core';
import type { Data } from '../../job/data.ts';

/** What a field of the shop file holds: one figure, several, words, lines, a word of some, or yes or no. */
export interface ShopField {
  readonly key: string;
  readonly label: string;
  readonly kind: 'figure' | 'figures' | 'text' | 'lines' | 'yes' | readonly string[];
  /** Shown behind the figure; `length` for the shop's own unit, `currency` for that of its rates. */
  readonly unit?: string;
  /** The group that the key stands in, if it is not the entry itself. */
  readonly within?: string;
  /** The term it is called by on the job's side of the Atlantic, as its sentences say it. */
  readonly term?: Term;
  /** What that group has to hold besides: written with the first value, and gone with the last. */
  readonly beside?: { readonly [key: string]: Data };
}

/** What a field is called. */
export function labelOf({ label, term }: ShopField, terms: Terms): string {
  if (term === undefined) return label;
  const words = sayTerm(term, terms);
  return words[0]!.toUpperCase() + words.slice(1);
}

const length = (key: string, label: string): ShopField => ({ key, label, kind: 'figure', unit: 'length' });
const figure = (key: string, label: string, unit = ''): ShopField => ({ key, label, kind: 'figure', unit });

const figures = (key: string, label: string, unit: string): ShopField => ({ key, label, kind: 'figures', unit });
const yes = (key: string, label: string): ShopField => ({ key, label, kind: 'yes' });

export const HEAD_FIELDS: readonly ShopField[] = [
  length('cuttingDiameter', 'Cutting diameter'),
  length('bodyDiameter', 'Body diameter'),
  length('height', 'Height'),
  length('bore', 'Bore'),
  { ...figure('rake', 'Rake', '°'), term: 'rake' },
  { ...figure('wedge', 'Sharpness angle', '°'), term: 'wedge' },
  figure('shear', 'Shear', '°'),
  figure('knives', 'Knives'),
  length('knifeThickness', 'Knife, thickness'),
  length('limiterGap', 'Knife beyond limiter'),
  figure('maxSpeed', 'Greatest speed', '/min'),
  figure('minSpeed', 'Least speed', '/min'),
  { key: 'feed', label: 'Marked for feed by', kind: ['hand', 'mechanical'] },
  figures('slots', 'Slots for: under, over', ''),
  yes('jointed', 'Knives jointed'),
];

export const MACHINE_FIELDS: readonly ShopField[] = [
  figures('speeds', 'Speeds', '/min'),
  figures('seat', 'Seat, lowest and highest', 'length'),
  length('opening', 'Hole in the table'),
  figures('rings', 'Rings', 'length'),
  length('nutDiameter', 'Nut diameter'),
  length('spindle', 'Spindle diameter'),
  length('spindleLength', 'Spindle length'),
  figure('power', 'Power', 'kW'),
  length('fenceGap', 'Fence gap, at most'),
  figures('feeds', 'Feeds', 'm/min'),
  figures('tilt', 'Tilt, least and most', '°'),
  figures('bearings', 'Bearings', 'length'),
  figures('ringFences', 'Ring fences', 'length'),
  yes('reversing', 'Turns both ways'),
  yes('tallFence', 'Has a tall fence'),
];

export const RULE_FIELDS: readonly ShopField[] = [
  length('leastEndGrainWidth', 'Least width on end grain'),
  length('greatestBlankWidth', 'Widest blank'),
  length('kerf', 'Saw kerf'),
  length('edgeAllowance', 'Cleaned off a sawn edge'),
  length('leastEngagement', 'Least left in the groove'),
  length('leastTongue', 'Thinnest tip of a tongue'),
  length('knifeMark', 'Knife marks at most'),
  figures('rimSpeed', 'Rim speed, least and most', 'm/s'),
  length('fenceClearance', 'Left round what turns'),
  length('lastPass', 'Depth of the last pass'),
  figure('cuttingEnergy', 'Work of cutting', 'N/mm²'),
  figure('leastClearance', 'Least clearance behind the edge', '°'),
  figure('leastSideClearance', 'Least clearance at the side', '°'),
  length('overrun', 'Steel beyond edge and face'),
  length('overLength', 'Rough timber, longer by'),
  length('overWidth', 'Rough timber, wider by'),
  length('stripWidth', 'Widest strip'),
  figure('yield', 'Share of timber used'),
];

export const WOOD_FIELDS: readonly ShopField[] = [
  figure('tangential', 'Along the rings, each % moisture'),
  figure('radial', 'Across the rings, each % moisture'),
  figure('density', 'Density at 12 %', 'kg/m³'),
];

/** What a knife is besides its profile. */
export const KNIFE_FIELDS: readonly ShopField[] = [
  length('fromFace', 'Deepest point from the head’s face'),
  {
    ...words('run', 'Ground for running', ['under', 'over']),
    within: 'groundFor',
    beside: { rotation: 'counterclockwise' },
  },
  {
    ...words('rotation', 'Ground for turning', ['counterclockwise', 'clockwise']),
    within: 'groundFor',
    beside: { run: 'under' },
  },
  { key: 'presented', label: 'Ground for a panel held', kind: 'text' },
  figure('sideRelief', 'Side relief', '°'),
  { key: 'measured', label: 'Measured off the', kind: ['wood', 'knife'] },
  { key: 'kept', label: 'Its sample is kept', kind: 'text' },
];

/** The sizes of a named shape; which of them a shape has. */
export const PROFILE_FIELDS: readonly ShopField[] = [
  length('reach', 'Reach'),
  length('depth', 'Depth'),
  length('land', 'Land'),
  length('shoulder', 'Shoulder'),
  figure('balance', 'Hollow'),
];

function words(key: string, label: string, of: readonly string[]): ShopField {
  return { key, label, kind: ['', ...of] };
}

export const RATE_FIELDS: readonly ShopField[] = [
  { key: 'currency', label: 'Currency, such as EUR', kind: 'text' },
  figure('hour', 'An hour’s work', 'currency'),
  figure('setUp', 'Each set-up', 'h'),
  figure('metresPerHour', 'Edge run in an hour', 'm'),
  figure('door', 'Each door', 'h'),
  figure('finish', 'Finish, each m²', 'currency'),
  figure('knife', 'Each new knife', 'currency'),
  figure('margin', 'Margin', '%'),
  { ...figure('rate', 'Tax', '%'), within: 'tax', beside: { name: 'Tax' } },
  { key: 'name', label: 'Name of the tax', kind: 'text', within: 'tax' },
  figure('deposit', 'With the order', '%'),
  figure('validDays', 'A quote holds', 'days'),
];

export const TERMS_FIELD: ShopField = { key: 'terms', label: 'Your terms, a paragraph to a line', kind: 'lines' };

/** What stands at the head of a quote. */
export const MAKER_FIELDS: readonly ShopField[] = [
  { key: 'name', label: 'Name of the shop', kind: 'text' },
  { key: 'address', label: 'Address, a line each', kind: 'lines' },
];

/** A head to begin with: its sizes are those of a common one that takes a raise of 38 mm or 1-1/2 in, to be typed over with what is marked on yours. */
export const NEW_HEAD = {
  mm: { cuttingDiameter: 160, bodyDiameter: 70, height: 40, rake: 15, maxSpeed: 7000 },
  in: { cuttingDiameter: '6-1/4', bodyDiameter: '2-3/4', height: '1-1/2', rake: 15, maxSpeed: 7000 },
} as const;

/** A machine to begin with, likewise. */
export const NEW_MACHINE = {
  mm: { speeds: [3000, 4500, 6000, 8000], seat: [-60, 90], opening: 200, nutDiameter: 48 },
  in: { speeds: [3000, 4500, 6000, 8000], seat: ['-2-1/2', '3-1/2'], opening: 8, nutDiameter: 2 },
} as const;

/** A knife to begin with: a cove, to be typed over. */
export const NEW_KNIFE = {
  mm: { shape: 'cove', reach: 14, depth: 5, land: 9 },
  in: { shape: 'cove', reach: '9/16', depth: '3/16', land: '3/8' },
} as const;

/** A wood to begin with: figures near those of many, to be typed over with your own. */
export const NEW_WOOD = { tangential: 0.003, radial: 0.002 } as const;
