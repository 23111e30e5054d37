import { dirname, resolve } from 'node:path';
import {
  type Job,
  QUOTE_WORDS,
  type Quote,
  type QuoteWords,
  quoteJob,
  type ReadOptions,
  type Report,
  readFileData,
  writeQuoteWords,
} from '@fielded/core';
import type { Bitmap, OfficePaper, TextDocument } from '@fielded/render';
import { type Command, defineCommand } from '../command.ts';
import { placeTexts } from '../command-texts.ts';
import { readTextFile } from '../files/read-text.ts';
import { readWords } from '../files/read-words.ts';
import { quoteCsv } from '../formats/quote-csv.ts';
import { type Io, safe } from '../io.ts';
import { jsonText } from '../report/json-text.ts';
import { remarkProblems } from '../report/list-problems.ts';
import { quoteLines } from '../report/quote-lines.ts';
import { quoteRemarks } from '../report/quote-remarks.ts';
import { SHEET_WIDTH } from '../terminal/columns.ts';
import { wrap } from '../terminal/table.ts';
import { seeHelp, UsageError, unsaid } from '../usage-error.ts';
import { say } from '../words/say.ts';
import { deliver } from './deliver.ts';
import { openShop, readOneJob } from './read-jobs.ts';
import { checkPaper, FILE_ENDINGS, FORCE, LANGUAGE, output, PAPER, SHOP } from './shared-options.ts';
import { withinRoom } from './within-room.ts';

type Format = '.pdf' | '.docx' | '.html' | '.csv';

/** `fielded quote`: the price of a job and the document that a client signs. */
export const quote: Command = defineCommand(
  {
    summary: 'a quotation: doors, drawings, price, movement, terms',
    place: { name: 'JOB', least: 0, most: 1, needs: 'one job file', takes: 'one job file', endings: FILE_ENDINGS },
    about: [
      "Prices a job at the rates of its shop file and writes the document for the client: what is made, the doors to scale, the section and a corner, wood, movement and tolerances as worked out, price, the shop's terms, a place to sign. What has no rate stands there as not priced.",
      'A job that has errors gives no quote: a joint that cannot be made is not offered.',
    ],
    options: {
      output: output(
        'by its ending: .pdf, .docx for a word processor, .html, or .csv with the price for a spreadsheet; without it, the price goes to standard output',
      ),
      client: { value: 'WORDS', says: 'who it is for; \\n begins a new line' },
      number: { value: 'WORDS', says: "the quote's number" },
      date: { value: 'YYYY-MM-DD', says: 'its date; today unless told' },
      estimate: { says: 'an estimate, which may change, instead of a fixed price' },
      paper: PAPER,
      words: { value: 'FILE', says: 'fixed words in another language', endings: FILE_ENDINGS },
      'print-words': { says: 'print all fixed words, to be translated, and nothing else' },
      draft: { says: 'write the document of a job that has errors; it says so first' },
      json: { says: 'print the quote as JSON, money in whole minor units' },
      shop: SHOP,
      language: LANGUAGE,
      force: FORCE,
    },
    formats: ['.pdf', '.docx', '.html', '.csv'],
    statuses: ['written', 'the job has an error, and --draft was not given', 'wrong use or a file could not be read'],
  },
  async ({ path, values, format }, io) => {
    if (values['print-words']) {
      await io.out(writeQuoteWords());
      return 0;
    }
    if (path === '') throw new UsageError(placeTexts('quote', quote).needs, seeHelp('quote'));
    const shop = await openShop(values.shop, io);
    return shop === null ? 2 : quoteFile(path, shop, values, format, io);
  },
);

interface Asked {
  readonly output: string | undefined;
  readonly client: string | undefined;
  readonly number: string | undefined;
  readonly date: string | undefined;
  readonly estimate: boolean;
  readonly paper: OfficePaper | undefined;
  readonly words: string | undefined;
  readonly draft: boolean;
  readonly json: boolean;
  readonly shop: string | undefined;
  readonly force: boolean;
}

