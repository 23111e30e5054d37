import { formatLength, type KnifeMatch, matchKnives, sweptOutline, type Units, verdictWord } from '@fielded/core';
import { useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useEffect, useMemo } from 'preact/hooks';
import { useDesk } from '../../desk/context.ts';
import type { Desk } from '../../desk/desk.ts';
import { SelectField } from '../../entry/select-field.tsx';
import type { JobChange } from '../../job/changes.ts';
import { writeLength } from '../../job/write-length.ts';
import { tell } from '../../words/aloud.ts';
import { keepTogether } from '../../words/keep-together.ts';
import { plainFault } from '../../words/plain-fault.ts';
import { KnifePicture } from './knife-picture.tsx';

/** How many knives are listed, nearest first. */
const SHOWN = 10;
/** The least deviation that is said, mm. */
const LEAST_SAID = 0.01;

interface Compared {
  readonly cut: string;
  readonly matches: readonly KnifeMatch[];
}

/** Compares the shop's knives with a cut: each at its best reach, nearest first, the best drawn over the section wanted. */
export function KnifeMatches(): JSX.Element {
  const desk = useDesk();
  const { cuts } = desk.job.value;
  const chosen = useSignal(0);
  const compared = useSignal<Compared | null>(null);
  const busy = useSignal(false);
  const index = Math.min(chosen.value, cuts.length - 1);
  // A comparison holds for the job and the cut that it was made for.
  useEffect(() => {
    compared.value = null;
  }, [desk.job.value, index, compared]);
  const compare = () => {
    if (busy.peek()) return;
    busy.value = true;
    // Show first that it is comparing.
    setTimeout(() => {
      const { name } = cuts[index]!;
      const job = { ...desk.job.value, units: desk.units.value };
      const matches = matchKnives(job, name);
      compared.value = { cut: name, matches };
      tell(sayNearest(matches, job.units));
      busy.value = false;
    }, 30);
  };
  return (
    <div class="group">
      <h3>Can one of my knives do this?</h3>
      <SelectField
        id="knife-for"
        label="The cut"
        value={String(index)}
        options={cuts.map(({ name }, i) => [String(i), name] as const)}
        choose={(value) => {
          chosen.value = Number(value);
        }}
      />
      <button type="button" aria-disabled={busy.value} onClick={compare}>
        Compare the knives
      </button>
      <p role="status">{busy.value ? 'Comparing…' : ''}</p>
      {compared.value !== null && <Matches compared={compared.value} index={index} />}
    </div>
  );
}

function sayNearest({ length, 0: best }: readonly KnifeMatch[], units: Units): string {
  if (best === undefined) return 'There is no knife to compare with yet.';
  const off = formatLength(Math.max(best.deviation, LEAST_SAID), units, 2);
  return `${length} compared. The nearest is ${best.knife}, which comes within ${off}.`;
}

function Matches({ compared: { cut, matches }, index }: { compared: Compared; index: number }): JSX.Element {
  const desk = useDesk();
  const units = desk.units.value;
  const [best] = matches;
  if (best === undefined) return <p>There is no knife to compare with yet.</p>;
  const say = (mm: number) => keepTogether(formatLength(mm, units, 2));
  return (
    <>
      <DrawnOver match={best} index={index} />
      <ol class="matches">
        {matches.slice(0, SHOWN).map((match) => (
          <li key={match.knife}>
            <KnifePicture name={match.knife} />
            <b>{match.knife}</b>
            <button
              type="button"
              aria-label={`Use it: ${match.knife} for the ${cut}`}
              onClick={() => useKnife(desk, index, match)}
            >
              Use it
            </button>
            <div class="told">
              <p>
                Set to reach {say(match.reach)} it comes within {say(Math.max(match.deviation, LEAST_SAID))};{' '}
                {match.fit === null ? 'no tongue is left' : `then ${verdictWord(match.fit)}`}; {runWords(match)}
              </p>
              {match.problems.map(({ message }) => (
                <p key={message}>{keepTogether(message)}</p>
              ))}
            </div>
          </li>
        ))}
      </ol>
    </>
  );
}

/** What the best knife leaves, drawn over the section that is wanted: from the panel's edge at the left to the face above. */
function DrawnOver({ match, index }: { match: KnifeMatch; index: number }): JSX.Element | null {
  const desk = useDesk();
  const cut = desk.job.value.cuts[index];
  const wanted = useMemo(() => (cut === undefined ? '' : sweptOutline(cut)), [cut]);
  if (cut === undefined) return null;
  const wide = Math.max(cut.reach, match.reach) + 6;
  const deep = cut.depth + 4;
  return (
    <figure class="drawn-over">
      <svg viewBox={`-1 -1 ${wide + 2} ${deep + 2}`} aria-hidden="true">
        <path class="wood" d={`${match.swept}H${wide}V${deep}H0Z`} />
        <path class="leaves" d={match.swept} />
        <path class="wanted" d={wanted} />
      </svg>
      <figcaption>
        What {match.knife} leaves; dashed, the {cut.name} that is wanted.
      </figcaption>
    </figure>
  );
}

/** Whether its head and a machine can run it, as far as the shop says. */
function runWords({ works, problems, head }: KnifeMatch): string {
  if (head === null) return 'kept in no head';
  if (works) return `can be run in ${head}, as far as the shop says`;
  return problems.length === 0 ? `in ${head}, not worked out` : `not in ${head} as it is:`;
}

/** Has a cut made with a knife of the shop, at the cut's depth and the reach that was found. */
function useKnife(desk: Desk, index: number, { knife, reach }: KnifeMatch): void {
  const cut = desk.job.value.cuts[index];
  if (cut === undefined) return;
  const write = (mm: number) => writeLength(mm, desk.units.value, desk.job.value.units);
  const at = `cuts[${index}]`;
  const changes: JobChange[] = [
    [`${at}.profile`, undefined],
    [`${at}.head`, undefined],
    [`${at}.knife`, knife],
    [`${at}.depth`, write(cut.depth)],
    [`${at}.reach`, write(reach)],
  ];
  const [fault] = desk.change(changes);
  desk.notice.value = fault
    ? { kind: 'fault', text: `${knife} cannot be set so: ${plainFault(fault, desk.job.value.units)}` }
    : { kind: 'note', text: `The ${cut.name} is cut with ${knife} now. Undo takes it back.` };
}
