import { countJob, makeQuote, minorDigits, type Problem, type Quote } from '@fielded/core';
import { useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useEffect, useLayoutEffect, useMemo, useRef, useState } from 'preact/hooks';
import { useDesk } from '../../desk/context.ts';
import type { Keeper } from '../../desk/keeper.ts';
import { keptLogo } from '../../desk/kept-logos.ts';
import { keepShop } from '../../desk/kept-shop.ts';
import { Fold } from '../../entry/fold.tsx';
import type { Places } from '../../stage/places.ts';
import { keepTogether } from '../../words/keep-together.ts';
import { RateFields } from '../shop/rate-fields.tsx';
import { DetailFields } from './detail-fields.tsx';
import { LanguageField } from './language-field.tsx';
import { PriceTable } from './price-table.tsx';
import { keepDetails, keepWords, optionsOf, readDetails, readWordsNote } from './quote-details.ts';
import { QuoteFiles } from './quote-files.tsx';

/** What the job costs, and the document for the client, computed as by the command line. */
export function QuotePanel({ keeper, places }: { keeper: Keeper; places: Places }): JSX.Element {
  const desk = useDesk();
  // Another job may come to lie on the desk while this part is open.
  void desk.doc.value;
  const id = keeper.jobId();
  return <QuoteOfJob key={id} id={id} places={places} />;
}

function QuoteOfJob({ id, places }: { id: string; places: Places }): JSX.Element {
  const desk = useDesk();
  const units = desk.units.value;
  const job = useMemo(() => ({ ...desk.job.value, units }), [desk.job.value, units]);
  const { report, quantities } = useMemo(() => countJob(job), [job]);
  const details = useSignal(readDetails(id));
  const words = useSignal(readWordsNote(id));
  const priced = hasCurrency(job.shop?.rates?.currency);
  const rates = useRates(!priced, places);
  const { shop } = desk.doc.value;
  useEffect(() => {
    if (shop !== null) keepShop(shop);
  }, [shop]);
  const logoMissing = keptLogo(shop?.logo) === null ? (job.shop?.maker?.logo ?? null) : null;
  const quote = priced ? makeQuote(job, report, quantities, optionsOf(details.value)) : null;
  const errors = report.problems.filter(({ severity }) => severity === 'error');
  const { kind, paper } = details.value;
  return (
    <section class="quote" aria-labelledby="quote-name">
      <h2 id="quote-name">{kind === 'quote' ? 'Quote' : 'Estimate'}</h2>
      {(job.doors ?? []).length === 0 && <NoDoors places={places} />}
      <DetailFields
        details={details.value}
        change={(next) => {
          details.value = next;
          keepDetails(id, next);
        }}
      />
      {quote === null ? (
        <p class="hint">Say the currency and your rates: they are kept with the shop, for every quote.</p>
      ) : (
        <PriceTable price={quote.price} language={words.value.language} giveRate={rates.give} />
      )}
      <details ref={rates.place} open={rates.open} onToggle={(event) => rates.setOpen(event.currentTarget.open)}>
        <summary>Rates of the shop</summary>
        {rates.open && <RateFields />}
      </details>
      <Fold name="In another language">
        {() => (
          <LanguageField
            words={words.value}
            change={(next) => {
              words.value = next;
              keepWords(id, next);
            }}
          />
        )}
      </Fold>
      {quote !== null && (
        <>
          <Reservations quote={quote} errors={errors} logoMissing={logoMissing} />
          <QuoteFiles quote={quote} report={report} errors={errors} words={words.value} paper={paper} />
        </>
      )}
    </section>
  );
}

/** The rates, folded away or open. `give` goes to where a line of the price gets what it is missing. */
function useRates(openFirst: boolean, places: Places) {
  const place = useRef<HTMLDetailsElement>(null);
  const [open, setOpen] = useState(openFirst);
  const [wanted, setWanted] = useState<string | null>(null);
  // The field is there once the rates are open.
  useLayoutEffect(() => {
    if (wanted === null) return;
    place.current?.querySelector<HTMLInputElement>(`[data-shop="${CSS.escape(wanted)}"]`)?.focus();
    setWanted(null);
  }, [wanted]);
  const give = (missing: string) => {
    if (missing === 'machines') places.place.value = 'set-up';
    else if (missing === 'panel.species' || missing.startsWith('frame.')) places.place.value = 'joint';
    else {
      setOpen(true);
      setWanted(missing);
    }
  };
  return { place, open, setOpen, give };
}

function NoDoors({ places }: { places: Places }): JSX.Element {
  return (
    <p class="hint">
      The job has no doors yet, so there is little to count.{' '}
      <button
        type="button"
        class="quiet"
        onClick={() => {
          places.place.value = 'doors';
        }}
      >
        Go to the doors
      </button>
    </p>
  );
}

/** What to know before the quote goes out: what it leaves out, assumes or must not offer. */
function Reservations({
  quote,
  errors,
  logoMissing,
}: {
  quote: Quote;
  errors: readonly Problem[];
  /** The logo that the shop file names and that was not given here. */
  logoMissing: string | null;
}): JSX.Element {
  const { notPromised, price, assumed } = quote;
  return (
    <>
      {errors.length > 0 && (
        <div class="fault">
          <p>The job cannot be made as it stands. Put it right first; a draft says so at its head.</p>
          <ul>
            {errors.map(({ code, at, message }) => (
              <li key={`${code} ${at}`}>{keepTogether(message)}</li>
            ))}
          </ul>
        </div>
      )}
      {logoMissing !== null && (
        <p class="hint">The shop’s logo {logoMissing} is not here: choose it under Rates of the shop.</p>
      )}
      {price.lines.some(({ amount }) => amount === null) && (
        <p class="hint">The total leaves out what is not priced or not counted.</p>
      )}
      {price.notCounted.length > 0 && (
        <p class="hint">
          No line of the quote counts {price.notCounted.map(({ what }) => what).join(' or ')} of the frame: allow for
          them in the hours for each door.
        </p>
      )}
      {assumed.length > 0 && <p class="hint">Some quantities rest on assumed figures; the document names them.</p>}
      {notPromised.length > 0 && (
        <p class="hint">
          The quote promises nothing about {notPromised.map(plainName).join(' or ')}: the job does not give them.
        </p>
      )}
    </>
  );
}

function plainName(key: string): string {
  return key === 'season' ? 'the seasons' : key === 'spread' ? 'the tolerances of the work' : key;
}

/** Whether prices can be written in it. */
function hasCurrency(currency: string | undefined): boolean {
  try {
    return currency !== undefined && minorDigits(currency) >= 0;
  } catch {
    return false;
  }
}