async function quoteFile(
  path: string,
  shop: ReadOptions['shop'],
  asked: Asked,
  format: Format,
  io: Io,
): Promise<number> {
  checkPaper(asked.paper, asked.output !== undefined && (format === '.pdf' || format === '.docx'), ['.pdf', '.docx']);
  const words = asked.words === undefined ? QUOTE_WORDS : readWords(asked.words);
  const text = readTextFile(path);
  const job = await readOneJob({ path, text }, shop, io);
  if (job === null) return 2;
  if (job.shop?.rates?.currency === undefined)
    throw new UsageError(unsaid('print.usage.no-rates', { file: path }), seeHelp('quote'));
  // Count and price; a job with errors is only written as a draft.
  const { made, report } = quoteFor(job, asked);
  const errors = report.problems.filter(({ severity }) => severity === 'error');
  await io.err(remarkProblems(report.problems, report));
  if (errors.length > 0 && !asked.draft) {
    await io.err(`${say('print.quote.none-written', {}, report)}\n`);
    return 1;
  }
  const logo = await openLogo(path, text as string, job, asked, io);
  if (logo === null) return 2;
  const written = await write(
    made,
    report,
    errors.map(({ message }) => message),
    words,
    logo,
    asked,
    format,
  );
  if (!(await deliver(io, asked.output, written, asked.force))) return 2;
  for (const remark of quoteRemarks(made, report)) await io.err(`${wrap(remark, SHEET_WIDTH, 0).join('\n')}\n`);
  return errors.length > 0 ? 1 : 0;
}

function quoteFor(job: Job, asked: Asked): { made: Quote; report: Report } {
  const { client, number } = asked;
  try {
    return quoteJob(job, {
      kind: asked.estimate ? 'estimate' : 'quote',
      date: asked.date ?? today(),
      ...(number !== undefined && { number }),
      ...(client !== undefined && { client: client.replaceAll('\\n', '\n') }),
    });
  } catch (error) {
    if (error instanceof RangeError && asked.date !== undefined)
      throw new UsageError(unsaid('print.usage.date', { date: asked.date }));
    throw error;
  }
}

/** The day where the command runs, ISO 8601. */
function today(): string {
  const now = new Date();
  return new Date(now.getTime() - now.getTimezoneOffset() * 60_000).toISOString().slice(0, 10);
}

/** The shop's logo; undefined where it has none, null where it cannot be read, which has then been said. */
async function openLogo(
  path: string,
  text: string,
  job: Job,
  asked: Asked,
  io: Io,
): Promise<Bitmap | undefined | null> {
  const name = job.shop?.maker?.logo;
  if (name === undefined) return undefined;
  const named = (readFileData(text).value as { shop?: unknown } | null)?.shop;
  const shopPath = asked.shop ?? resolve(dirname(path), String(named ?? ''));
  const { loadLogo } = await import('../files/load-logo.ts');
  const logo = loadLogo(shopPath, name);
  if (!('refused' in logo)) return logo;
  await io.err(`${safe(`${shopPath}  logo: ${name}: ${logo.refused}. ${logo.instead}.`)}\n`);
  return null;
}

async function write(
  made: Quote,
  report: Report,
  errors: readonly string[],
  words: QuoteWords,
  logo: Bitmap | undefined,
  asked: Asked,
  format: Format,
): Promise<string | Uint8Array> {
  if (asked.json) {
    const { title, problems } = report;
    return jsonText({ fielded: 1, title, quote: made, problems });
  }
  if (asked.output === undefined) return quoteLines(made, report, errors, words);
  if (format === '.csv') return quoteCsv(made, report, errors, words);
  const render = await import('@fielded/render');
  const document = withinRoom('-o', unsaid('print.usage.fewer-doors', {}), () =>
    render.quoteDocument(made, report, { words, errors, ...(logo && { logo }) }),
  );
  const paper = asked.paper ?? 'a4';
  if (format === '.html') return render.documentToHtml(document);
  if (format === '.docx') return writeWord(document, render.PAPERS[paper]);
  const { writePdf } = await import('../formats/pdf.ts');
  return writePdf(render.documentPages(document, paper), { title: document.title });
}

async function writeWord(
  document: TextDocument,
  paper: { readonly width: number; readonly height: number },
): Promise<Uint8Array> {
  const { wordPicture } = await import('../formats/word-pictures.ts');
  const { paintText, writeDocx } = await import('@fielded/exchange');
  return writeDocx({ ...(await paintText(document, wordPicture)), paper });
}
