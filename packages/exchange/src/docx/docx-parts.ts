import {
  AlignmentType,
  BorderStyle,
  ImageRun,
  Paragraph,
  Table,
  TableCell,
  TableLayoutType,
  TableRow,
  TextRun,
  WidthType,
} from 'docx';
import { strToU8 } from 'fflate';
import type { WordCell, WordPicture } from './word-document.ts';

/** Twentieths of a point, in which word processors measure. */
export const TWIPS_PER_MM: number = 1440 / 25.4;
/** Pictures are placed in pixels of 1/96 in. */
export const PIXELS_PER_MM: number = 96 / 25.4;
/** The lines round a cell; a table's are of the same kind. */
export type Borders = NonNullable<ConstructorParameters<typeof TableCell>[0]['borders']>;

const NO_BORDER = { style: BorderStyle.NONE, size: 0, color: 'auto' } as const;
/** A cell without lines round it. */
export const BARE: Borders = { top: NO_BORDER, bottom: NO_BORDER, left: NO_BORDER, right: NO_BORDER };
/** A cell with a line below it. */
const RULE: Borders = { ...BARE, bottom: { style: BorderStyle.SINGLE, size: 4, color: 'C4AE92' } };

/** One line of text. */
export function writeText(text: string, tone?: 'trouble' | 'quiet'): Paragraph {
  const color = tone === 'trouble' ? 'B3261E' : tone === 'quiet' ? '5A6270' : '1D2430';
  return new Paragraph({ children: [new TextRun({ text, color })], spacing: { after: 100 } });
}

/** A table `room` mm wide, its columns sharing that in per cent; with `headed` its first row is repeated on every page. */
export function table(rows: TableCell[][], shares: readonly number[], room: number, headed = false): Table {
  return new Table({
    layout: TableLayoutType.FIXED,
    width: { size: Math.round(room * TWIPS_PER_MM), type: WidthType.DXA },
    columnWidths: shares.map((share) => Math.round(((share * room) / 100) * TWIPS_PER_MM)),
    borders: { ...BARE, insideHorizontal: NO_BORDER, insideVertical: NO_BORDER },
    rows: rows.map(
      (children, i) => new TableRow({ children, cantSplit: true, ...(headed && i === 0 && { tableHeader: true }) }),
    ),
  });
}

interface CellLook {
  readonly bold?: boolean;
  readonly quiet?: boolean;
  readonly end?: boolean;
  readonly rule?: boolean;
}

/** A cell that takes `share` per cent of `room` mm: text, a line of it for each line, or a picture. */
export function cell(content: WordCell, share: number, room: number, look: CellLook): TableCell {
  const alignment = look.end ? AlignmentType.END : AlignmentType.START;
  const children =
    typeof content === 'string'
      ? content.split('\n').map(
          (text) =>
            new Paragraph({
              alignment,
              children: [new TextRun({ text, bold: look.bold ?? false, color: look.quiet ? '5A6270' : '1D2430' })],
            }),
        )
      : [new Paragraph({ alignment, children: [image(content)] })];
  return new TableCell({
    children,
    borders: look.rule ? RULE : BARE,
    margins: { top: 40, bottom: 40, left: 0, right: 120 },
    width: { size: Math.round(((share * room) / 100) * TWIPS_PER_MM), type: WidthType.DXA },
  });
}

/** A picture as SVG, with PNG for programs that show no SVG. */
export function image({ svg, png, width, height, alt }: WordPicture): ImageRun {
  return new ImageRun({
    type: 'svg',
    data: strToU8(svg),
    fallback: { type: 'png', data: png },
    transformation: { width: Math.round(width * PIXELS_PER_MM), height: Math.round(height * PIXELS_PER_MM) },
    altText: altText(alt),
  });
}

/** What is said in place of a picture. */
export function altText(description: string): { name: string; description: string; title: string } {
  return { name: description, description, title: description };
}
