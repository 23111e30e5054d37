import { formatLength, type Report } from '@fielded/core';
import { safe } from '../io.ts';
import { SHEET_WIDTH } from '../terminal/columns.ts';
import { type Column, left, right, setTable, wrap } from '../terminal/table.ts';
import { say, sayAll } from '../words/say.ts';
import { cellArea, cellLength, type Shown, sayFigure } from './figures.ts';

/** The cuts as a table, and under it what its columns cannot hold. */
export function cutTable({ section, ...voice }: Report): string[] {
  const columns: Column[] = [
    ...(['name', 'side', 'shape', 'run'] as const).map((key) => left(say(`print.cut.${key}`, {}, voice))),
    ...(['depth', 'reach', 'land', 'shoulder', `takes.${voice.units}`] as const).map((key) =>
      right(say(`print.cut.${key}`, {}, voice)),
    ),
  ];
  const rows = section.cuts.map((cut) => {
    const drawn = cut.shape === 'outline';
    const lengths = [cut.depth, cut.reach, drawn ? null : cut.land, drawn ? null : cut.shoulder];
    return [
      shorten(safe(cut.name), 17),
      say(`print.side.${cut.side}`, {}, voice),
      say(`print.shape.${cut.shape}`, {}, voice),
      runWords(cut.run, cut.presented, voice),
      ...lengths.map((mm) => cellLength(mm, voice)),
      cellArea(cut.removedArea, voice),
    ];
  });
  return [...setTable(columns, rows), ...cutNotes({ section, ...voice })];
}

/** What the columns cannot hold: a depth that differs from the setting, wood taken twice or against the drawing. */
function cutNotes({ section, ...voice }: Pick<Report, 'section' | 'units' | 'language'>): string[] {
  return section.cuts.flatMap((cut) => {
    const notes: string[] = [];
    if (Math.abs(cut.depthCut - cut.depth) > 1e-9) {
      const depth = sayFigure(formatLength(cut.depthCut, voice.units), voice.language);
      notes.push(say('print.cut.depth-cut', { depth }, voice));
    }
    if (cut.sharedArea > 1e-9) notes.push(say('print.cut.shared', { area: cellArea(cut.sharedArea, voice) }, voice));
    if (cut.takenFromDrawing > 1e-9)
      notes.push(say('print.cut.against-drawing', { area: cellArea(cut.takenFromDrawing, voice) }, voice));
    if (notes.length === 0) return [];
    const words = say('print.cut.notes', { cut: cut.name, notes: sayAll(notes, 'print.cut.notes.and', voice) }, voice);
    return wrap(`  ${words}`, SHEET_WIDTH, 4);
  });
}

function runWords(run: 'under' | 'over', presented: number, voice: Shown): string {
  if (presented === 0) return say(`print.run.${run}`, {}, voice);
  if (presented === 90) return say('print.run.on-edge', {}, voice);
  return say(`print.run.${run}.tilted`, { tilt: presented }, voice);
}

function shorten(text: string, most: number): string {
  return text.length > most ? `${text.slice(0, most - 1)}…` : text;
}
