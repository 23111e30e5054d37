import type { SetUp } from '@fielded/core';
import { type Item, text } from '../scene.ts';
import { fitText, textWidth } from '../text/measure-text.ts';
import { sayPlan } from '../words/english/plan.ts';
import { figureText, type InVoice, spokenNumber } from '../words/lengths.ts';
import type { Mounted } from './mounted.ts';

/** Height of the big figures, mm: to be read at arm's length in bad light. */
const BIG = 10;
const LABEL = 2.8;
const NOTE = 2.5;
const COLUMNS = 3;
/** Height of a row: label, figure, note. */
const ROW = 23.5;

export const BIG_FIGURES_HEIGHT: number = 2 * ROW;

/** A figure that is set: its label stands above it, its note below. */
interface BigFigure {
  readonly label: string;
  readonly figure: string;
  readonly unit: string;
  readonly note: string;
}

/** The five figures that are set, large, and the way the head turns, in two rows of three. */
export function drawBigFigures(mounted: Mounted, voice: InVoice, x: number, y: number, width: number): Item[] {
  const column = width / COLUMNS;
  return listFigures(mounted, voice).flatMap(({ label, figure, unit, note }, k) => {
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

/** A length without its unit, and with its decimal beside it where it is a rounded fraction. */
function both(mm: number, voice: InVoice): string {
  const { text: shown, under } = figureText(mm, voice);
  return under === '' ? shown : `${shown} (${under})`;
}

/** A length without its unit. */
function plain(mm: number, voice: InVoice): string {
  return figureText(Math.abs(mm) < 0.005 ? 0 : mm, voice).text;
}

function listFigures(mounted: Mounted, voice: InVoice): BigFigure[] {
  const { rotation, feedDirection } = mounted.setUp;
  return [
    heightFigure(mounted, voice),
    fenceFigure(mounted, voice),
    ringFigure(mounted.setUp, voice),
    {
      label: sayPlan('big.speed', {}, voice),
      figure: String(mounted.setUp.speed),
      unit: '/min',
      note: sayPlan('big.speed.note', { rim: spokenNumber(mounted.setUp.rim, 1, voice) }, voice),
    },
    feedFigure(mounted.setUp, voice),
    {
      label: sayPlan(`big.turns.${rotation}`, {}, voice),
      figure: feedDirection === 'right to left' ? '←' : '→',
      unit: '',
      note: sayPlan(`big.feed.${feedDirection}`, {}, voice),
    },
  ];
}

/** Where the head sits, or as much as is known of it. */
function heightFigure({ setUp, upper }: Mounted, voice: InVoice): BigFigure {
  const { seat, cuttingPoint } = setUp;
  const unit = voice.units;
  if (seat === null) {
    const figure = plain(cuttingPoint, voice);
    return { label: sayPlan('big.knife', {}, voice), figure, note: sayPlan('big.knife.note', {}, voice), unit };
  }
  return {
    label: sayPlan(seat < 0 ? 'big.seat.below' : 'big.seat.above', {}, voice),
    figure: plain(Math.abs(seat), voice),
    note: upper
      ? sayPlan('big.seat.both', { lower: plain(cuttingPoint, voice), upper: plain(upper.cuttingPoint, voice) }, voice)
      : sayPlan('big.seat.note', { point: both(cuttingPoint, voice) }, voice),
    unit,
  };
}

/** How far the fence stands off the axis; where a curve is run, its bearing. */
function fenceFigure({ setUp, upper }: Mounted, voice: InVoice): BigFigure {
  const { fence, frame, curve } = setUp;
  if (curve?.alone) return bearingFigure(curve, voice);
  return {
    label: sayPlan(frame?.kind === 'back edge' ? 'big.bearing.radius' : 'big.fence', {}, voice),
    figure: plain(fence.toAxis, voice),
    unit: voice.units,
    note: upper
      ? sayPlan(
          'big.fence.both',
          { lower: plain(fence.standsOut, voice), upper: plain(upper.fence.standsOut, voice) },
          voice,
        )
      : sayPlan('big.fence.note', { out: both(fence.standsOut, voice) }, voice),
  };
}

function ringFigure({ hole }: SetUp, voice: InVoice): BigFigure {
  if (hole === null)
    return {
      label: sayPlan('big.ring.none', {}, voice),
      figure: '–',
      unit: '',
      note: sayPlan('big.ring.none.note', {}, voice),
    };
  return {
    label: sayPlan('big.ring', {}, voice),
    figure: hole.ring === null ? '–' : plain(hole.ring, voice),
    unit: voice.units,
    note: sayPlan('big.ring.note', { needed: plain(hole.needed, voice) }, voice),
  };
}

function feedFigure({ feedBy, feedRate, mark }: SetUp, voice: InVoice): BigFigure {
  const label = sayPlan(feedBy === 'feeder' ? 'big.feed.feeder' : 'big.feed.hand', {}, voice);
  const metres = spokenNumber(feedRate, 1, voice);
  if (voice.units === 'mm') {
    const note = sayPlan('big.feed.note', { pitch: both(mark.pitch, voice) }, voice);
    return { label, figure: metres, unit: 'm/min', note };
  }
  const note = sayPlan('big.feed.note.in', { metres, marks: 25.4 / mark.pitch }, voice);
  return { label, figure: spokenNumber(feedRate / 0.3048, 0, voice), unit: 'ft/min', note };
}

/** The bearing that stands in the fence's place where a curve is run: the one there is, or the one that is wanted. */
function bearingFigure({ guide: { bearing } }: NonNullable<SetUp['curve']>, voice: InVoice): BigFigure {
  const { needed, available, outside } = bearing;
  const label = sayPlan(available === null ? 'big.bearing.wanted' : 'big.bearing', {}, voice);
  const known = { label, figure: figureText(available ?? needed, voice).text, unit: voice.units };
  if (outside === null || outside === 0) return { ...known, note: sayPlan('big.bearing.own', {}, voice) };
  const off = { off: both(Math.abs(outside), voice) };
  return { ...known, note: sayPlan(outside > 0 ? 'big.bearing.outside' : 'big.bearing.inside', off, voice) };
}
