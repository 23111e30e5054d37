import { readJobData, verdictWord } from '@fielded/core';
import { useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useMemo } from 'preact/hooks';
import { useDesk } from '../../desk/context.ts';
import type { Change, Desk } from '../../desk/desk.ts';
import { reportJoint } from '../../job/answer-joint.ts';
import { type Data, getAtKeys, isGroup, setAt } from '../../job/data.ts';

/** The knives of the shop, each by its own section; and what the job would be with one of them. */
export function KnifeList(): JSX.Element {
  const desk = useDesk();
  const { shop } = desk.doc.value;
  const knives = getAtKeys(shop?.data, ['knives']);
  const names = isGroup(knives) ? Object.keys(knives) : [];
  const cuts = desk.job.value.cuts;
  const chosen = useSignal(0);
  const index = Math.min(chosen.value, cuts.length - 1);
  return (
    <div class="group">
      <h3>Knives</h3>
      {names.length > 0 && (
        <div class="field">
          <label for="knife-for">Could one of them cut the</label>
          <select
            id="knife-for"
            value={String(index)}
            onChange={(event) => {
              chosen.value = Number(event.currentTarget.value);
            }}
          >
            {cuts.map(({ name }, i) => (
              <option key={name} value={String(i)}>
                {name}?
              </option>
            ))}
          </select>
        </div>
      )}
      <ul class="knives">
        {names.map((name) => (
          <KnifeRow key={name} name={name} index={index} />
        ))}
      </ul>
      <button type="button" class="quiet" onClick={() => addKnives(desk)}>
        Put this job's profiles among the knives
      </button>
    </div>
  );
}

/** A knife's own section, and the fit of the joint with it. */
function KnifeRow({ name, index }: { name: string; index: number }): JSX.Element {
  const desk = useDesk();
  const { data, shop } = desk.doc.value;
  const changes = knifeChanges(index, name);
  const tried = useMemo(() => {
    const { job } = readJobData(
      changes.reduce((was, [path, value]) => setAt(was, path, value), data),
      shop?.data,
    );
    const cut = job?.cuts[index];
    if (!job || !cut) return null;
    return { alone: reportJoint({ ...job, cuts: [cut] }), whole: reportJoint(job) };
  }, [data, shop, name, index]);
  const used = getAtKeys(data, ['cuts', index, 'knife']) === name;
  return (
    <li>
      {tried && (
        <svg
          class="thumb"
          viewBox={`-1 -1 ${tried.alone.section.width + 2} ${tried.alone.section.thickness + 2}`}
          aria-hidden="true"
        >
          <path class="thumb-panel" d={tried.alone.section.outline} />
        </svg>
      )}
      <span>
        {name}
        <small>{tried === null ? 'cannot be set so in this stock' : verdictWord(tried.whole.fit.verdict)}</small>
      </span>
      <button
        type="button"
        aria-pressed={used}
        aria-label={`Use ${name} for the ${desk.job.value.cuts[index]?.name}`}
        disabled={tried === null || used}
        onClick={() => desk.change(changes)}
      >
        {used ? 'In use' : 'Use it'}
      </button>
    </li>
  );
}

/** A cut made with a knife of the shop instead of a profile of its own; its setting starts from the knife's. */
function knifeChanges(index: number, knife: string): Change[] {
  const at = `cuts[${index}]`;
  return [
    [`${at}.profile`, undefined],
    [`${at}.knife`, knife],
    [`${at}.depth`, undefined],
    [`${at}.reach`, undefined],
    [`${at}.head`, undefined],
  ];
}

/** The profiles drawn in the job, kept as knives under the names of their cuts. */
function addKnives(desk: Desk): void {
  const cuts = getAtKeys(desk.doc.value.data, ['cuts']);
  if (!Array.isArray(cuts)) return;
  const shopUnits = getAtKeys(desk.doc.value.shop?.data, ['units']) ?? desk.job.value.units;
  const jobUnits = desk.job.value.units;
  /** In a shop of another unit a bare figure carries its own. */
  const inShop = (profile: Data): object =>
    jobUnits === shopUnits || !isGroup(profile)
      ? (profile as object)
      : Object.fromEntries(
          Object.entries(profile).map(([key, value]) => [
            key,
            typeof value === 'number' && key !== 'balance' ? `${value} ${jobUnits}` : value,
          ]),
        );
  const profiles = (cuts as readonly Data[]).flatMap((cut, i) =>
    isGroup(cut) && isGroup(cut.profile)
      ? [
          {
            name: String(cut.name ?? `cut ${i + 1}`),
            knife: { ...inShop(cut.profile), ...(cut.head !== undefined && { head: cut.head }) },
          },
        ]
      : [],
  );
  const faults = profiles.flatMap(({ name, knife }) => desk.changeShop(['knives', name], knife as Data));
  desk.notice.value =
    faults.length > 0
      ? { kind: 'fault', text: `That knife could not be kept: ${faults[0]!.message}` }
      : {
          kind: 'note',
          text: `${profiles.length === 1 ? 'One knife is' : `${profiles.length} knives are`} in the shop.`,
        };
}
