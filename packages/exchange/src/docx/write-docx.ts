import {
  AlignmentType,
  BorderStyle,
  Document,
  Footer,
  HeadingLevel,
  ImageRun,
  LevelFormat,
  Packer,
  PageNumber,
  Paragraph,
  Table,
  TableCell,
  TableLayoutType,
  TableRow,
  TextRun,
  VerticalAlign,
  WidthType,
} from 'docx';
import { strFromU8, strToU8, unzipSync, type Zippable, zipSync } from 'fflate';
import type { WordBlock, WordCell, WordDocument, WordPicture } from './word-document.ts';

/** Twentieths of a point, in which word processors measure. */
const TWIPS_PER_MM = 1440 / 25.4;
/** Pictures are placed in pixels of 1/96 in. */
const PIXELS_PER_MM = 96 / 25.4;
const SIDE = 20;
const NO_BORDER = { style: BorderStyle.NONE, size: 0, color: 'auto' } as const;
const BARE = { top: NO_BORDER, bottom: NO_BORDER, left: NO_BORDER, right: NO_BORDER };
const RULE = { ...BARE, bottom: { style: BorderStyle.SINGLE, size: 4, color: 'C4AE92' } };

/**
 * A document as WordprocessingML (ISO/IEC 29500) in its zip container: headings, real tables whose head is repeated on every
 * page, numbered pages, pictures as SVG with PNG beside. The same bytes for the same document: no time is written.
 */
export async function writeDocx(document: WordDocument): Promise<Uint8Array> {
  const room = document.paper.width - 2 * SIDE;
  const margin = Math.round(SIDE * TWIPS_PER_MM);
  const made = new Document({
    title: document.title,
    creator: 'fielded',
    lastModifiedBy: 'fielded',
    styles: {
      paragraphStyles: [{ id: 'Foot', name: 'Foot', run: { size: 17, color: '5A6270' } }],
      default: {
        document: { run: { font: 'IBM Plex Sans', size: 21, color: '1D2430', language: { value: document.language } } },
        title: { run: { size: 38, bold: true }, paragraph: { spacing: { before: 240, after: 120 } } },
        heading1: {
          run: { size: 27, bold: true, color: '1D2430' },
          paragraph: { spacing: { before: 240, after: 80 }, keepNext: true },
        },
      },
    },
    numbering: {
      config: [
        {
          reference: 'dashes',
          levels: [
            {
              level: 0,
              format: LevelFormat.BULLET,
              text: '–',
              alignment: AlignmentType.START,
              style: { paragraph: { indent: { left: 284, hanging: 284 } } },
            },
          ],
        },
      ],
    },
    sections: [
      {
        properties: {
          page: {
            size: {
              width: Math.round(document.paper.width * TWIPS_PER_MM),
              height: Math.round(document.paper.height * TWIPS_PER_MM),
            },
            margin: { top: margin, bottom: margin, left: margin, right: margin },
          },
        },
        footers: {
          default: new Footer({
            children: [
              new Paragraph({
                style: 'Foot',
                children: [
                  new TextRun({ text: `${document.foot}   ` }),
                  ...[PageNumber.CURRENT, ' / ', PageNumber.TOTAL_PAGES].map(
                    (part) => new TextRun({ children: [part] }),
                  ),
                ],
              }),
            ],
          }),
        },
        children: document.blocks.flatMap((block) => writeBlock(block, room)),
      },
    ],
  });
  return withoutTime(new Uint8Array(await Packer.toArrayBuffer(made)));
}

function writeBlock(block: WordBlock, room: number): (Paragraph | Table)[] {
  switch (block.kind) {
    case 'letterhead':
      return [writeLetterhead(block, room), new Paragraph({})];
    case 'title':
      return [new Paragraph({ text: block.text, heading: HeadingLevel.TITLE })];
    case 'heading':
      return [new Paragraph({ text: block.text, heading: HeadingLevel.HEADING_1 })];
    case 'paragraph':
      return block.text.split('\n').map((line) => writeText(line, block.tone));
    case 'list':
      return block.items.map((item) => new Paragraph({ text: item, numbering: { reference: 'dashes', level: 0 } }));
    case 'facts':
      return [
        table(
          block.facts.map(([name, value]) => [cell(name, 30, room, { quiet: true }), cell(value, 70, room, {})]),
          [30, 70],
          room,
        ),
        new Paragraph({}),
      ];
    case 'figures':
      return figureRows(block.figures, room).flatMap((row) => [writeFigures(row, room), new Paragraph({})]);
    case 'table':
      return [writeTable(block, room), new Paragraph({})];
    case 'signatures':
      return [new Paragraph({ spacing: { before: 900 } }), writeSignatures(block.names, room)];
  }
}

type Figures = (WordBlock & { kind: 'figures' })['figures'];

/** Least width that a figure and its caption take, mm. */
const LEAST_FIGURE = 30;
const BETWEEN_FIGURES = 5;

/** Figures side by side while they fit. */
function figureRows(figures: Figures, room: number): Figures[] {
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
function writeFigures(figures: Figures, room: number): Table {
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

function writeText(text: string, tone?: 'trouble' | 'quiet'): Paragraph {
  const color = tone === 'trouble' ? 'B3261E' : tone === 'quiet' ? '5A6270' : '1D2430';
  return new Paragraph({ children: [new TextRun({ text, color })], spacing: { after: 100 } });
}

function writeLetterhead(block: WordBlock & { kind: 'letterhead' }, room: number): Table {
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

function writeTable(block: WordBlock & { kind: 'table' }, room: number): Table {
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

function table(rows: TableCell[][], shares: readonly number[], room: number, headed = false): Table {
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

function cell(content: WordCell, share: number, room: number, look: CellLook): TableCell {
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

function image({ svg, png, width, height, alt }: WordPicture): ImageRun {
  return new ImageRun({
    type: 'svg',
    data: strToU8(svg),
    fallback: { type: 'png', data: png },
    transformation: { width: Math.round(width * PIXELS_PER_MM), height: Math.round(height * PIXELS_PER_MM) },
    altText: altText(alt),
  });
}

function altText(description: string): { name: string; description: string; title: string } {
  return { name: description, description, title: description };
}

type Borders = NonNullable<ConstructorParameters<typeof TableCell>[0]['borders']>;

/** Lines to sign on, with room between them. */
function writeSignatures(names: readonly string[], room: number): Table {
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

/** Stands uncompressed in the container, so that a file of ours is known again. */
const MADE_HERE = 'made by fielded';
/** When files in the container are said to be made: the first day that a zip file knows. */
const NO_TIME = new Date('1980-01-01T00:00:00');

/** The container written again without the time that the library puts in, and without entries for folders, which OPC has not. */
function withoutTime(zipped: Uint8Array): Uint8Array {
  const files: Zippable = {};
  for (const [name, bytes] of Object.entries(unzipSync(zipped))) {
    if (name.endsWith('/')) continue;
    files[name] = name === 'docProps/core.xml' ? strToU8(untimed(strFromU8(bytes))) : bytes;
  }
  return zipSync(files, { mtime: NO_TIME, level: 6, comment: MADE_HERE });
}

function untimed(xml: string): string {
  return xml.replace(/(<dcterms:(?:created|modified)[^>]*>)[^<]*/g, '$11980-01-01T00:00:00Z');
}
