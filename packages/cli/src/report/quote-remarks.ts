import { formatMoney, MOST_AMOUNT, type Quote, type Report, say as sayCore } from '@fielded/core';
import { say, sayAll } from '../words/say.ts';

/** What a quote leaves out because nobody said it, a sentence each. */
export function quoteRemarks({ price, notPromised }: Quote, report: Report): string[] {
  const { notChecked } = report.statements;
  const { notCounted, notPriced, currency } = price;
  const isTooMuch = (rate: string) => price.lines.some(({ missing, price: each }) => missing === rate && each !== null);
  const [tooMuch, notGiven] = [notPriced.filter(isTooMuch), notPriced.filter((rate) => !isTooMuch(rate))];
  const paths = (all: readonly string[]) => all.join(', ');
  const remarks: string[] = [];
  if (notChecked.length > 0) remarks.push(say('print.quote.not-checked', { paths: paths(notChecked) }, report));
  if (notCounted.length > 0) remarks.push(notCountedWords(notCounted, report));
  if (notGiven.length > 0) remarks.push(say('print.quote.no-rate', { rates: paths(notGiven) }, report));
  if (tooMuch.length > 0) {
    const figures = { amount: formatMoney(MOST_AMOUNT, currency), rates: paths(tooMuch) };
    remarks.push(say('print.quote.too-much', figures, report));
  }
  if (notPromised.length > 0) remarks.push(say('print.quote.not-promised', { paths: paths(notPromised) }, report));
  return remarks;
}

/** "Not counted: the frame's sticking (name frame.sticking.head), groove. What they take belongs to rates.door." */
function notCountedWords(notCounted: Quote['price']['notCounted'], voice: Report): string {
  const names = notCounted.map(({ what, missing }) => {
    const work = sayCore(`work.${what}`, {}, voice);
    return missing === null ? work : say('print.quote.frame-work', { work, path: missing }, voice);
  });
  return say('print.quote.frame-not-counted', { works: sayAll(names, 'print.quote.and', voice) }, voice);
}
