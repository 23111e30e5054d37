import type { CuttingList } from '@fielded/core';
import type { TextDocument } from '../document/document.ts';
import { documentPages } from '../document/document-pages.ts';
import type { Scene } from '../scene.ts';
import { sayList } from '../words/english/list.ts';
import type { InVoice } from '../words/lengths.ts';
import { doorSchedule } from './door-schedule.ts';
import { moulderSheet } from './moulder-sheet.ts';
import { drawPanelPicture } from './pictures.ts';
import { sawSheet } from './saw-sheet.ts';
import { type CuttingSheetOptions, cuttingDocument, forWhom, SCALES } from './sheet-words.ts';

/** The longest side of a panel's picture, paper mm. */
const PANEL_SIZE = 75;

/** The most panels that are drawn: nobody looks through more. */
const MOST_PANELS = 120;
/** The most rows of all tables together: 60 sheets, which take about two seconds to write. */
const MOST_ROWS = 2000;

/**
 * A cutting list on sheets: for the saw, for the moulder, every panel drawn with its number, every door from the front.
 *
 * @throws RangeError for more than 2,000 sizes of parts, panels and rough pieces together.
 */
export function cuttingSheets(list: CuttingList, options: CuttingSheetOptions): Scene[] {
  const { reports, paper = 'a4' } = options;
  const voice: InVoice = reports[0] ?? { units: 'mm' };
  const rows = list.parts.length + list.panels.length + list.timber.reduce((sum, { pieces }) => sum + pieces.length, 0);
  if (rows > MOST_ROWS) throw new RangeError(`the list has ${rows} rows, and sheets hold up to ${MOST_ROWS}`);
  return [
    ...documentPages(sawSheet(list, voice, options), paper),
    ...documentPages(moulderSheet(list, voice, options), paper),
    ...documentPages(panelSheet(list, voice), paper),
    ...reports.flatMap((report) => doorSchedule(report, paper)),
  ];
}

function panelSheet(list: CuttingList, voice: InVoice): TextDocument {
  const longest = Math.max(1, ...list.panels.map(({ width, height }) => Math.max(width, height)));
  const parts = SCALES.find((n) => longest / n <= PANEL_SIZE) ?? 100;
  const all = list.panels.length;
  const some = all > MOST_PANELS ? [sayList('list.drawn', { most: MOST_PANELS, all }, voice)] : [];
  return cuttingDocument('list.panels', list, voice, [
    {
      kind: 'paragraph',
      text: [sayList(`list.scale.${voice.units}`, { parts }, voice), ...some].join(' '),
      tone: 'quiet',
    },
    {
      kind: 'figures',
      figures: list.panels.slice(0, MOST_PANELS).map((panel) => ({
        picture: drawPanelPicture(panel, voice, 1 / parts),
        caption: sayList('list.panel', { count: panel.quantity, doors: forWhom(list, panel.for) }, voice),
      })),
    },
  ]);
}
