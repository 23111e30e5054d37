import type { Block, Cell, TextDocument } from './document.ts';

/**
 * A document whose every text may stand on paper, in a page and in a word processor: no control characters, halves of surrogate
 * pairs or signs that turn the direction of writing. Line ends stay where a text may have several lines.
 */
export function safeDocument(document: TextDocument): TextDocument {
  return {
    ...document,
    title: safeLine(document.title),
    foot: safeLine(document.foot),
    blocks: document.blocks.map(safeBlock),
  };
}

function safeBlock(block: Block): Block {
  switch (block.kind) {
    case 'letterhead':
      return { ...block, name: safeLine(block.name), address: block.address.map(safeLine) };
    case 'title':
    case 'heading':
      return { ...block, text: safeLine(block.text) };
    case 'paragraph':
      return { ...block, text: safeLines(block.text) };
    case 'list':
      return { ...block, items: block.items.map(safeLine) };
    case 'facts':
      return { ...block, facts: block.facts.map(([name, value]) => [safeLine(name), safeLines(value)]) };
    case 'figures':
      return { ...block, figures: block.figures.map((figure) => ({ ...figure, caption: safeLine(figure.caption) })) };
    case 'table': {
      const safe = (cell: Cell) => (typeof cell === 'string' ? safeLine(cell) : cell);
      return {
        ...block,
        about: safeLine(block.about),
        head: block.head.map(safeLine),
        rows: block.rows.map((row) => row.map(safe)),
        foot: block.foot.map((row) => row.map(safeLine)),
      };
    }
    case 'signatures':
      return { ...block, names: block.names.map(safeLine) };
  }
}

/** Signs that join letters or part them, which scripts such as Persian and Hindi are not written right without. */
const JOINERS = '\u200c\u200d';

const UNSAFE = new RegExp(`(?![${JOINERS}])[\\p{Cf}\\p{Cs}\\ufffe\\uffff]`, 'gu');

function safeLine(text: string): string {
  return text
    .replace(UNSAFE, '')
    .replace(/[\p{Cc}\p{Zl}\p{Zp}]+/gu, ' ')
    .trim();
}

function safeLines(text: string): string {
  return text
    .split(/\r\n|[\n\r\p{Zl}\p{Zp}]/u)
    .map(safeLine)
    .join('\n');
}
