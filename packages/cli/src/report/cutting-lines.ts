import { type CuttingList, formatLength, formatNumber, type ListedPanel } from '@fielded/core';
import { safe } from '../io.ts';
import type { Paint } from '../terminal/paint.ts';
import { left, right, setTable, wrap } from '../terminal/table.ts';
import { WIDTH } from './plain-report.ts';

type Units = 'mm' | 'in';

/** A cutting list as tables for the terminal: frames, panels, blanks, timber. */
export function cuttingLines(list: CuttingList, units: Units, assumed: readonly string[], paint: Paint): string {
  const title = safe(list.jobs.join(', '));
  const unit = units === 'mm' ? 'sizes in mm' : 'sizes in inches';
  return [
    ...wrap(title, WIDTH, 0).map((line) => paint(line, 'heading')),
    paint(`${list.doors} ${list.doors === 1 ? 'door' : 'doors'}, ${unit}`, 'faint'),
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
      : wrap(`Assumed, since the shop file does not say: ${assumed.join(', ')}.`, WIDTH - 2, 0).map(
          (line) => `  ${line}`,
        )),
    '',
  ].join('\n');
}

function partTable({ parts }: CuttingList, units: Units): string[] {
  const columns = [left('part'), right('off'), right('length'), right('width'), right('thick'), left('for')];
  return setTable(
    columns,
    parts.map(({ part, quantity, length, width, thickness, for: doors }) => [
      part,
      String(quantity),
      ...[length, width, thickness].map((mm) => cell(mm, units)),
      forWhom(doors),
    ]),
  );
}

function panelTable({ panels }: CuttingList, units: Units): string[] {
  const columns = [
    right('off'),
    right('width'),
    right('height'),
    left('grain'),
    right('field'),
    right('kg each'),
    left('for'),
  ];
  return setTable(
    columns,
    panels.map(({ quantity, width, height, grain, field, weight, for: doors }) => [
      String(quantity),
      cell(width, units),
      cell(height, units),
      grain,
      field === null ? 'none' : `${cell(field.width, units)} × ${cell(field.height, units)}`,
      weight === null ? '–' : formatNumber(weight, 2),
      forWhom(doors),
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
    panels.map((panel) => `${safe(panel.door)} ${cell(panel.width, units)}`).join(', '),
    rips.map((at) => cell(at, units)).join(', '),
  ]);
  return [
    '',
    paint('Blanks: run the ends, then rip', 'heading'),
    ...(rows.length > 0 ? setTable(columns, rows) : []),
    ...leftOver.flatMap(({ door, width, length, quantity, missing }) =>
      wrap(
        `No blank for ${quantity} of ${safe(door)}, ${cell(width, units)} × ${cell(length, units)}: ${formatLength(missing, units, 1)} of width is missing. A spare (spares: true) or a carrier would do it.`,
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

function cell(mm: number, units: Units): string {
  return formatLength(mm, units, 1).replaceAll(` ${units}`, '');
}

/** "A × 4, B": the doors that pieces are for, cut short where there are many. */
function forWhom(doors: ListedPanel['for']): string {
  const shown = doors.slice(0, 4).map(({ door, quantity }) => `${safe(door)}${quantity > 1 ? ` × ${quantity}` : ''}`);
  return doors.length > 4 ? `${shown.join(', ')} and ${doors.length - 4} more` : shown.join(', ');
}
