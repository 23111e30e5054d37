import { moveItems, text } from '../scene.ts';
import type { PlacedFigure } from './document.ts';
import { COLUMN_GAP } from './lay-tables.ts';
import { LEADING, type Piece, SMALL, space, wrap } from './page-text.ts';

/** The least width that a figure takes, for its caption, mm. */
const LEAST_FIGURE = 30;

/** Figures side by side while they fit; one that is wider than the text is not drawn larger than its paper. */
export function layFigures(figures: readonly PlacedFigure[], room: number): Piece[] {
  const rows: PlacedFigure[][] = [];
  let used = Number.POSITIVE_INFINITY;
  for (const figure of figures) {
    const width = Math.max(figure.picture.width, LEAST_FIGURE);
    if (used + COLUMN_GAP + width > room) {
      rows.push([]);
      used = -COLUMN_GAP;
    }
    rows.at(-1)!.push(figure);
    used += COLUMN_GAP + width;
  }
  return rows.flatMap((row) => [layFigureRow(row), space(3)]);
}

function layFigureRow(row: readonly PlacedFigure[]): Piece {
  const tallest = Math.max(...row.map(({ picture }) => picture.height));
  const captions = row.map(({ picture, caption }) => wrap(caption, SMALL, Math.max(picture.width, LEAST_FIGURE)));
  const lines = Math.max(...captions.map(({ length }) => length));
  return {
    height: tallest + 1 + lines * SMALL * LEADING,
    draw: (y, key) => {
      let x = 0;
      return row.flatMap(({ picture }, i) => {
        const at = x;
        x += Math.max(picture.width, LEAST_FIGURE) + COLUMN_GAP;
        return [
          // Figures of one row stand on one line.
          {
            kind: 'group' as const,
            key: `${key} figure ${i}`,
            items: moveItems(picture.items, at, y + tallest - picture.height),
          },
          ...captions[i]!.map((line, k) =>
            text(
              `${key} caption ${i} ${k}`,
              'quiet',
              at,
              y + tallest + 1 + SMALL * 1.3 + k * SMALL * LEADING,
              line,
              SMALL,
            ),
          ),
        ];
      });
    },
  };
}
