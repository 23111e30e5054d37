import { type CuttingList, type Language, say } from '@fielded/core';
import { rectangle } from '@fielded/geometry';
import { group, type Item, path, type Scene, text } from '../scene.ts';
import { fitText, heightToFit } from '../text/measure-text.ts';
import { safeText } from '../text/safe-text.ts';
import { sayList } from '../words/english/list.ts';
import { type InVoice, spokenLength } from '../words/lengths.ts';

/** Where labels lie on a sheet of paper, mm. */
export interface LabelSheet {
  readonly paper: { readonly width: number; readonly height: number };
  readonly label: { readonly width: number; readonly height: number };
  readonly across: number;
  readonly down: number;
  /** Of the first label's top left corner. */
  readonly left: number;
  readonly top: number;
  /** From one label to the next. */
  readonly stepAcross: number;
  readonly stepDown: number;
}

const A4 = { width: 210, height: 297 };

/** 65 labels of 38.1 × 21.2 mm on A4, five beside each other: a layout that label makers share. */
export const SIXTY_FIVE: LabelSheet = {
  paper: A4,
  label: { width: 38.1, height: 21.2 },
  across: 5,
  down: 13,
  left: 4.75,
  top: 10.7,
  stepAcross: 40.6,
  stepDown: 21.2,
};

/** As many labels of a size as A4 holds, 2 mm apart, in the middle of the sheet with 8 mm left free round them; null where not one fits. */
export function labelSheet(width: number, height: number): LabelSheet | null {
  const [margin, gap] = [8, 2];
  const fit = (room: number, size: number) => Math.floor((room - 2 * margin + gap) / (size + gap) + 1e-9);
  const [across, down] = [fit(A4.width, width), fit(A4.height, height)];
  if (!(across >= 1 && down >= 1)) return null;
  const start = (room: number, size: number, count: number) => (room - count * size - (count - 1) * gap) / 2;
  return {
    paper: A4,
    label: { width, height },
    across,
    down,
    left: start(A4.width, width, across),
    top: start(A4.height, height, down),
    stepAcross: width + gap,
    stepDown: height + gap,
  };
}

/** What stands on one label: the piece, its size, the door and the job. */
interface Label {
  readonly lines: readonly string[];
}

/** Most labels that are drawn: more would be more sheets than anyone prints. */
const MOST_LABELS = 13_000;

/**
 * A label for every part and every panel of a list, on as many sheets as it takes. `outlines` draws the labels' edges, for plain paper;
 * words are English unless a language is given.
 *
 * @throws RangeError for more than 13,000 labels.
 */
export function labelSheets(
  list: CuttingList,
  units: 'mm' | 'in',
  sheet: LabelSheet,
  outlines = false,
  language?: Language,
): Scene[] {
  const voice: InVoice = { units, ...(language && { language }) };
  const wanted = [...list.parts, ...list.panels].reduce((sum, { quantity }) => sum + quantity, 0);
  if (wanted > MOST_LABELS) throw new RangeError(`there are ${wanted} labels, and up to ${MOST_LABELS} are drawn`);
  const labels = listLabels(list, voice);
  const each = sheet.across * sheet.down;
  const count = Math.max(1, Math.ceil(labels.length / each));
  return Array.from({ length: count }, (_, k) => ({
    ...sheet.paper,
    scale: 1,
    title: sayList('tag.title', {}, voice),
    description: sayList('tag.sheet', { sheet: k + 1, of: count }, voice),
    items: labels.slice(k * each, (k + 1) * each).map((label, i) => placeLabel(label, i, sheet, outlines)),
  }));
}

function placeLabel({ lines }: Label, i: number, sheet: LabelSheet, outlines: boolean): Item {
  const x = sheet.left + (i % sheet.across) * sheet.stepAcross;
  const y = sheet.top + Math.floor(i / sheet.across) * sheet.stepDown;
  const { width, height } = sheet.label;
  const inset = Math.min(2.5, width / 12);
  const step = Math.min(6, (height - 2) / lines.length);
  const edge = outlines ? [path('edge', 'grain', [rectangle({ x0: x, y0: y, x1: x + width, y1: y + height })])] : [];
  const first = y + (height - step * lines.length) / 2 + step * 0.68;
  const words = lines.map((line, k) => {
    // A size that is cut short is worse than a small one.
    const size = heightToFit(line, step * (k === 1 ? 0.5 : 0.42), 1.5, width - 2 * inset);
    return text(
      `line ${k}`,
      k < 2 ? 'text' : 'quiet',
      x + inset,
      first + k * step,
      fitText(line, size, width - 2 * inset),
      size,
    );
  });
  return group(`label ${i}`, [...edge, ...words]);
}

type PieceName = CuttingList['parts'][number]['part'] | 'panel';

/** One label for each piece, door by door in the order of the list. */
function listLabels({ parts, panels, jobs }: CuttingList, voice: InVoice): Label[] {
  const size = (...sizes: number[]) =>
    sizes
      .map((mm, k) => {
        const words = spokenLength(mm, voice, 1);
        return k < sizes.length - 1 ? words.replace(` ${voice.units}`, '') : words;
      })
      .join(' × ');
  const job = (title: string) => (jobs.length > 1 ? [safeText(title)] : [safeText(jobs[0] ?? '')]);
  const one = (name: PieceName, sizes: string, of: (typeof parts)[number]['for']): Label[] =>
    of.flatMap(({ job: title, door, quantity }) =>
      Array.from({ length: quantity }, (_, k) => ({
        lines: [
          sayList(
            'tag.piece',
            {
              part: name === 'panel' ? sayList('tag.panel', {}, voice) : say(`part.${name}`, {}, voice),
              door: safeText(door),
            },
            voice,
          ),
          sizes,
          sayList('tag.of', { number: k + 1, of: quantity, job: job(title)[0]! }, voice),
        ],
      })),
    );
  return [
    ...parts.flatMap((p) => one(p.part, size(p.length, p.width, p.thickness), p.for)),
    ...panels.flatMap((p) => one('panel', size(p.width, p.height, p.thickness), p.for)),
  ];
}
