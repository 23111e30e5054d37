import { formatNumber, type Report, type SetUp } from '@fielded/core';
import { type Item, text } from '../scene.ts';
import { fitText, textWidth } from '../text/measure-text.ts';
import { figureText } from '../words/lengths.ts';
import type { Mounted } from './mounted.ts';

/** Read at arm's length in bad light. */
const BIG = 10;
const LABEL = 2.8;
const NOTE = 2.5;
const COLUMNS = 3;
/** Height of a row: label, figure, note. */
const ROW = 23.5;

export const BIG_FIGURES_HEIGHT: number = 2 * ROW;

/** A figure that is set, with what it is above it and what belongs to it below. */
interface BigFigure {
  readonly label: string;
  readonly figure: string;
  readonly unit: string;
  readonly note: string;
}

/** The five figures that are set, large, and the way it turns, in two rows of three. */
export function drawBigFigures(mounted: Mounted, units: Report['units'], x: number, y: number, width: number): Item[] {
  const column = width / COLUMNS;
  return listFigures(mounted, units).flatMap(({ label, figure, unit, note }, k) => {
    const left = x + (k % COLUMNS) * column;
    const top = y + Math.floor(k / COLUMNS) * ROW;
    const base = top + LABEL + 2.4 + BIG;
    const room = column - 6 - (unit === '' ? 0 : textWidth(unit, LABEL) + 2);
    const height = Math.min(BIG, (BIG * room) / textWidth(figure, BIG));
    const items: Item[] = [
      text(`figure ${k} label`, 'text', left, top + LABEL, fitText(label, LABEL, column - 3), LABEL),
      text(`figure ${k}`, 'text', left, base, figure, height),
      text(`figure ${k} note`, 'text', left, base + 5.2, fitText(note, NOTE, column - 3), NOTE),
    ];
    if (unit !== '')
      items.push(text(`figure ${k} unit`, 'text', left + textWidth(figure, height) + 2, base, unit, LABEL));
    return items;
  });
}

function listFigures({ setUp, upper }: Mounted, units: Report['units']): BigFigure[] {
  const length = (mm: number) => figureText(Math.abs(mm) < 0.005 ? 0 : mm, units).text;
  const both = (mm: number) => {
    const { text: shown, under } = figureText(mm, units);
    return under === '' ? shown : `${shown} (${under})`;
  };
  const { seat, hole, fence, frame } = setUp;
  const height =
    seat === null
      ? {
          label: 'Knife above the table',
          figure: length(setUp.cuttingPoint),
          note: 'seat not known',
        }
      : {
          label: seat < 0 ? 'Seat below the table' : 'Seat above the table',
          figure: length(Math.abs(seat)),
          note: upper
            ? `deepest points ${length(setUp.cuttingPoint)} and ${length(upper.cuttingPoint)}`
            : `deepest point of the knife ${both(setUp.cuttingPoint)}`,
        };
  return [
    { ...height, unit: units },
    setUp.curve?.alone
      ? bearingFigure(setUp.curve, units, both)
      : {
          label: frame?.kind === 'back edge' ? 'Bearing, its radius' : 'Fence to axis',
          figure: length(fence.toAxis),
          unit: units,
          note: upper
            ? `out ${length(fence.standsOut)} below, ${length(upper.fence.standsOut)} above`
            : `knives stand out ${both(fence.standsOut)}`,
        },
    hole === null
      ? { label: 'Table ring', figure: '–', unit: '', note: 'nothing turns in the table' }
      : {
          label: 'Ring, its hole',
          figure: hole.ring === null ? '–' : length(hole.ring),
          unit: units,
          note: `the tool needs ${length(hole.needed)}`,
        },
    {
      label: 'Speed',
      figure: String(setUp.speed),
      unit: '/min',
      note: `${formatNumber(setUp.rim, 1)} m/s at the rim`,
    },
    {
      label: setUp.feedBy === 'feeder' ? 'Feed, by the feeder' : 'Feed by hand, at most',
      figure: units === 'in' ? formatNumber(setUp.feedRate / 0.3048, 0) : formatNumber(setUp.feedRate, 1),
      unit: units === 'in' ? 'ft/min' : 'm/min',
      note:
        units === 'in'
          ? `${formatNumber(setUp.feedRate, 1)} m/min, ${formatNumber(25.4 / setUp.mark.pitch, 0)} marks an inch`
          : `knife marks ${both(setUp.mark.pitch)} apart`,
    },
    {
      label: `Spindle ${setUp.rotation}`,
      figure: setUp.feedDirection === 'right to left' ? '←' : '→',
      unit: '',
      note: `feed ${setUp.feedDirection}`,
    },
  ];
}

/** What stands in the fence's place where a curve is run: the bearing there is, or the one that is wanted. */
function bearingFigure(
  { guide: { bearing } }: NonNullable<SetUp['curve']>,
  units: Report['units'],
  both: (mm: number) => string,
): BigFigure {
  const { needed, available, outside } = bearing;
  const figure = figureText(available ?? needed, units).text;
  const known = { label: available === null ? 'Bearing wanted' : 'Bearing', figure, unit: units };
  if (outside === null || outside === 0) return { ...known, note: "on the panel's own edge" };
  return { ...known, note: `template ${both(Math.abs(outside))} ${outside > 0 ? 'outside' : 'inside'} the edge` };
}
