import { QUOTE_WORDS, type QuoteWords } from '@fielded/core';
import type { JSX } from 'preact';
import { useRef } from 'preact/hooks';
import { useDesk } from '../../desk/context.ts';
import { attempt, fetchPart } from '../../desk/fetch-part.ts';
import { FilePicker } from '../../entry/file-picker.tsx';
import { handOver } from '../../files/hand-over.ts';
import { readFiles } from '../../files/open-text.ts';

const fetchReading = () => fetchPart(() => import('./words-reading.ts'));

/** Chooses the fixed words of the document in another language, from a file that a shop translates once. */
export function LanguageField({
  words,
  change,
}: {
  words: QuoteWords;
  change: (words: QuoteWords) => void;
}): JSX.Element {
  const desk = useDesk();
  const picker = useRef<HTMLInputElement>(null);
  const take = async (files: readonly File[]) => {
    const given = await readFiles(files);
    const [file] = 'message' in given ? [] : given;
    if ('message' in given) desk.notice.value = { kind: 'fault', text: given.message };
    if (file === undefined) return;
    const read = (await fetchReading()).readQuoteWords(file.text);
    if ('fault' in read) desk.notice.value = { kind: 'fault', text: `${file.name}: ${read.fault}` };
    else change(read);
  };
  const saveEnglish = async () => handOver('quote-words.yaml', (await fetchReading()).writeQuoteWords(), 'text/yaml');
  return (
    <>
      <p>
        {words.language === QUOTE_WORDS.language
          ? 'The document is in English.'
          : `The document is in ${nameOf(words.language)}.`}
      </p>
      <div class="buttons">
        <button type="button" onClick={() => picker.current?.click()}>
          Words from a file…
        </button>
        <button type="button" onClick={() => attempt(desk, saveEnglish)}>
          Save the English words
        </button>
        {words !== QUOTE_WORDS && (
          <button type="button" onClick={() => change(QUOTE_WORDS)}>
            Back to English
          </button>
        )}
      </div>
      <FilePicker
        picker={picker}
        label="Fixed words of a quote in another language"
        accept=".yaml,.yml,.json"
        take={(files) => void attempt(desk, () => take(files))}
      />
      <p class="hint">Save the English words, write yours in their place, and choose the file here.</p>
    </>
  );
}

/** A language by its English name. */
function nameOf(tag: string): string {
  return new Intl.DisplayNames(['en-GB'], { type: 'language' }).of(tag) ?? tag;
}
