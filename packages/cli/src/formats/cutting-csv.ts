import { byJob, type CuttingList, type ListedPanel, toMillimetres } from '@fielded/core';
import type { Reserved } from '../report/cutting-lines.ts';
import { csvRow } from './csv-row.ts';

/** The first row, by which a file is known to be ours. */
export const CUTTING_HEADINGS = 'piece,off,length,width,thickness,grain,wood,for,note';

/**
 * A cutting list as CSV (RFC 4180): a row for each size of part, panel, blank and rough piece; lengths in the list's unit, along
 * the grain first. Errors of the jobs come first, what is assumed last. Texts that a spreadsheet would take for a formula start with an apostrophe.
 */
export function cuttingCsv(list: CuttingList, units: 'mm' | 'in', { assumed, errors }: Reserved): string {
  const size = (mm: number) => String(Number((mm / toMillimetres(1, units)).toFixed(4)));
  const note = (what: string, words: string) => [what, '', '', '', '', '', '', '', words];
  const rows: string[][] = [
    ...errors.map((message) => note('error', message)),
    ...list.parts.map((p) => [
      p.part,
      String(p.quantity),
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
      const kg = p.weight === null ? '' : `${p.weight.toFixed(3)} kg each`;
      return [
        'panel',
        String(p.quantity),
        size(length),
        size(width),
        size(p.thickness),
        p.grain,
        '',
        forWhom(list, p.for),
        kg,
      ];
    }),
    ...list.blanks.map((b) => [
      'blank',
      String(b.quantity),
      size(b.length),
      size(b.width),
      size(b.thickness),
      'along',
      '',
      b.panels.map(({ door, width }) => `${door} ${size(width)}`).join('; '),
      b.rips.length > 0 ? `rip at ${b.rips.map(size).join('; ')}` : '',
    ]),
    ...list.timber.flatMap(({ wood, thickness, pieces, order, boardFeet }) => [
      ...pieces.map((p) => [
        'rough piece',
        String(p.quantity),
        size(p.length),
        size(p.width),
        size(thickness),
        'along',
        wood,
        p.what,
        p.strips > 1 ? `${p.strips} strips of ${size(p.stripWidth)}` : '',
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
        `${order.toFixed(4)} m³ = ${boardFeet.order.toFixed(2)} board feet`,
      ],
    ]),
    ...list.leftOver.map((p) => [
      'no blank',
      String(p.quantity),
      size(p.length),
      size(p.width),
      '',
      'along',
      '',
      p.door,
      p.missing > 0 ? `${size(p.missing)} of width is missing` : 'a spare of any width is missing',
    ]),
    ...assumed.map((words) => note('assumed', words)),
  ];
  return `${CUTTING_HEADINGS} (${units})\r\n${rows.map(csvRow).join('')}`;
}

function forWhom(list: CuttingList, doors: ListedPanel['for']): string {
  return byJob(list, doors)
    .map(({ job, doors: own }) => {
      const names = own.map(({ door, quantity }) => `${door} x ${quantity}`).join('; ');
      return job === '' ? names : `${job}: ${names}`;
    })
    .join('; ');
}
