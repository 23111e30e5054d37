import { answerPlan, type Planned, type Problem, prepareJob, sayStep, stateRun } from '@fielded/core';
import { useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useMemo, useRef } from 'preact/hooks';
import { useDesk } from '../../desk/context.ts';
import type { Keeper } from '../../desk/keeper.ts';
import { SelectField } from '../../entry/select-field.tsx';
import type { Places } from '../../stage/places.ts';
import { Statements } from '../../stage/statements.tsx';
import { adoptStyles } from '../../style/adopt-styles.ts';
import partsStyles from '../../style/parts.css?inline';
import setUpStyles from '../../style/set-up.css?inline';
import { keepTogether } from '../../words/keep-together.ts';
import { MachineSheet, sheetId } from './machine-sheet.tsx';
import { PlanFiles } from './plan-files.tsx';
import { tickedSteps, tickStep } from './ticked-steps.ts';

adoptStyles(partsStyles);
adoptStyles(setUpStyles);

/** How the job is run: the order of work to tick off, and the sheet of each set-up, large, to read at the machine. */
export function SetUpPanel({ keeper, places }: { keeper: Keeper; places: Places }): JSX.Element {
  const desk = useDesk();
  const units = desk.units.value;
  const planned = useMemo(() => answerPlan(prepareJob({ ...desk.job.value, units })), [desk.job.value, units]);
  const { shop } = desk.job.value;
  const equipped = [shop?.heads, shop?.machines].every((group) => Object.keys(group ?? {}).length > 0);
  return (
    <section class="set-up" aria-labelledby="set-up-name">
      <div class="work">
        <h2 id="set-up-name">{planned === undefined ? 'Set-up' : sayCount(planned.plan.setUpCount)}</h2>
        {planned === undefined && !equipped && <NotEquipped places={places} />}
        {planned !== undefined && <Cautions planned={planned} />}
        {equipped && <HeadChoices key={keeper.jobId()} />}
        {planned !== undefined && <Steps key={`steps ${keeper.jobId()}`} id={keeper.jobId()} planned={planned} />}
        {planned !== undefined && planned.plan.setUpCount > 0 && <PlanFiles planned={planned} />}
      </div>
      {planned !== undefined && (
        <div class="machine-sheets">
          {planned.plan.setups.map(({ cut }, index) => (
            <MachineSheet key={`${cut} ${index}`} plan={planned.plan} index={index} />
          ))}
        </div>
      )}
    </section>
  );
}

/** Every error of the job, those of its plan among them, each once: a joint that does not fit is not set up. */
function listErrors(ofJob: readonly Problem[], ofPlan: readonly Problem[]): Problem[] {
  const errors = [...ofJob, ...ofPlan].filter(({ severity }) => severity === 'error');
  return [...new Map(errors.map((error) => [`${error.code} ${error.at}`, error])).values()];
}

/** What goes before every sheet, whether the joint fits and can be run, and every error. */
function Cautions({ planned }: { planned: Planned }): JSX.Element {
  const desk = useDesk();
  return (
    <>
      <Statements report={desk.report.value} run={stateRun(desk.report.value)} />
      <p class="hint">
        The marks on the tool, the machine's manual, local rules and trained practice go before this sheet. Guard the
        cutter; turn the head by hand through a dry run with the machine switched off.
      </p>
      {listErrors(desk.problems.value, planned.problems).map(({ code, at, message }) => (
        <p key={`${code} ${at}`} class="fault">
          {keepTogether(message)}
        </p>
      ))}
    </>
  );
}

/** What the job comes to at the machines. */
function sayCount(count: number): string {
  if (count === 0) return 'No set-up yet';
  return count === 1 ? 'One set-up, then the glue' : `${count} set-ups, then the glue`;
}

/** What the shop lacks for a plan, and the way to give it. */
function NotEquipped({ places }: { places: Places }): JSX.Element {
  const heads = Object.keys(useDesk().job.value.shop?.heads ?? {}).length;
  const lacks =
    heads === 0
      ? 'No head is in the shop yet. Add the heads you have, with what is marked on them.'
      : 'No machine is in the shop yet. Add it with its speeds, seat and table hole.';
  return (
    <>
      <p>{lacks}</p>
      <button
        type="button"
        class="main"
        onClick={() => {
          places.place.value = 'shop';
        }}
      >
        Go to the shop
      </button>
    </>
  );
}

/** Which head makes each cut that names none yet. One that is chosen here can be chosen anew: keys go through the heads one by one. */
function HeadChoices(): JSX.Element | null {
  const desk = useDesk();
  const { shop, cuts } = desk.job.value;
  const heads = Object.keys(shop?.heads ?? {});
  const asked = useRef(new Set<number>());
  for (const [index, { head }] of cuts.entries()) if (head === undefined) asked.current.add(index);
  const choices = cuts.flatMap((cut, index) => (asked.current.has(index) ? [{ cut, index }] : []));
  if (choices.length === 0) return null;
  return (
    <div class="head-choices">
      <p>Say which head makes these cuts:</p>
      {choices.map(({ cut: { name, head }, index }) => (
        <SelectField
          key={index}
          id={`head-of-${index}`}
          label={name}
          name={`${name}, its head`}
          value={head ?? ''}
          prompt="choose a head"
          options={heads.map((each) => [each, each] as const)}
          choose={(chosen) => desk.change([[`cuts[${index}].head`, chosen]], `head of ${index}`)}
        />
      ))}
    </div>
  );
}

/** The order of work; what is done is ticked off, and stays so after a reload. */
function Steps({ id, planned: { plan } }: { id: string; planned: Planned }): JSX.Element {
  const desk = useDesk();
  const { units, terms } = desk.report.value;
  const steps = plan.steps.map((step, index) => ({
    ...step,
    words: sayStep(step, plan, { units, terms }),
    // A tick stays where the same step is said in another unit.
    key: `${index} ${sayStep(step, plan, { units: 'mm', terms })}`,
  }));
  const done = useSignal(tickedSteps(id));
  return (
    <ol class="steps" aria-label="Order of work">
      {steps.map(({ kind, setUp, words, key }, index) => (
        <li key={key}>
          <label class="yes">
            <input
              type="checkbox"
              checked={done.value.has(key)}
              onChange={(event) => {
                done.value = tickStep(id, key, event.currentTarget.checked);
              }}
            />
            <span>
              {keepTogether(words)}
              <span class="unseen">
                {' '}
                Step {index + 1} of {steps.length}.
              </span>
            </span>
          </label>
          {kind === 'set-up' && setUp !== null && (
            <button type="button" class="quiet" onClick={() => goToSheet(setUp)}>
              Sheet {setUp + 1}
            </button>
          )}
        </li>
      ))}
    </ol>
  );
}

/** Brings the sheet of a set-up to the top of the screen. */
function goToSheet(index: number): void {
  const sheet = document.getElementById(sheetId(index));
  sheet?.scrollIntoView({ block: 'start', behavior: 'instant' });
  sheet?.focus({ preventScroll: true });
}
