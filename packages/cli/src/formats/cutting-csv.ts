import { byJob, type CuttingList, type ListedPanel, toMillimetres } from '@fielded/core';
import type { Reserved } from '../report/cutting-lines.ts';
import { csvNumber, csvRow, type Decimal } from './csv-row.ts';

/** The first row, by which a file is known to be ours. */
export const CUTTING_HEADINGS: readonly string[] = [
  'piece',
  'off',
  'length',
  'width',
  'thickness',
  'grain',
  'wood',
  'for',
  'note',
];

/**
 * A cutting list as CSV (RFC 4180): a row for each size of part, panel, blank and rough piece; lengths in the list's unit, along
 * the grain first. Errors of the jobs come first, what is assumed last. Numbers with the sign given between
 * whole and part; semicolons part the columns where that is a comma.
 */
export function cuttingCsv(
  list: CuttingList,
  units: 'mm' | 'in',
  { assumed, errors }: Reserved,
  decimal: Decimal = '.',
): string {
  const size = (mm: number) => Number((mm / toMillimetres(1, units)).toFixed(4));
  const said = (mm: number) => csvNumber(size(mm), decimal);
  const fixed = (value: number, digits: number) => value.toFixed(digits).replace('.', decimal);
  const note = (what: string, words: string) => [what, '', '', '', '', '', '', '', words];
  const rows: (string | number)[][] = [
    ...errors.map((message) => note('error', message)),
    ...list.parts.map((p) => [
      p.part,
      p.quantity,
      size(p.length),
      size(p.width),
      size(p.thickness),
      'along',
      '',
      forWhom(list, p.for),
      '',
    ]),
    ...list.panels.map((p) => {
      const [length, width] = p.grain === 'up' ? [p.height, p.width] : [p.width, p.height];
      const kg = p.weight === null ? '' : `${fixed(p.weight, 3)} kg each`;
      return ['panel', p.quantity, size(length), size(width), size(p.thickness), p.grain, '', forWhom(list, p.for), kg];
    }),
    ...list.blanks.map((b) => [
      'blank',
      b.quantity,
      size(b.length),
      size(b.width),
      size(b.thickness),
      'along',
      '',
      b.panels.map(({ door, width }) => `${door} ${said(width)}`).join('; '),
      b.rips.length > 0 ? `rip at ${b.rips.map(said).join('; ')}` : '',
    ]),
    ...list.timber.flatMap(({ wood, thickness, pieces, order, boardFeet }) => [
      ...pieces.map((p) => [
        'rough piece',
        p.quantity,
        size(p.length),
        size(p.width),
        size(thickness),
        'along',
        wood,
        p.what,
        p.strips > 1 ? `${p.strips} strips of ${said(p.stripWidth)}` : '',
      ]),
      [
        'order',
        '',
        '',
        '',
        size(thickness),
        '',
        wood,
        '',
        `${fixed(order, 4)} m³ = ${fixed(boardFeet.order, 2)} board feet`,
      ],
    ]),
    ...list.leftOver.map((p) => [
      'no blank',
      p.quantity,
      size(p.length),
      size(p.width),
      '',
      'along',
      '',
      p.door,
      p.missing > 0 ? `${said(p.missing)} of width is missing` : 'a spare of any width is missing',
    ]),
    ...assumed.map((words) => note('assumed', words)),
  ];
  const headings = [...CUTTING_HEADINGS.slice(0, -1), `${CUTTING_HEADINGS.at(-1)} (${units})`];
  return [headings, ...rows].map((row) => csvRow(row, decimal)).join('');
}

function forWhom(list: CuttingList, doors: ListedPanel['for']): string {
  return byJob(list, doors)
    .map(({ job, doors: own }) => {
      const names = own.map(({ door, quantity }) => `${door} x ${quantity}`).join('; ');
      return job === '' ? names : `${job}: ${names}`;
    })
    .join('; ');
}
