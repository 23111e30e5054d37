import type { Quote, QuoteWords, Report } from '@fielded/core';
import type { Bitmap, Block, TextDocument } from '../document/document.ts';
import { safeDocument } from '../document/safe-document.ts';
import { sayNote } from '../words/english/note.ts';
import { pictureBlocks } from './quote-pictures.ts';
import { priceBlocks } from './quote-price.ts';
import { quiet, type Say, type Told, tell } from './quote-told.ts';

/** What goes into a quote's document beside the quote itself. */
export interface QuoteDocumentOptions {
  readonly words: QuoteWords;
  readonly logo?: Bitmap;
  /** Errors of the job: the document is then a draft, and says so first. */
  readonly errors?: readonly string[];
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
