import { type CuttingList, type Report, say as sayCore } from '@fielded/core';
import type { Block, Table, TextDocument } from '../document/document.ts';
import { safeText } from '../text/safe-text.ts';
import { sayList } from '../words/english/list.ts';
import { type InVoice, spokenLength, spokenNumber } from '../words/lengths.ts';
import { drawBoardBlank } from './pictures.ts';
import {
  type CuttingSheetOptions,
  cuttingDocument,
  forWhom,
  headings,
  plainSize,
  SCALES,
  sharesIn,
  troubles,
} from './sheet-words.ts';

/** The most height of a blank's picture, paper mm: with its words it goes on a page. */
const BLANK_HEIGHT = 200;
/** The longest side of a blank's picture, paper mm. */
const BLANK_WIDTH = 82;

/** The sheet at the saw: parts, panels, blanks and the timber to order. */
export function sawSheet(list: CuttingList, voice: InVoice, { reports, assumed }: CuttingSheetOptions): TextDocument {
  const say = headings(voice);
  const size = (mm: number) => plainSize(mm, voice);
  const parts: Table = {
    kind: 'table',
    about: say('list.parts'),
    head: say.all('list.part', 'list.off', 'list.length', 'list.width', 'list.thick', 'list.for'),
    rows: list.parts.map((p) => [
      sayCore(`part.${p.part}`, {}, voice),
      String(p.quantity),
      size(p.length),
      size(p.width),
      size(p.thickness),
      forWhom(list, p.for),
    ]),
    foot: [],
    shares: sharesIn(voice.units, [20, 8, 15, 14, 12, 50], [18, 7, 19, 17, 17, 42]),
    align: ['start', 'end', 'end', 'end', 'end', 'start'],
  };
  return cuttingDocument('list.saw', list, voice, [
    ...troubles(reports, voice),
    {
      kind: 'paragraph',
      text: say(`list.finished.${voice.units}`),
      tone: 'quiet',
    },
    { kind: 'heading', text: say('list.frames') },
    parts,
    ...blankBlocks(list, voice, reports),
    ...timberBlocks(list, voice, assumed),
  ]);
}

function blankBlocks({ blanks, leftOver }: CuttingList, voice: InVoice, reports: readonly Report[]): Block[] {
  const say = headings(voice);
  const doorsOf = (job: string) => reports.find(({ title }) => title === job)?.doors ?? [];
  if (blanks.length + leftOver.length === 0) return [];
  const longest = Math.max(1, ...blanks.map(({ length }) => length));
  const widest = Math.max(1, ...blanks.map(({ width }) => width));
  const parts = SCALES.find((n) => longest / n <= BLANK_WIDTH && widest / n <= BLANK_HEIGHT) ?? 100;
  return [
    { kind: 'heading', text: say('list.blanks') },
    {
      kind: 'paragraph',
      text: say('list.blanks.how'),
    },
    {
      kind: 'figures',
      figures: blanks.map((blank) => ({
        picture: drawBoardBlank(blank, voice, 1 / parts, doorsOf(blank.job)),
        caption: sayBlank(blank, voice),
      })),
    },
    ...leftOver.map(
      ({ door, width, length, quantity, missing }): Block => ({
        kind: 'paragraph',
        tone: 'trouble',
        text: sayList(
          missing > 0 ? 'list.left.missing' : 'list.left',
          { count: quantity, length, width, missing, door: safeText(door) },
          voice,
        ),
      }),
    ),
  ];
}

function sayBlank({ quantity: count, length, width, rips }: CuttingList['blanks'][number], voice: InVoice): string {
  if (rips.length === 0) return sayList('list.blank', { count, length, width }, voice);
  const places = rips.map((at) => spokenLength(at, voice, 1)).join(', ');
  return sayList('list.blank.rips', { count, length, width, rips: places }, voice);
}

function timberBlocks({ timber }: CuttingList, voice: InVoice, assumed: readonly string[]): Block[] {
  const say = headings(voice);
  const both = (m3: number, boardFeet: number) => {
    const [volume, feet] = [spokenNumber(m3, 4, voice), spokenNumber(boardFeet, 1, voice)];
    return voice.units === 'in'
      ? sayList('list.feet', { feet }, voice)
      : sayList('list.volume', { volume, feet }, voice);
  };
  return [
    { kind: 'heading', text: say('list.timber') },
    {
      kind: 'table',
      about: say('list.timber.about'),
      head: say.all('list.wood', 'list.thick', 'list.timber.finished', 'list.timber.rough', 'list.timber.order'),
      rows: timber.map(({ wood, thickness, finished, rough, order, boardFeet }) => [
        wood === '' ? say('list.wood.none') : safeText(wood),
        plainSize(thickness, voice),
        both(finished, boardFeet.finished),
        both(rough, boardFeet.rough),
        both(order, boardFeet.order),
      ]),
      foot: [],
      shares: sharesIn(voice.units, [22, 10, 26, 26, 26], [28, 20, 18, 18, 18]),
      align: ['start', 'end', 'end', 'end', 'end'],
    },
    { kind: 'heading', text: say('list.rough') },
    {
      kind: 'table',
      about: say('list.rough.about'),
      head: say.all('list.piece', 'list.off', 'list.length', 'list.width', 'list.thick', 'list.strips'),
      rows: timber.flatMap(({ pieces, thickness }) =>
        pieces.map(({ what, quantity, length, width, strips, stripWidth }) => [
          safeText(what),
          String(quantity),
          plainSize(length, voice),
          plainSize(width, voice),
          plainSize(thickness, voice),
          strips === 1
            ? say('list.strips.one')
            : sayList('list.strips.more', { count: strips, width: plainSize(stripWidth, voice) }, voice),
        ]),
      ),
      foot: [],
      shares: sharesIn(voice.units, [44, 8, 14, 14, 12, 20], [34, 7, 19, 18, 17, 25]),
      align: ['start', 'end', 'end', 'end', 'end', 'end'],
    },
    ...(assumed.length === 0
      ? []
      : [
          {
            kind: 'paragraph',
            tone: 'quiet',
            text: sayList('list.assumed', { figures: assumed.join(', ') }, voice),
          } as const,
        ]),
  ];
}
