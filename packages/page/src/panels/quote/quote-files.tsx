import type { Problem, Quote, QuoteWords, Report } from '@fielded/core';
import type { PaperName } from '@fielded/render';
import { useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useDesk } from '../../desk/context.ts';
import { attempt, fetchPart } from '../../desk/fetch-part.ts';
import { keptLogo } from '../../desk/kept-logos.ts';
import { fileName, handOver } from '../../files/hand-over.ts';

type Makers = typeof import('../../files/quote-document.ts');

/** The document for the client: as PDF, for a word processor, or printed. */
export function QuoteFiles({
  quote,
  report,
  errors,
  words,
  paper,
}: {
  quote: Quote;
  report: Report;
  errors: readonly Problem[];
  words: QuoteWords;
  paper: PaperName;
}): JSX.Element {
  const desk = useDesk();
  const busy = useSignal(false);
  const what = errors.length > 0 ? 'Draft' : quote.kind === 'quote' ? 'Quote' : 'Estimate';
  const { shop } = desk.doc.value;
  const logo = desk.job.value.shop?.maker?.logo === undefined ? null : keptLogo(shop?.logo);
  const asked = { quote, report, words, paper, logo, errors: errors.map(({ message }) => message) };
  const make = async (run: (makers: Makers) => Promise<string>) => {
    if (busy.peek()) return;
    busy.value = true;
    await attempt(desk, async () => {
      const makers = await fetchPart(() => import('../../files/quote-document.ts'));
      desk.notice.value = { kind: 'note', text: await run(makers) };
    });
    busy.value = false;
  };
  const save = (ending: 'pdf' | 'docx' | 'html') => () =>
    make(async ({ quotePdf, quoteDocx, quoteHtml }) => {
      const file = await { pdf: quotePdf, docx: quoteDocx, html: quoteHtml }[ending](asked);
      const name = fileName([what, quote.number ?? '', report.title].join(' '), ending);
      handOver(name, file, file.type);
      return `Saved as ${name}.`;
    });
  const print = () =>
    make(async (makers) => {
      await makers.printQuote(asked);
      return 'The pages are in the print window.';
    });
  return (
    <div class="buttons">
      <button type="button" class="main" aria-disabled={busy.value} onClick={save('pdf')}>
        {what} as PDF
      </button>
      <button type="button" aria-disabled={busy.value} onClick={save('docx')}>
        {what} as DOCX
      </button>
      <button type="button" aria-disabled={busy.value} onClick={save('html')}>
        {what} as HTML
      </button>
      <button type="button" aria-disabled={busy.value} onClick={print}>
        Print the {what.toLowerCase()}
      </button>
    </div>
  );
}
