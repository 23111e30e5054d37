import {
  AlignmentType,
  Document,
  Footer,
  HeadingLevel,
  type INumberingOptions,
  type IStylesOptions,
  LevelFormat,
  Packer,
  PageNumber,
  Paragraph,
  Tab,
  type Table,
  TabStopType,
  TextRun,
} from 'docx';
import { withoutTime } from './docx-container.ts';
import { cell, TWIPS_PER_MM, table, writeText } from './docx-parts.ts';
import { figureRows, writeFigures, writeLetterhead, writeSignatures, writeTable } from './docx-tables.ts';
import type { WordBlock, WordDocument } from './word-document.ts';

/** Margin on every side of a page, mm. */
const SIDE = 20;

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
    styles: stylesIn(document.language),
    numbering: NUMBERING,
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
        footers: { default: new Footer({ children: [writeFoot(document.foot, room)] }) },
        children: document.blocks.flatMap((block) => writeBlock(block, room)),
      },
    ],
  });
  return withoutTime(new Uint8Array(await Packer.toArrayBuffer(made)));
}

/** The looks that paragraphs are written in, with the document's language. */
function stylesIn(language: string): IStylesOptions {
  return {
    paragraphStyles: [{ id: 'Foot', name: 'Foot', run: { size: 17, color: '5A6270' } }],
    default: {
      document: { run: { font: 'IBM Plex Sans', size: 21, color: '1D2430', language: { value: language } } },
      title: { run: { size: 38, bold: true }, paragraph: { spacing: { before: 240, after: 120 } } },
      heading1: {
        run: { size: 27, bold: true, color: '1D2430' },
        paragraph: { spacing: { before: 240, after: 80 }, keepNext: true },
      },
    },
  };
}

/** Lists with a dash before each item. */
const NUMBERING: INumberingOptions = {
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
};

/** The foot of each page, with the page's number and how many there are at the end of its line, `room` mm away. */
function writeFoot(text: string, room: number): Paragraph {
  return new Paragraph({
    style: 'Foot',
    tabStops: [{ type: TabStopType.RIGHT, position: Math.round(room * TWIPS_PER_MM) }],
    children: [
      new TextRun({ text }),
      new TextRun({ children: [new Tab()] }),
      ...[PageNumber.CURRENT, ' / ', PageNumber.TOTAL_PAGES].map((part) => new TextRun({ children: [part] })),
    ],
  });
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
