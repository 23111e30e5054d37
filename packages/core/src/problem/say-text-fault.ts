import type { Figures } from './problem.ts';
import type { TextFaultFigures, TextFaultSentence, ToldFault } from './say-fault.ts';
import { TEXT_WORDS } from './words/text.ts';

/** A fault of a file's text, to be said later. It brings its sentences along: what reads data alone, as the page does, goes without them. */
export function tellTextFault<K extends TextFaultSentence>(sentence: K, figures: TextFaultFigures<K>): ToldFault {
  return { sentence, remedy: `${sentence}.do`, figures: figures as Figures, english: TEXT_WORDS };
}
