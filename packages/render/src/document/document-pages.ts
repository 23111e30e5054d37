import { stroke } from '../geometry/stroke.ts';
import { PAPERS, type PaperName } from '../paper.ts';
import { type Item, moveItems, path, type Scene, text } from '../scene.ts';
import { fitText, textWidth } from '../text/measure-text.ts';
import { sayNote } from '../words/english/note.ts';
import type { InVoice } from '../words/lengths.ts';
import type { Block, TextDocument } from './document.ts';
import { layFigures } from './lay-figures.ts';
import { layTable } from './lay-tables.ts';
import { BODY, HEADING, LEADING, layLines, type Piece, SIDE, SMALL, space } from './page-text.ts';

const TOP = 18;
const BOTTOM = 20;
const TITLE = 4.4;
/** Least room under a heading, so that it never stands alone at a page's foot, mm. */
const KEPT_WITH = 24;
/** Room for the page's number at the foot. */
const PAGE_NUMBER = 25;

/**
 * A document laid out on sheets of paper: text broken between words, tables with their head repeated, figures side by side as
 * long as they fit, the page's number at the foot.
 */
export function documentPages(document: TextDocument, paper: PaperName = 'a4'): Scene[] {
  const { width, height } = PAPERS[paper];
  const room = width - 2 * SIDE;
  const pieces = layBlocks(document.blocks, room, height - TOP - BOTTOM);
  const pages: Item[][] = [[]];
  let y = TOP;
  let n = 0;
  for (const piece of pieces) {
    const needed = piece.height + (piece.keep ?? 0);
    if (y + needed > height - BOTTOM && y > TOP) {
      pages.push([]);
      y = TOP;
      if (piece.repeat !== undefined) {
        pages.at(-1)!.push(...piece.repeat.draw(y, `again ${n}`));
        y += piece.repeat.height;
      }
    }
    pages.at(-1)!.push(...piece.draw(y, `piece ${n++}`));
    y += piece.height;
  }
  const voice: InVoice = { units: 'mm', ...(document.spoken && { language: document.spoken }) };
  return pages.map((items, i) => ({
    width,
    height,
    scale: 1,
    title: document.title,
    reads: 'words' as const,
    description: sayNote('page.of', { title: document.title, page: i + 1, of: pages.length }, voice),
    items: [
      ...moveItems(items, SIDE, 0),
      text('foot', 'quiet', SIDE, height - 10, fitText(document.foot, SMALL, room - PAGE_NUMBER), SMALL),
      text('page', 'quiet', width - SIDE, height - 10, `${i + 1} / ${pages.length}`, SMALL, 'end'),
    ],
  }));
}

/** All blocks as pieces; a heading marked `whole` keeps room for all that follows it, where a page has so much. */
function layBlocks(blocks: readonly Block[], room: number, page: number): Piece[] {
  const laid = blocks.map((block) => layBlock(block, room));
  const heightOf = (pieces: readonly Piece[]) => pieces.reduce((sum, { height }) => sum + height, 0);
  return laid.flatMap((pieces, i) => {
    const block = blocks[i]!;
    if (block.kind !== 'heading' || !block.whole) return pieces;
    const next = blocks.findIndex(({ kind }, k) => k > i && kind === 'heading');
    const under = laid.slice(i + 1, next === -1 ? undefined : next).reduce((sum, some) => sum + heightOf(some), 0);
    // Asked of the room before the heading, so that the heading goes with it.
    const keep = under + heightOf(pieces) <= page ? under + heightOf(pieces) - pieces[0]!.height : 0;
    return [{ ...pieces[0]!, keep }, ...pieces.slice(1)];
  });
}

function layBlock(block: Block, room: number): Piece[] {
  switch (block.kind) {
    case 'letterhead':
      return [layLetterhead(block, room)];
    case 'title':
      return [space(6), ...layLines(block.text, room, TITLE, 'text'), space(3)];
    case 'heading':
      return [
        space(5),
        ...layLines(block.text, room, HEADING, 'text').map((p) => ({ ...p, keep: KEPT_WITH })),
        space(1),
      ];
    case 'paragraph':
      return [
        ...layLines(
          block.text,
          room,
          BODY,
          block.tone === 'trouble' ? 'trouble-text' : block.tone === 'quiet' ? 'quiet' : 'text',
        ),
        space(2),
      ];
    case 'list':
      return [...block.items.flatMap((item) => layListItem(item, room)), space(2)];
    case 'facts':
      return layFacts(block.facts, room);
    case 'figures':
      return layFigures(block.figures, room);
    case 'table':
      return layTable(block, room);
    case 'signatures':
      return [space(18), laySignatures(block.names, room)];
  }
}

function layListItem(item: string, room: number): Piece[] {
  const indent = 5;
  return layLines(item, room - indent, BODY, 'text').map((piece, i) => ({
    ...piece,
    draw: (y, key) => [
      ...(i === 0 ? [text(`${key} mark`, 'text', 1, y + BODY * 1.3, '–', BODY)] : []),
      ...moveItems(piece.draw(y, key), indent, 0),
    ],
  }));
}

function layLetterhead(block: Block & { kind: 'letterhead' }, room: number): Piece {
  const lines = [block.name, ...block.address];
  const logo = block.logo;
  const shown = logo && fitInto(logo.width, logo.height, 70, 22);
  const height = Math.max(lines.length * BODY * LEADING, shown?.height ?? 0) + 2;
  return {
    height,
    draw: (y, key) => [
      ...(logo && shown
        ? [{ kind: 'image' as const, key: `${key} logo`, x: 0, y, ...shown, png: logo.png, alt: block.name }]
        : []),
      ...lines.map((line, i) =>
        text(`${key} ${i}`, i === 0 ? 'text' : 'quiet', room, y + BODY * 1.3 + i * BODY * LEADING, line, BODY, 'end'),
      ),
    ],
  };
}

function fitInto(
  width: number,
  height: number,
  mostWidth: number,
  mostHeight: number,
): { width: number; height: number } {
  const scale = Math.min(mostWidth / width, mostHeight / height);
  return { width: width * scale, height: height * scale };
}

function layFacts(facts: readonly (readonly [string, string])[], room: number): Piece[] {
  const names = Math.min(room / 3, Math.max(...facts.map(([name]) => textWidth(name, BODY))) + 6);
  return [
    ...facts.flatMap(([name, value]) =>
      layLines(value, room - names, BODY, 'text').map((piece, i) => ({
        ...piece,
        draw: (y: number, key: string) => [
          ...(i === 0 ? [text(`${key} name`, 'quiet', 0, y + BODY * 1.3, name, BODY)] : []),
          ...moveItems(piece.draw(y, key), names, 0),
        ],
      })),
    ),
    space(3),
  ];
}

function laySignatures(names: readonly string[], room: number): Piece {
  const each = (room - (names.length - 1) * 12) / names.length;
  return {
    height: SMALL * LEADING + 3,
    draw: (y, key) =>
      names.flatMap((name, i) => {
        const x = i * (each + 12);
        return [
          path(`${key} line ${i}`, 'thin', [stroke(x, y, x + each, y)]),
          text(`${key} name ${i}`, 'quiet', x, y + SMALL * 2, name, SMALL),
        ];
      }),
  };
}
