import { byJob, type CuttingList, formatLength, formatNumber, type ListedPanel, say as sayCore } from '@fielded/core';
import { safe } from '../io.ts';
import { SHEET_WIDTH } from '../terminal/columns.ts';
import type { Paint } from '../terminal/paint.ts';
import { indent, left, right, setTable, wrap } from '../terminal/table.ts';
import { say, sayAll } from '../words/say.ts';
import { type Shown, sayFigure } from './figures.ts';

/** What a reader of a cutting list has to know first: errors of its jobs, and figures that were assumed. */
export interface Reserved {
  readonly assumed: readonly string[];
  readonly errors: readonly string[];
}

/** A cutting list as tables for the terminal, errors first: frames, panels, blanks, timber. */
export function cuttingLines(list: CuttingList, voice: Shown, { assumed, errors }: Reserved, paint: Paint): string {
  const title = short(list.jobs.join(', '), LONGEST_TITLE);
  const assumedWords =
    assumed.length === 0 ? '' : say('print.list.assumed', { figures: sayAll(assumed, 'print.list.and', voice) }, voice);
  return [
    ...wrap(title, SHEET_WIDTH, 0).map((line) => paint(line, 'heading')),
    paint(sayDoors(list, voice), 'faint'),
    ...errorLines(errors.length, voice, paint),
    '',
    paint(say('print.list.frames', {}, voice), 'heading'),
    ...partTable(list, voice),
    '',
    paint(say('print.list.panels', {}, voice), 'heading'),
    ...panelTable(list, voice),
    ...blankLines(list, voice, paint),
    '',
    paint(say('print.list.timber', {}, voice), 'heading'),
    ...timberTable(list, voice),
    ...(assumedWords === '' ? [] : indent(wrap(assumedWords, SHEET_WIDTH - 2, 0))),
    '',
  ].join('\n');
}

function sayDoors({ doors }: CuttingList, voice: Shown): string {
  const key = `print.list.head.${voice.units}` as const;
  return doors === 1 ? say(`${key}.one`, {}, voice) : say(key, { doors: String(doors) }, voice);
}

/** Says before the list that there are errors; each is listed after it. */
function errorLines(errors: number, voice: Shown, paint: Paint): string[] {
  if (errors === 0) return [];
  const words = errors === 1 ? say('print.list.error.one', {}, voice) : say('print.list.error.more', { errors }, voice);
  return ['', paint(words, 'error')];
}

function partTable(list: CuttingList, voice: Shown): string[] {
  const columns = [
    left(say('print.list.part', {}, voice)),
    ...rights(['off', 'length', 'width', 'thick'], voice),
    left(say('print.list.for', {}, voice)),
  ];
  return setTable(
    columns,
    list.parts.map(({ part, quantity, length, width, thickness, for: doors }) => [
      safe(sayCore(`part.${part}`, {}, voice)),
      String(quantity),
      ...[length, width, thickness].map((mm) => cell(mm, voice)),
      forWhom(list, doors, voice),
    ]),
  );
}

function rights(keys: readonly ('off' | 'length' | 'width' | 'height' | 'thick' | 'long' | 'wide')[], voice: Shown) {
  return keys.map((key) => right(say(`print.list.${key}`, {}, voice)));
}

function panelTable(list: CuttingList, voice: Shown): string[] {
  const columns = [
    ...rights(['off', 'width', 'height', 'thick'], voice),
    left(say('print.list.grain', {}, voice)),
    right(say('print.list.field', {}, voice)),
    right(say('print.list.kg', {}, voice)),
    left(say('print.list.for', {}, voice)),
  ];
  return setTable(
    columns,
    list.panels.map(({ quantity, width, height, thickness, grain, field, weight, for: doors }) => [
      String(quantity),
      cell(width, voice),
      cell(height, voice),
      cell(thickness, voice),
      say(`print.grain.${grain}`, {}, voice),
      field === null
        ? say('print.list.field.none', {}, voice)
        : `${cell(field.width, voice)} × ${cell(field.height, voice)}`,
      weight === null ? '–' : figure(weight, 2, voice),
      forWhom(list, doors, voice),
    ]),
  );
}

