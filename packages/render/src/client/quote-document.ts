import {
  decimalOf,
  facePhrase,
  formatMoney,
  formatPrice,
  type Language,
  phrase,
  type Quote,
  type QuoteLine,
  type QuoteWords,
  quantityShown,
  type Report,
} from '@fielded/core';
import type { Bitmap, Block, PlacedFigure, TextDocument } from '../document/document.ts';
import { safeDocument } from '../document/safe-document.ts';
import { type Item, itemsBox, sceneAround } from '../scene.ts';
import { safeText } from '../text/safe-text.ts';
import { sayNote } from '../words/english/note.ts';
import { drawClientSection } from './client-section.ts';
import { drawCorner } from './corner.ts';
import { drawSizedElevation } from './elevation.ts';

/** What goes into a quote's document beside the quote itself. */
export interface QuoteDocumentOptions {
  readonly words: QuoteWords;
  readonly logo?: Bitmap;
  /** Errors of the job: the document is then a draft, and says so first. */
  readonly errors?: readonly string[];
}

/** Widths of the pictures, mm, where they do not have a scale of their own. */
const SECTION_WIDTH = 92;
const CORNER_WIDTH = 66;
const MOST_ELEVATIONS = 12;
/** Height of the tallest elevation, mm of paper. */
const ELEVATION_HEIGHT = 67;

type Say = (key: keyof QuoteWords, figures?: Readonly<Record<string, number | string>>) => string;

/** How a quote is put into words: its fixed sentences, lengths in the job's unit, and how the field stands to the frame. */
interface Told {
  readonly say: Say;
  readonly length: (mm: number) => string;
  readonly face: string;
}

/** The fixed words of a quote as a language: what other sentences say of the faces comes from them too. */
function tell(report: Report, words: QuoteWords): Told {
  const language: Language = { sentences: words, decimal: decimalOf(words.language) };
  const { units, fit } = report;
  return {
    say: (key, figures = {}) => phrase(words[key], figures, { units }, language),
    length: (mm) => phrase('{mm:coarse}', { mm }, { units }, language),
    face: fit.frontFace === null ? '' : facePhrase(fit.frontFace, units, { units, language }),
  };
}

/** Sizes of doors that a document lists: beyond it a word processor's file takes hundreds of megabytes to write. */
const MOST_LISTED = 500;

/**
 * A quote as a document: parties, what is made, drawings, wood, movement, price, terms and a place to sign.
 *
 * @throws RangeError for more than 500 entries of doors.
 */
export function quoteDocument(quote: Quote, report: Report, options: QuoteDocumentOptions): TextDocument {
  const { words, errors = [] } = options;
  const listed = report.doors?.length ?? 0;
  if (listed > MOST_LISTED)
    throw new RangeError(`the job has ${listed} entries under doors, and a quote lists up to ${MOST_LISTED}`);
  const told = tell(report, words);
  const { say } = told;
  const title = say(quote.kind);
  const named = [title, quote.number ?? ''].filter(Boolean).join(' ');
  return safeDocument({
    title: `${named}: ${report.title}`,
    language: words.language,
    ...(report.language && { spoken: report.language }),
    foot: [quote.maker?.name, named].filter(Boolean).join(' · '),
    blocks: [
      ...letterhead(quote, options.logo),
      { kind: 'title', text: title },
      ...draftBlocks(errors, say, report),
      { kind: 'facts', facts: facts(quote, report, say, words.language) },
      ...(errors.length > 0 ? [] : [quiet(say(quote.kind === 'quote' ? 'quoteMeans' : 'estimateMeans'))]),
      ...madeBlocks(report, told),
      ...pictureBlocks(report, told),
      ...woodBlocks(quote, say),
      ...promiseBlocks(quote, told),
      ...priceBlocks(quote, say, words.language),
      { kind: 'heading', text: say('notIncluded'), whole: true },
      { kind: 'list', items: say('notIncludedList').split('\n') },
      ...(quote.terms.length === 0
        ? []
        : [
            { kind: 'heading', text: say('terms') } as const,
            ...quote.terms.map((text) => ({ kind: 'paragraph', text }) as const),
          ]),
      { kind: 'heading', text: say('acceptance'), whole: true },
      { kind: 'paragraph', text: say('acceptanceMeans') },
      { kind: 'signatures', names: [say('signClient'), say('signShop')] },
    ],
  });
}

