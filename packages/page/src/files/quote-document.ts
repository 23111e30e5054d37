import type { Quote, QuoteWords, Report } from '@fielded/core';
import { paintText, type WordPicture, writeDocx } from '@fielded/exchange';
import {
  documentPages,
  documentToHtml,
  openLetters,
  PAPERS,
  type PaperName,
  quoteDocument,
  type Scene,
  sceneToSvg,
  type TextDocument,
} from '@fielded/render';
import type { KeptLogo } from '../desk/kept-logos.ts';
import { bytesOfAddress } from './data-address.ts';
import { paintSvg } from './paint-svg.ts';
import { openFont, scenesPdf } from './pdf.ts';
import { printPages } from './print-pages.ts';

/** A quote to be written out. */
export interface AskedQuote {
  readonly quote: Quote;
  readonly report: Report;
  /** What stands against the job: the document is then a draft, and says so first. */
  readonly errors: readonly string[];
  /** Fixed words of the document. */
  readonly words: QuoteWords;
  readonly paper: PaperName;
  /** The shop's logo, if it is here. */
  readonly logo: KeptLogo | null;
}

/** Pixels to the inch of a picture, as on the command line: fine enough for a printed page. */
const DPI = 250;

/** The document that a client signs, as a PDF. */
export function quotePdf(asked: AskedQuote): Promise<Blob> {
  const document = write(asked);
  return scenesPdf(documentPages(document, asked.paper), { title: document.title });
}

/** The document for a word processor. */
export async function quoteDocx(asked: AskedQuote): Promise<Blob> {
  const letters = await openLetters(await openFont());
  const paint = async (scene: Scene): Promise<WordPicture> => {
    const options = { theme: 'print', bare: true } as const;
    // A picture is painted without the page's fonts: its letters are drawn as outlines.
    const png = await paintSvg(sceneToSvg(scene, { ...options, letters }), DPI);
    return {
      svg: sceneToSvg(scene, options),
      png: new Uint8Array(await png.arrayBuffer()),
      width: scene.width,
      height: scene.height,
      alt: scene.title,
    };
  };
  const bytes = await writeDocx({ ...(await paintText(write(asked), paint)), paper: PAPERS[asked.paper] });
  return new Blob([bytes as BlobPart], {
    type: 'application/vnd.openxmlformats-officedocument.wordprocessingml.document',
  });
}

/** Prints the document. */
export async function printQuote(asked: AskedQuote): Promise<void> {
  printPages(
    documentPages(write(asked), asked.paper).map((page) => sceneToSvg(page, { theme: 'print' })),
    asked.paper,
  );
}

/** The document as a web page, to read or to send. */
export function quoteHtml(asked: AskedQuote): Blob {
  return new Blob([documentToHtml(write(asked))], { type: 'text/html' });
}

function write({ quote, report, words, errors, logo }: AskedQuote): TextDocument {
  const picture = logo && { png: bytesOfAddress(logo.png)!, width: logo.width, height: logo.height };
  return quoteDocument(quote, report, { words, errors, ...(picture && { logo: picture }) });
}