function blankLines({ blanks, leftOver }: CuttingList, voice: Shown, paint: Paint): string[] {
  if (blanks.length + leftOver.length === 0) return [];
  const columns = [
    ...rights(['off', 'long', 'wide'], voice),
    left(say('print.list.ride', {}, voice)),
    left(say('print.list.rips', {}, voice)),
  ];
  const rows = blanks.map(({ quantity, length, width, panels, rips }) => [
    String(quantity),
    cell(length, voice),
    cell(width, voice),
    listPlaces(
      panels.map((panel) => `${short(panel.door)} ${cell(panel.width, voice)}`),
      voice,
    ),
    listPlaces(
      rips.map((at) => cell(at, voice)),
      voice,
    ),
  ]);
  return [
    '',
    paint(say('print.list.blanks', {}, voice), 'heading'),
    ...(rows.length > 0 ? setTable(columns, rows) : []),
    ...leftOver.flatMap((panel) => indent(wrap(leftOverWords(panel, voice), SHEET_WIDTH - 2, 2))),
  ];
}

/** Sizes after each other; with a decimal comma semicolons part them. */
function listPlaces(places: readonly string[], { language }: Shown): string {
  return places.join(language?.decimal === ',' ? '; ' : ', ');
}

/** That no blank takes a panel. The door's name comes last: one that runs from right to left turns the figures after it round. */
function leftOverWords(
  { door, width, length, quantity: count, missing }: CuttingList['leftOver'][number],
  voice: Shown,
): string {
  const sizes = { count, length: cell(length, voice), width: coarse(width, voice), door: short(door) };
  return missing > 0
    ? say('print.list.left.missing', { ...sizes, missing: coarse(missing, voice) }, voice)
    : say('print.list.left.any', sizes, voice);
}

function timberTable({ timber }: CuttingList, voice: Shown): string[] {
  const columns = [
    left(say('print.list.wood', {}, voice)),
    right(say('print.list.thick', {}, voice)),
    right(say('print.list.finished', {}, voice)),
    right(say('print.list.rough', {}, voice)),
    right(say('print.list.order', {}, voice)),
    left(''),
    right(say('print.list.board-feet', {}, voice)),
  ];
  return setTable(
    columns,
    timber.map(({ wood, thickness, finished, rough, order, boardFeet }) => [
      wood === '' ? say('print.list.wood.none', {}, voice) : safe(wood),
      cell(thickness, voice),
      figure(finished, 4, voice),
      figure(rough, 4, voice),
      figure(order, 4, voice),
      'm³',
      figure(boardFeet.order, 1, voice),
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

function coarse(mm: number, { units, language }: Shown): string {
  return sayFigure(formatLength(mm, units, 1), language);
}

function cell(mm: number, voice: Shown): string {
  return coarse(mm, voice).replaceAll(` ${voice.units}`, '');
}

function figure(value: number, digits: number, { language }: Shown): string {
  return sayFigure(formatNumber(value, digits), language);
}

/** "A × 4, B": the doors that pieces are for, cut short where there are many; by job where there are several. */
function forWhom(list: CuttingList, doors: ListedPanel['for'], voice: Shown): string {
  const shown = byJob(list, doors.slice(0, 4)).map(({ job, doors: own }) => {
    const names = own.map(({ door, quantity: count }) =>
      count > 1 ? say('print.list.times', { door: short(door), count }, voice) : short(door),
    );
    const listed = sayAll(names, 'print.list.and', voice);
    return job === '' ? listed : say('print.list.of-job', { job: short(job), doors: listed }, voice);
  });
  const all = sayAll(shown, 'print.list.jobs.and', voice);
  return doors.length > 4 ? say('print.list.more', { doors: all, count: doors.length - 4 }, voice) : all;
}
