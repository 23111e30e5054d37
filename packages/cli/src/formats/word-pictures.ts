import type { WordBlock, WordCell, WordDocument, WordPicture } from '@fielded/exchange';
import { type Cell, type Scene, sceneToSvg, type TextDocument } from '@fielded/render';
import { writePng } from './png.ts';

/** Fine enough for a printed page. */
const DPI = 250;

/** A document for a word processor: its drawings as SVG, with the same as pixels beside. */
export function toWordDocument(
  { title, language, foot, blocks }: TextDocument,
  paper: { readonly width: number; readonly height: number },
): WordDocument {
  return {
    title,
    language,
    foot,
    paper,
    blocks: blocks.map((block): WordBlock => {
      switch (block.kind) {
        case 'figures':
          return {
            kind: 'figures',
            figures: block.figures.map(({ scene, caption }) => ({ picture: pictureOf(scene), caption })),
          };
        case 'table':
          return { ...block, rows: block.rows.map((row) => row.map(cellOf)) };
        default:
          return block;
      }
    }),
  };
}

function cellOf(cell: Cell): WordCell {
  return typeof cell === 'string' ? cell : pictureOf(cell);
}

function pictureOf(scene: Scene): WordPicture {
  return {
    svg: sceneToSvg(scene, { theme: 'print', bare: true }),
    png: writePng(scene, DPI, { theme: 'print', bare: true }),
    width: scene.width,
    height: scene.height,
    alt: scene.title,
  };
}
