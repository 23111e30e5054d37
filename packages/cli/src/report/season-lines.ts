import { formatNumber, type Report } from '@fielded/core';
import { safe } from '../io.ts';
import type { Paint } from '../terminal/paint.ts';
import { indent, setTable, wrap } from '../terminal/table.ts';
import { cellLength, sayFigure, sayLength } from './figures.ts';

/** How the panel is held, by `pinned`. */
const HELD = {
  true: 'pinned at its centre, so each edge takes half',
  edge: 'pinned along one edge, so the other takes all of it',
  false: 'free: it may slide to one side',
} as const;

/** The joint through the seasons; nothing where the job gives none. Its warnings stand among the problems. */
export function seasonLines({ season, ...voice }: Report, width: number, paint: Paint): string[] {
  if (season === undefined) return [];
  const rows = (['made', 'driest', 'dampest'] as const).map((state) => {
    const { moisture, insertion, bottomGap, clearance, bare } = season[state];
    return [
      state === 'made' ? 'as made' : state,
      `${sayFigure(formatNumber(moisture, 1), voice.language)} %`,
      ...[insertion, bottomGap, clearance, bare].map((mm) => cellLength(mm, voice)),
    ];
  });
  const { across, thickness } = season.coefficients;
  const held = HELD[String(season.pinned) as keyof typeof HELD];
  const movement = `${safe(season.species)}, ${sayLength(season.width, voice)} wide${season.door === undefined ? '' : ` (the widest panel, door ${safe(season.door)})`}, ${held}. Moves by ${across} of its width and ${thickness} of its thickness for each % of moisture (USDA Wood Handbook, table 13-5).`;
  const headings = ['', 'moisture', 'goes in', 'gap at bottom', 'clearance', 'bare strip'];
  return [
    '',
    paint('Seasons', 'heading'),
    ...setTable(
      headings.map((heading) => ({ heading, align: heading === '' ? ('left' as const) : ('right' as const) })),
      rows,
    ),
    ...indent(wrap(movement, width - 2, 0)),
  ];
}
