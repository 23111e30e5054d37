import {
  AlignmentType,
  BorderStyle,
  ImageRun,
  Paragraph,
  type Table,
  TableCell,
  TextRun,
  VerticalAlign,
  WidthType,
} from 'docx';
import {
  altText,
  BARE,
  type Borders,
  cell,
  image,
  PIXELS_PER_MM,
  TWIPS_PER_MM,
  table,
  writeText,
} from './docx-parts.ts';
import type { WordBlock, WordCell } from './word-document.ts';

type Figures = (WordBlock & { kind: 'figures' })['figures'];

/** Least width that a figure and its caption take, mm. */
const LEAST_FIGURE = 30;
const BETWEEN_FIGURES = 5;

/** Figures side by side while they fit. */
export function figureRows(figures: Figures, room: number): Figures[] {
  const rows: Figures[number][][] = [];
  let used = Number.POSITIVE_INFINITY;
  for (const figure of figures) {
    const width = Math.max(LEAST_FIGURE, figure.picture.width) + BETWEEN_FIGURES;
    if (used + width > room + BETWEEN_FIGURES) {
      rows.push([]);
      used = 0;
    }
    rows.at(-1)!.push(figure);
    used += width;
  }
  return rows;
}

/** One row of figures with their captions, standing on one line. */
export function writeFigures(figures: Figures, room: number): Table {
  const widths = figures.map(({ picture }) => Math.max(LEAST_FIGURE, picture.width) + BETWEEN_FIGURES);
  const whole = Math.max(
    room,
    widths.reduce((sum, width) => sum + width, 0),
  );
  const shares = widths.map((width) => (100 * width) / whole);
  const cells = figures.map(
    ({ picture, caption }, i) =>
      new TableCell({
        children: [new Paragraph({ children: [image(picture)] }), writeText(caption, 'quiet')],
        borders: BARE,
        verticalAlign: VerticalAlign.BOTTOM,
        margins: { right: 60 },
        width: { size: Math.round(widths[i]! * TWIPS_PER_MM), type: WidthType.DXA },
      }),
  );
  return table([cells], shares, room);
}

/** The firm's name and address with its logo beside, in a table without lines. */
export function writeLetterhead(block: WordBlock & { kind: 'letterhead' }, room: number): Table {
  const { logo } = block;
  const left =
    logo === undefined
      ? new Paragraph({})
      : new Paragraph({
          children: [
            new ImageRun({ type: 'png', data: logo.png, transformation: logoSize(logo), altText: altText(block.name) }),
          ],
        });
  const lines = [block.name, ...block.address].map(
    (text, i) => new Paragraph({ children: [new TextRun({ text, bold: i === 0 })], alignment: AlignmentType.END }),
  );
  const half = (children: Paragraph[]) =>
    new TableCell({
      children,
      borders: BARE,
      width: { size: Math.round((room / 2) * TWIPS_PER_MM), type: WidthType.DXA },
    });
  return table([[half([left]), half(lines)]], [50, 50], room);
}

/** At most 70 mm by 22 mm. */
function logoSize({ width, height }: { readonly width: number; readonly height: number }): {
  width: number;
  height: number;
} {
  const scale = Math.min((70 * PIXELS_PER_MM) / width, (22 * PIXELS_PER_MM) / height);
  return { width: Math.round(width * scale), height: Math.round(height * scale) };
}

/** A table with a head, columns of the widths given, and figures set to the right. */
export function writeTable(block: WordBlock & { kind: 'table' }, room: number): Table {
  const whole = block.shares.reduce((sum, share) => sum + share, 0);
  const shares = block.shares.map((share) => (100 * share) / whole);
  const row = (cells: readonly WordCell[], look: { bold?: boolean; quiet?: boolean }) =>
    cells.map((content, i) => cell(content, shares[i]!, room, { ...look, end: block.align[i] === 'end', rule: true }));
  const rows = [
    row(block.head, { quiet: true }),
    ...block.rows.map((cells) => row(cells, {})),
    ...block.foot.map((cells, i) => row(cells, { bold: i === block.total })),
  ];
  return table(rows, shares, room, true);
}

/** Lines to sign on, with room between them. */
export function writeSignatures(names: readonly string[], room: number): Table {
  const between = 8;
  const share = (100 - between * (names.length - 1)) / names.length;
  const line = { ...BARE, top: { style: BorderStyle.SINGLE, size: 6, color: '1D2430' } };
  const part = (of: number, children: Paragraph[], borders: Borders) =>
    new TableCell({
      children,
      borders,
      width: { size: Math.round(((of * room) / 100) * TWIPS_PER_MM), type: WidthType.DXA },
    });
  const gap = () => part(between, [new Paragraph({})], BARE);
  const cells = names.flatMap((text, i) => {
    const signed = part(share, [writeText(text, 'quiet')], line);
    return i === 0 ? [signed] : [gap(), signed];
  });
  return table(
    [cells],
    names.flatMap((_, i) => (i === 0 ? [share] : [between, share])),
    room,
  );
}
