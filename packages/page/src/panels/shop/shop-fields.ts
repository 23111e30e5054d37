import type { Data } from '../../job/data.ts';

/** What a field of the shop file holds: one figure, several, words, lines, a word of some, or yes or no. */
export interface ShopField {
  readonly key: string;
  readonly label: string;
  readonly kind: 'figure' | 'figures' | 'text' | 'lines' | 'yes' | readonly string[];
  /** Shown behind the figure; `length` for the shop's own unit. */
  readonly unit?: string;
  /** The group that the key stands in, if it is not the entry itself. */
  readonly within?: string;
  /** What that group has to hold besides: written with the first value, and gone with the last. */
  readonly beside?: { readonly [key: string]: Data };
}

const length = (key: string, label: string): ShopField => ({ key, label, kind: 'figure', unit: 'length' });
const figure = (key: string, label: string, unit = ''): ShopField => ({ key, label, kind: 'figure', unit });

export const HEAD_FIELDS: readonly ShopField[] = [
  length('cuttingDiameter', 'Cutting diameter'),
  length('bodyDiameter', 'Body diameter'),
  length('height', 'Height'),
  length('bore', 'Bore'),
  figure('rake', 'Rake', '°'),
  figure('wedge', 'Sharpness angle', '°'),
  figure('knives', 'Knives'),
  length('limiterGap', 'Knife beyond limiter'),
  figure('maxSpeed', 'Greatest speed', '/min'),
  figure('minSpeed', 'Least speed', '/min'),
  { key: 'feed', label: 'Marked for feed by', kind: ['hand', 'mechanical'] },
];

export const MACHINE_FIELDS: readonly ShopField[] = [
  { key: 'speeds', label: 'Speeds', kind: 'figures', unit: '/min' },
  { key: 'seat', label: 'Seat, lowest and highest', kind: 'figures', unit: 'length' },
  length('opening', 'Hole in the table'),
  { key: 'rings', label: 'Rings', kind: 'figures', unit: 'length' },
  length('nutDiameter', 'Nut diameter'),
  length('spindle', 'Spindle diameter'),
  length('spindleLength', 'Spindle length'),
  figure('power', 'Power', 'kW'),
  length('fenceGap', 'Fence gap, at most'),
  { key: 'bearings', label: 'Bearings for curves', kind: 'figures', unit: 'length' },
  { key: 'ringFences', label: 'Ring fences', kind: 'figures', unit: 'length' },
  { key: 'feeds', label: 'Feeds', kind: 'figures', unit: 'm/min' },
  { key: 'reversing', label: 'Turns both ways', kind: 'yes' },
];

export const RULE_FIELDS: readonly ShopField[] = [
  length('leastEndGrainWidth', 'Least width on end grain'),
  length('kerf', 'Saw kerf'),
  length('edgeAllowance', 'Cleaned off a sawn edge'),
  length('greatestBlankWidth', 'Widest blank'),
  length('knifeMark', 'Knife marks at most'),
  length('leastEngagement', 'Least left in the groove'),
  length('stripWidth', 'Widest strip'),
  figure('yield', 'Share of timber used'),
];

export const RATE_FIELDS: readonly ShopField[] = [
  { key: 'currency', label: 'Currency, such as EUR', kind: 'text' },
  figure('hour', 'An hour’s work'),
  figure('setUp', 'Each set-up', 'h'),
  figure('metresPerHour', 'Edge run in an hour', 'm'),
  figure('door', 'Each door', 'h'),
  figure('finish', 'Finish, each m²'),
  figure('knife', 'Each new knife'),
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

/** A head to begin with: its sizes are those of a common one, to be typed over with what is marked on yours. */
export const NEW_HEAD = {
  mm: { cuttingDiameter: 125, bodyDiameter: 72, height: 40, rake: 15, maxSpeed: 9000 },
  in: { cuttingDiameter: 5, bodyDiameter: '2-7/8', height: '1-1/2', rake: 15, maxSpeed: 9000 },
} as const;

/** A machine to begin with, likewise. */
export const NEW_MACHINE = {
  mm: { speeds: [3000, 4500, 6000, 8000], seat: [-60, 90], opening: 200, nutDiameter: 48 },
  in: { speeds: [3000, 4500, 6000, 8000], seat: ['-2-1/2', '3-1/2'], opening: 8, nutDiameter: 2 },
} as const;