function letterhead({ maker }: Quote, logo: Bitmap | undefined): Block[] {
  if (maker === null) return [];
  return [{ kind: 'letterhead', name: maker.name, address: maker.address, ...(logo && { logo }) }];
}

function draftBlocks(errors: readonly string[], say: Say, report: Report): Block[] {
  if (errors.length === 0) return [];
  return [
    { kind: 'paragraph', text: say('draft'), tone: 'trouble' },
    ...errors.map(
      (message) => ({ kind: 'paragraph', text: sayNote('error.line', { message }, report), tone: 'trouble' }) as const,
    ),
  ];
}

function facts(quote: Quote, report: Report, say: Say, language: string): [string, string][] {
  const day = (date: string) =>
    new Intl.DateTimeFormat(language, { dateStyle: 'long', timeZone: 'UTC' }).format(new Date(`${date}T00:00:00Z`));
  const found: [string, string | null][] = [
    [say('number'), quote.number],
    [say('date'), day(quote.date)],
    [say('validUntil'), day(quote.validUntil)],
    [say('client'), quote.client],
    [say('job'), report.title],
  ];
  return found.filter((fact): fact is [string, string] => fact[1] !== null);
}

/** The table of doors, with their number and sizes. */
function madeBlocks(report: Report, { say, length }: Told): Block[] {
  const doors = report.doors ?? [];
  const heading: Block = { kind: 'heading', text: say('whatIsMade') };
  if (doors.length === 0) return [heading, { kind: 'paragraph', text: say('noDoors') }];
  return [
    heading,
    { kind: 'paragraph', text: say('asDrawn') },
    {
      kind: 'table',
      about: say('whatIsMade'),
      head: [say('door'), say('quantity'), say('size'), say('panels')],
      rows: doors.map(({ name, quantity, leaves, width, height, across, up }) => [
        name,
        String(quantity * leaves),
        `${length(width)} × ${length(height)}`,
        `${across} × ${up}`,
      ]),
      foot: [],
      shares: [40, 14, 32, 14],
      align: ['start', 'end', 'end', 'end'],
    },
  ];
}

function pictureBlocks(report: Report, told: Told): Block[] {
  const { say, length, face } = told;
  const words = {
    frame: say('frame'),
    raise: say('raise'),
    field: say('field'),
    frameThickness: say('frameThickness'),
    panelThickness: say('panelThickness'),
    margin: say('margin'),
    length,
    face,
  };
  const section = fittedScene(say('section'), SECTION_WIDTH, (scale) => drawClientSection(report, scale, words));
  const corner = fittedScene(say('corner'), CORNER_WIDTH, (scale) => drawCorner(report, scale));
  const cuts = [section, corner].filter((figure) => figure !== null);
  return [
    { kind: 'figures', figures: elevations(report, told) },
    ...notAllDrawn(report.doors?.length ?? 0, say),
    { kind: 'figures', figures: cuts },
  ].filter((block) => !('figures' in block) || block.figures.length > 0) as Block[];
}

/** What is said where not every door is drawn. */
function notAllDrawn(doors: number, say: Say): Block[] {
  if (doors <= MOST_ELEVATIONS) return [];
  return [{ kind: 'paragraph', text: say('someDrawn', { shown: MOST_ELEVATIONS, all: doors }), tone: 'quiet' }];
}

/** Elevations of all doors at one scale, so that their sizes compare; only as many as one can take in. */
function elevations(report: Report, { say, length }: Told): PlacedFigure[] {
  const doors = (report.doors ?? []).slice(0, MOST_ELEVATIONS);
  const tallest = Math.max(...doors.map(({ height, width }) => Math.max(height, width)), 1);
  const parts = [5, 10, 15, 20, 25, 30, 40, 50, 100].find((n) => tallest / n <= ELEVATION_HEIGHT) ?? 200;
  return doors.map(({ name }, i) => ({
    picture: sceneAround(safeText(name), drawSizedElevation(report, 1 / parts, i, length)),
    caption: say('elevation', { name, scale: `1:${parts}` }),
  }));
}

