import type { Report } from '@fielded/core';
import type { Scene } from '../scene.ts';
import type { PlainView } from '../views/views.ts';
import { viewsOf } from '../views/views.ts';
import { scaleText } from '../words/lengths.ts';
import { describe, titleOf } from '../words/title.ts';
import type { UnitsChoice } from '../words/units-choice.ts';
import { inUnits } from '../words/units-choice.ts';
import type { Block, Page } from './pages.ts';
import { blockOf, fitBlock, flowBlocks, placeBlocks } from './pages.ts';
import type { PaperName } from './paper.ts';
import { PAPERS, SHEET_MARGIN } from './paper.ts';
import { BLOCK_HEIGHT, drawTitleBlock } from './title-block.ts';

export interface SheetOptions {
  /** One drawing on its paper, or `sheet`: all that a bench needs, on as many sheets as it takes. */
  readonly view: PlainView | 'sheet';
  readonly paper: PaperName;
  /** Paper mm for one mm of wood, kept exactly: a drawing too wide is broken, not shrunk. `fit`: the largest scale of ISO 5455 that fits unbroken. By default 1 for sheets and sections, `fit` for the rest. */
  readonly scale?: number | 'fit';
  readonly landscape?: boolean;
  /** Which of the job's doors is drawn, from 0; a sheet draws all. */
  readonly door?: number;
  /** The job's own unless told; `both` puts the other ones under the line. */
  readonly units?: UnitsChoice;
  /** Only the drawing: no title block. */
  readonly bare?: boolean;
  /** As it should stand in the title block. */
  readonly date?: string;
  readonly drawnBy?: string;
}

/** Between the drawings and the title block, mm. */
const ABOVE_BLOCK = 6;

/**
 * Drawings on sheets of paper with a title block and a 100 mm bar, true to scale.
 *
 * @throws RangeError where a drawing does not fit the paper at the scale asked for, naming one that does, and for a door that
 * the job does not have.
 */
export function sheets(given: Report, options: SheetOptions): Scene[] {
  const report = inUnits(given, options.units);
  const upright = PAPERS[options.paper];
  const wide = options.landscape ?? false;
  const paper = wide ? { width: upright.height, height: upright.width } : upright;
  const page: Page = {
    width: paper.width - 2 * SHEET_MARGIN,
    height: paper.height - 2 * SHEET_MARGIN - BLOCK_HEIGHT - ABOVE_BLOCK,
  };
  const pages =
    options.view === 'sheet' ? benchPages(report, page, options) : [[onePage(report, options.view, page, options)]];
  return pages.map((blocks, i) => {
    const name = blocks.map((block) => block.name).join(', ');
    const scales = [...new Set(blocks.map((block) => scaleText(block.scale)))].join(', ');
    const drawing = placeBlocks(blocks, page, SHEET_MARGIN, SHEET_MARGIN);
    const block = {
      name,
      scale: scales,
      date: options.date ?? '',
      drawnBy: options.drawnBy ?? '',
      sheet: i + 1,
      of: pages.length,
    };
    const foot = drawTitleBlock(report, block, SHEET_MARGIN, paper.height - SHEET_MARGIN - BLOCK_HEIGHT, page.width);
    return {
      width: paper.width,
      height: paper.height,
      scale: blocks[0]?.scale ?? 1,
      title: pages.length > 1 ? `${titleOf(report, name)}, sheet ${i + 1} of ${pages.length}` : titleOf(report, name),
      description: describe(report, drawing),
      items: options.bare ? drawing : [...drawing, foot],
    };
  });
}

function onePage(report: Report, view: PlainView, page: Page, options: SheetOptions): Block {
  const door = options.door ?? 0;
  const scale = options.scale ?? (view === 'section' || view === 'joint' ? 1 : 'fit');
  return scale === 'fit' ? fitBlock(report, view, door, page) : blockOf(report, view, door, scale, page);
}

/** The joint true to size with its groove enlarged; the cuts; then every door with its panel. */
function benchPages(report: Report, page: Page, options: SheetOptions): Block[][] {
  const scale = options.scale === undefined || options.scale === 'fit' ? 1 : options.scale;
  const joint = blockOf(report, 'joint', 0, scale, page);
  const rest = { width: page.width, height: page.height - joint.height };
  const pages: Block[][] = [];
  const detail = fitBlock(report, 'detail', 0, rest.height > 80 ? rest : page);
  pages.push(...flowBlocks([joint, detail], page));
  const cuts = report.section.cuts.map((_, index) => blockOf(report, 'cuts', index, scale, page));
  pages.push(...flowBlocks(cuts, page));
  if (viewsOf(report).includes('door')) {
    for (const door of report.doors!.keys()) {
      pages.push(...flowBlocks([fitBlock(report, 'door', door, page), fitBlock(report, 'panel', door, page)], page));
    }
  }
  return pages;
}
