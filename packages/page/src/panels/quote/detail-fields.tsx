import type { QuoteKind } from '@fielded/core';
import type { PaperName } from '@fielded/render';
import type { JSX } from 'preact';
import { useId } from 'preact/hooks';
import { WordField } from '../../entry/word-field.tsx';
import { Choice } from '../sizes/choice.tsx';
import { type QuoteDetails, today } from './quote-details.ts';

/** Whom the quote is for, its number and date. */
export function DetailFields({
  details,
  change,
}: {
  details: QuoteDetails;
  change: (details: QuoteDetails) => void;
}): JSX.Element {
  const id = useId();
  return (
    <>
      <Choice
        label="Price"
        name="quote-kind"
        value={details.kind}
        options={[
          ['quote', 'fixed'],
          ['estimate', 'estimate'],
        ]}
        choose={(kind) => change({ ...details, kind: kind as QuoteKind })}
      />
      <div class="field lines">
        <label for={`${id}-client`}>For: client and address</label>
        <textarea
          id={`${id}-client`}
          rows={3}
          dir="auto"
          autocomplete="off"
          value={details.client}
          onInput={(event) => change({ ...details, client: event.currentTarget.value })}
        />
      </div>
      <WordField
        id={`${id}-number`}
        label="Number"
        placeholder="–"
        value={details.number}
        onInput={(event) => change({ ...details, number: event.currentTarget.value })}
      />
      <WordField
        id={`${id}-date`}
        label="Date"
        type="date"
        value={details.date || today()}
        onChange={(event) => change({ ...details, date: event.currentTarget.value })}
      />
      <Choice
        label="Paper"
        name="quote-paper"
        value={details.paper}
        options={[
          ['a4', 'A4'],
          ['letter', 'Letter'],
        ]}
        choose={(paper) => change({ ...details, paper: paper as PaperName })}
      />
    </>
  );
}