/** A picture scaled to a width; null where there is nothing to draw. */
function fittedScene(caption: string, width: number, drawAt: (scale: number) => Item[]): PlacedFigure | null {
  const trial = itemsBox(drawAt(1));
  if (trial === null) return null;
  const scale = Math.min(2, width / (trial.x1 - trial.x0));
  return { picture: sceneAround(caption, drawAt(scale)), caption };
}

function woodBlocks({ wood, frameWood, promises }: Quote, say: Say): Block[] {
  const about = promises.filter(({ sentence }) => sentence === 'moisture' || sentence === 'finishBefore');
  return [
    { kind: 'heading', text: say('woodAndFinish') },
    { kind: 'paragraph', text: woodWords(wood, frameWood, say) },
    ...about.map(({ sentence, figures }) => ({ kind: 'paragraph', text: say(sentence, figures) }) as const),
  ];
}

function woodWords(wood: string | null, frame: string | null, say: Say): string {
  if (wood === null) return say('woodOpen');
  return frame === null ? say('wood', { wood }) : say('woods', { wood, frame });
}

function promiseBlocks({ promises }: Quote, { say, face }: Told): Block[] {
  const about = promises.filter(({ sentence }) => sentence !== 'moisture' && sentence !== 'finishBefore');
  if (about.length === 0) return [];
  return [
    { kind: 'heading', text: say('movement') },
    ...about.map(
      ({ sentence, figures }) =>
        ({ kind: 'paragraph', text: say(sentence, sentence === 'face' ? { face } : figures) }) as const,
    ),
  ];
}

function priceBlocks({ price, assumed }: Quote, say: Say, language: string): Block[] {
  const money = (minor: number | null) =>
    minor === null ? say('notPriced') : formatMoney(minor, price.currency, language);
  const rows = price.lines.map((line) => [
    itemWords(line, say),
    quantityOf(line, language),
    say(`unit.${line.unit}`),
    line.price === null ? '' : formatPrice(line.price, price.currency, language),
    line.item === 'frame' ? say('notCounted') : money(line.amount),
  ]);
  const sum = (label: string, minor: number) => [label, '', '', '', money(minor)];
  const foot = [
    sum(say('net'), price.net),
    ...(price.margin > 0 ? [sum(say('marginLine', { rate: price.marginRate }), price.margin)] : []),
    ...(price.tax ? [sum(say('tax', { tax: price.tax.name, rate: price.tax.rate }), price.tax.amount)] : []),
    sum(say('total'), price.total),
    ...(price.deposit === null ? [] : [sum(say('deposit', { rate: price.depositRate ?? 0 }), price.deposit)]),
  ];
  return [
    { kind: 'heading', text: say('price'), whole: true },
    {
      kind: 'table',
      about: say('price'),
      head: [say('item'), say('quantity'), say('unit'), say('unitPrice'), say('amount')],
      rows,
      foot,
      total: foot.length - (price.deposit === null ? 1 : 2),
      shares: [44, 13, 10, 16, 17],
      align: ['start', 'end', 'start', 'end', 'end'],
    },
    ...(price.lines.some(({ amount }) => amount === null) ? [quiet(say('notPricedMeans'))] : []),
    ...(assumed.length > 0 ? [quiet(assumedWords(assumed, say))] : []),
  ];
}

function quiet(text: string): Block {
  return { kind: 'paragraph', text, tone: 'quiet' };
}

/** What a quantity follows from and nobody said, in a sentence. */
function assumedWords(assumed: Quote['assumed'], say: Say): string {
  const words = assumed.map(({ what, value }) => say(`assumed.${what}`, { mm: value ?? 0, percent: value ?? 0 }));
  return say('assumedMeans', { assumed: words.join(', ') });
}

function itemWords({ item, figures }: QuoteLine, say: Say): string {
  const key = item === 'wood' && figures.wood === '' ? 'item.timber' : (`item.${item}` as const);
  return say(key, figures);
}

function quantityOf(line: QuoteLine, language: string): string {
  return new Intl.NumberFormat(language, { maximumFractionDigits: 6 }).format(quantityShown(line));
}
