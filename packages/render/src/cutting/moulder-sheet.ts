import type { CuttingList, Report } from '@fielded/core';
import type { Block, TextDocument } from '../document/document.ts';
import { safeText } from '../text/safe-text.ts';
import { sayList } from '../words/english/list.ts';
import { type InVoice, spokenNumber } from '../words/lengths.ts';
import {
  type CuttingSheetOptions,
  cuttingDocument,
  forWhom,
  headings,
  plainSize,
  sharesIn,
  troubles,
} from './sheet-words.ts';

/** The sheet at the spindle moulder: what is run, with which cuts, and what must be known of it. */
export function moulderSheet(list: CuttingList, voice: InVoice, { reports }: CuttingSheetOptions): TextDocument {
  const say = headings(voice);
  return cuttingDocument('list.moulder', list, voice, [
    ...troubles(reports, voice),
    {
      kind: 'paragraph',
      text: say('list.moulder.first'),
    },
    ...curvedWork(reports),
    ...reports.flatMap((report): Block[] => [
      { kind: 'heading', text: sayList('list.cuts', { job: safeText(report.title) }, voice) },
      {
        kind: 'table',
        about: sayList('list.cuts', { job: report.title }, voice),
        head: say.all('list.cut', 'list.face', 'list.cutter', 'list.depth', 'list.reach'),
        rows: report.section.cuts.map(({ name, side, run, depth, reach, presented }) => [
          safeText(name),
          say(`list.${side}`),
          presented === 0 ? say(`list.run.${run}`) : sayList('list.run.tilted', { tilt: presented }, voice),
          plainSize(depth, voice),
          plainSize(reach, voice),
        ]),
        foot: [],
        shares: [34, 14, 24, 16, 16],
        align: ['start', 'start', 'start', 'end', 'end'],
      },
    ]),
    { kind: 'heading', text: say('list.panels.heading') },
    {
      kind: 'table',
      about: say('list.panels.heading'),
      head: say.all(
        'list.off',
        'list.width',
        'list.height',
        'list.thick',
        'list.grain',
        'list.field',
        'list.weight',
        'list.for',
      ),
      rows: list.panels.map((p) => [
        String(p.quantity),
        plainSize(p.width, voice),
        plainSize(p.height, voice),
        plainSize(p.thickness, voice),
        say(`list.grain.${p.grain}`),
        p.field === null
          ? say('list.field.none')
          : `${plainSize(p.field.width, voice)} × ${plainSize(p.field.height, voice)}`,
        p.weight === null ? '' : spokenNumber(p.weight, 2, voice),
        forWhom(list, p.for),
      ]),
      foot: [],
      shares: sharesIn(voice.units, [8, 14, 14, 12, 14, 26, 14, 36], [10, 20, 20, 18, 13, 34, 14, 24]),
      align: ['end', 'end', 'end', 'end', 'start', 'end', 'end', 'start'],
    },
  ]);
}

/** The caution on shaped heads, once. */
function curvedWork(reports: readonly Report[]): Block[] {
  const caution = reports.flatMap(({ problems }) => problems).find(({ code }) => code === 'curved-work');
  return caution === undefined ? [] : [{ kind: 'paragraph', text: caution.message }];
}
