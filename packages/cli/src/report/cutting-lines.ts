import { byJob, type CuttingList, formatLength, formatNumber, type ListedPanel } from '@fielded/core';
import { safe } from '../io.ts';
import type { Paint } from '../terminal/paint.ts';
import { left, right, setTable, wrap } from '../terminal/table.ts';
import { WIDTH } from './plain-report.ts';

type Units = 'mm' | 'in';

/** What a cutting list cannot be taken without: errors of its jobs, and figures that nobody gave. */
export interface Reserved {
  readonly assumed: readonly string[];
  readonly errors: readonly string[];
}

/** A cutting list as tables for the terminal, errors first: frames, panels, blanks, timber. */
export function cuttingLines(list: CuttingList, units: Units, { assumed, errors }: Reserved, paint: Paint): string {
  const title = short(list.jobs.join(', '), LONGEST_TITLE);
  const unit = units === 'mm' ? 'sizes in mm' : 'sizes in inches';
  return [
    ...wrap(title, WIDTH, 0).map((line) => paint(line, 'heading')),
    paint(`${list.doors} ${list.doors === 1 ? 'door' : 'doors'}, ${unit}`, 'faint'),
    ...errorLines(errors, paint),
    '',
    paint('Frames', 'heading'),
    ...partTable(list, units),
    '',
    paint('Panels', 'heading'),
    ...panelTable(list, units),
    ...blankLines(list, units, paint),
    '',
    paint('Timber', 'heading'),
    ...timberTable(list, units),
    ...(assumed.length === 0
      ? []
      : wrap(`Assumed, since neither job nor shop says: ${assumed.join(', ')}.`, WIDTH - 2, 0).map(
          (line) => `  ${line}`,
        )),
    '',
  ].join('\n');
}

/** That there are errors, before anything is sawn; they follow the list one by one. */
function errorLines({ length }: readonly string[], paint: Paint): string[] {
  if (length === 0) return [];
  const count = length === 1 ? 'one error stands' : `${length} errors stand`;
  return ['', paint(`It cannot be made as it is: ${count} against it, under the list.`, 'error')];
}

function partTable(list: CuttingList, units: Units): string[] {
  const columns = [left('part'), right('off'), right('length'), right('width'), right('thick'), left('for')];
  return setTable(
    columns,
    list.parts.map(({ part, quantity, length, width, thickness, for: doors }) => [
      part,
      String(quantity),
      ...[length, width, thickness].map((mm) => cell(mm, units)),
      forWhom(list, doors),
    ]),
  );
}

function panelTable(list: CuttingList, units: Units): string[] {
  const columns = [
    right('off'),
    right('width'),
    right('height'),
    right('thick'),
    left('grain'),
    right('field'),
    right('kg each'),
    left('for'),
  ];
  return setTable(
    columns,
    list.panels.map(({ quantity, width, height, thickness, grain, field, weight, for: doors }) => [
      String(quantity),
      cell(width, units),
      cell(height, units),
      cell(thickness, units),
      grain,
      field === null ? 'none' : `${cell(field.width, units)} × ${cell(field.height, units)}`,
      weight === null ? '–' : formatNumber(weight, 2),
      forWhom(list, doors),
    ]),
  );
}

function blankLines({ blanks, leftOver }: CuttingList, units: Units, paint: Paint): string[] {
  if (blanks.length + leftOver.length === 0) return [];
  const columns = [right('off'), right('long'), right('wide'), left('panels'), left('rip at')];
  const rows = blanks.map(({ quantity, length, width, panels, rips }) => [
    String(quantity),
    cell(length, units),
    cell(width, units),
    panels.map((panel) => `${short(panel.door)} ${cell(panel.width, units)}`).join(', '),
    rips.map((at) => cell(at, units)).join(', '),
  ]);
  return [
    '',
    paint('Blanks: run the ends, then rip', 'heading'),
    ...(rows.length > 0 ? setTable(columns, rows) : []),
    ...leftOver.flatMap(({ door, width, length, quantity, missing }) =>
      wrap(
        // The name comes last: one that runs from right to left turns the figures after it round.
        `No blank for ${quantity} of ${cell(length, units)} × ${formatLength(width, units, 1)}: ${missing > 0 ? `${formatLength(missing, units, 1)} of width is missing. A spare` : 'a spare of any width'} (spares: true) or a carrier would do it. Door ${short(door)}`,
        WIDTH - 2,
        2,
      ).map((line) => `  ${line}`),
    ),
  ];
}

function timberTable({ timber }: CuttingList, units: Units): string[] {
  const columns = [
    left('wood'),
    right('thick'),
    right('finished'),
    right('rough'),
    right('to order'),
    left(''),
    right('board feet'),
  ];
  return setTable(
    columns,
    timber.map(({ wood, thickness, finished, rough, order, boardFeet }) => [
      wood === '' ? 'not named' : safe(wood),
      cell(thickness, units),
      formatNumber(finished, 4),
      formatNumber(rough, 4),
      formatNumber(order, 4),
      'm³',
      formatNumber(boardFeet.order, 1),
    ]),
  );
}

/** Names and titles longer than this, signs, are cut short: a table is no place for them. */
const LONGEST_NAME = 32;
const LONGEST_TITLE = 400;

function short(name: string, most: number = LONGEST_NAME): string {
  const signs = [...safe(name.slice(0, 4 * most))];
  return signs.length <= most ? signs.join('') : `${signs.slice(0, most - 1).join('')}…`;
}

function cell(mm: number, units: Units): string {
  return formatLength(mm, units, 1).replaceAll(` ${units}`, '');
}

/** "A × 4, B": the doors that pieces are for, cut short where there are many; by job where there are several. */
function forWhom(list: CuttingList, doors: ListedPanel['for']): string {
  const shown = byJob(list, doors.slice(0, 4)).map(({ job, doors: own }) => {
    const names = own.map(({ door, quantity }) => `${short(door)}${quantity > 1 ? ` × ${quantity}` : ''}`).join(', ');
    return job === '' ? names : `${short(job)}: ${names}`;
  });
  return `${shown.join('; ')}${doors.length > 4 ? ` and ${doors.length - 4} more` : ''}`;
}
