import { formatNumber, type Report } from '@fielded/core';
import type { Paint } from '../terminal/paint.ts';
import { indent, left, right, setTable, wrap } from '../terminal/table.ts';
import { say } from '../words/say.ts';
import { cellLength, type Shown, sayFigure, sayLength } from './figures.ts';

/** How the panel is held, by `pinned`. */
const HELD = {
  true: 'print.season.held.centre',
  edge: 'print.season.held.edge',
  false: 'print.season.held.free',
} as const;

/** The joint through the seasons; nothing where the job gives none. Its warnings stand among the problems. */
export function seasonLines({ season, ...voice }: Report, width: number, paint: Paint): string[] {
  if (season === undefined) return [];
  const rows = (['made', 'driest', 'dampest'] as const).map((state) => {
    const { moisture, insertion, bottomGap, clearance, bare } = season[state];
    return [
      say(`print.season.${state}`, {}, voice),
      `${sayFigure(formatNumber(moisture, 1), voice.language)} %`,
      ...[insertion, bottomGap, clearance, bare].map((mm) => cellLength(mm, voice)),
    ];
  });
  const columns = (['moisture', 'insertion', 'gap', 'clearance', 'bare'] as const).map((key) =>
    right(say(`print.season.${key}`, {}, voice)),
  );
  return [
    '',
    paint(say('print.season', {}, voice), 'heading'),
    ...setTable([left(''), ...columns], rows),
    ...indent(wrap(movementWords(season, voice), width - 2, 0)),
  ];
}

/** Of which panel it is, how it is held, and by how much its wood moves. */
function movementWords(season: NonNullable<Report['season']>, voice: Shown): string {
  const { species: wood, door, pinned, coefficients } = season;
  const width = sayLength(season.width, voice);
  const held = say(HELD[String(pinned) as keyof typeof HELD], {}, voice);
  const panel =
    door === undefined
      ? say('print.season.panel', { wood, width, held }, voice)
      : say('print.season.panel.door', { wood, width, door, held }, voice);
  const moves = {
    across: sayFigure(String(coefficients.across), voice.language),
    thickness: sayFigure(String(coefficients.thickness), voice.language),
  };
  return `${panel} ${say('print.season.moves', moves, voice)}`;
}
