import type { Report } from '@fielded/core';
import type { Page, PaperName } from '../paper.ts';
import { PAPERS, SHEET_MARGIN } from '../paper.ts';
import type { Scene } from '../scene.ts';
import { copeSentence, poseNote } from '../views/view-notes.ts';
import type { PlainView } from '../views/views.ts';
import { saySheet } from '../words/english/sheet.ts';
import { scaleText } from '../words/lengths.ts';
import { describe } from '../words/title.ts';
import type { UnitsChoice } from '../words/units-choice.ts';
import { inUnits } from '../words/units-choice.ts';
import type { BlockSubject, SheetBlock } from './blocks.ts';
import { blockOf, findBlock, fitBlock } from './blocks.ts';
import { doorPages, doorSubjects, MOST_PACKED } from './door-blocks.ts';
import { blocksOf, flowBlocks, type PageBlocks, packBlocks, placeBlocks } from './pages.ts';
import { type BlockFields, layTitleBlock } from './title-block.ts';

export interface SheetOptions extends BlockFields {
  /** One kind of drawing on its paper, or `sheet`: all that a bench needs. On as many sheets as it takes. */
  readonly view: PlainView | 'sheet';
  readonly paper: PaperName;
  /** Paper mm for one mm of wood, kept exactly: a drawing too wide is broken, not shrunk. `fit`: the largest scale of ISO 5455 that fits unbroken. By default 1 for sheets and sections, `fit` for the rest. */
  readonly scale?: number | 'fit';
  readonly landscape?: boolean;
  /** Which of the job's doors is drawn, from 0; all unless told. */
  readonly door?: number;
  /** The job's own unless told; `both` puts the other ones under the line. */
  readonly units?: UnitsChoice;
  /** Only the drawing: no title block. */
  readonly bare?: boolean;
}

/** Between the drawings and the title block, mm. */
const ABOVE_BLOCK = 6;

/**
 * Drawings on sheets of paper with a title block and a bar to check the print with, true to scale. Nothing is left out: what
 * does not fit one sheet goes on the next.
 *
 * @throws RangeError where a drawing does not fit the paper at the scale asked for, naming one that does, and for a door that
 * the job does not have.
 */
export function sheets(given: Report, options: SheetOptions): Scene[] {
  const { count, draw } = laySheets(given, options);
  return Array.from({ length: count }, (_, i) => draw(i));
}

/** Sheets laid out but not drawn. */
export interface LaidSheets {
  readonly count: number;
  /** One of them, from 0. What many doors need is drawn only now. */
  readonly draw: (sheet: number) => Scene;
}

/** The same as `sheets`, each drawn when it is asked for: one sheet of thousands takes no longer than one of a few. Throws as `sheets` does, `draw` too. */
export function laySheets(given: Report, options: SheetOptions): LaidSheets {
  const report = inUnits(given, options.units);
  const upright = PAPERS[options.paper];
  const wide = options.landscape ?? false;
  const paper = wide ? { width: upright.height, height: upright.width } : upright;
  const width = paper.width - 2 * SHEET_MARGIN;
  const foot = layTitleBlock(report, options, width);
  const page: Page = { width, height: paper.height - 2 * SHEET_MARGIN - foot.height - ABOVE_BLOCK };
  const pages = options.view === 'sheet' ? benchPages(report, page, options) : viewPages(report, page, options);
  const draw = (i: number): Scene => {
    const blocks = blocksOf(pages[i]!);
    const names = [...new Set(blocks.map((block) => block.name))];
    const name = names.join(', ');
    const title = [blocks[0]!.title, ...names.slice(1)].join(', ');
    const scales = [...new Set(blocks.map((block) => scaleText(block.scale, report)))];
    // Each drawing says its own beside its name.
    const scale = scales.length > 2 ? saySheet('sheet.as-shown', {}, report) : scales.join(', ');
    const drawing = placeBlocks(blocks, page, SHEET_MARGIN, SHEET_MARGIN);
    const words = { name, scale, sheet: i + 1, of: pages.length };
    const block = foot.draw(words, SHEET_MARGIN, paper.height - SHEET_MARGIN - foot.height);
    return {
      width: paper.width,
      height: paper.height,
      scale: blocks[0]?.scale ?? 1,
      title: pages.length > 1 ? saySheet('title.sheet', { title, sheet: i + 1, of: pages.length }, report) : title,
      description: describe(report, drawing),
      items: options.bare ? drawing : [...drawing, block],
    };
  };
  return { count: pages.length, draw };
}

/** One kind of drawing, of everything there is of it. */
function viewPages(report: Report, page: Page, { view, door, scale }: SheetOptions): PageBlocks[] {
  if (view === 'sheet') return [];
  if (view === 'cuts') {
    const cuts = report.section.cuts.map((_, index) => ({ view, index, count: '' }));
    return flowBlocks(cuts.map(blockMaker(report, scale ?? 'fit', page)), page);
  }
  const ofDoors = view === 'door' || view === 'panel';
  if (ofDoors && door === undefined && report.doors?.length) {
    const all = doorSubjects(report, [view]);
    if (scale === undefined || scale === 'fit') return doorPages(report, all, page);
    const make = blockMaker(report, scale, page);
    // So many are not drawn to see which go together on a page.
    if (all.length > MOST_PACKED) return all.map((subject) => () => [make(subject)]);
    return packBlocks(all.map(make), page);
  }
  const note = view === 'corner' ? copeSentence(report) : view === 'joint' || view === 'detail' ? poseNote(report) : '';
  const usual = ofDoors || view === 'detail' ? 'fit' : 1;
  return [[blockMaker(report, scale ?? usual, page)({ view, index: door ?? 0, count: note })]];
}

function blockMaker(report: Report, scale: number | 'fit', page: Page): (subject: BlockSubject) => SheetBlock {
  return (subject) => (scale === 'fit' ? fitBlock(report, subject, page) : blockOf(report, subject, scale, page));
}

/** The joint true to size with its groove enlarged; the cuts; how stile and rail meet; then every door and every panel once, with how many are made. */
function benchPages(report: Report, page: Page, options: SheetOptions): PageBlocks[] {
  const scale = options.scale === undefined || options.scale === 'fit' ? 1 : options.scale;
  const joint = blockOf(report, { view: 'joint', index: 0, count: poseNote(report) }, scale, page);
  const below: Page = { width: page.width, height: page.height - joint.height - 8 };
  const groove: BlockSubject = { view: 'detail', index: 0, count: '' };
  const detail = findBlock(report, groove, below) ?? fitBlock(report, groove, page);
  const cuts = report.section.cuts.map((_, index) => blockOf(report, { view: 'cuts', index, count: '' }, scale, page));
  const corner =
    report.frame.cope === undefined
      ? []
      : [blockOf(report, { view: 'corner', index: 0, count: copeSentence(report) }, scale, page)];
  const [first = [], ...more] = flowBlocks([joint, detail, ...cuts, ...corner], page);
  return [first, ...doorPages(report, doorSubjects(report, ['door', 'panel']), page, more)];
}
