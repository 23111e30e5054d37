import type { Cut } from '@fielded/core';
import type { JSX } from 'preact';
import { useDesk } from '../../desk/context.ts';
import { Later } from '../../desk/later.tsx';
import { Fold } from '../../entry/fold.tsx';
import { type Data, getAt, isGroup } from '../../job/data.ts';
import { Choice, TextField } from './choice.tsx';
import { NumberField } from './number-field.tsx';

/** How each cut is run, in running order; then how settings spread, and the seasons. */
export function Running(): JSX.Element {
  const desk = useDesk();
  return (
    <>
      <ol class="running">
        {desk.job.value.cuts.map((cut, index) => (
          <CutRun key={index} cut={cut} index={index} />
        ))}
      </ol>
      <Fold name="Spread of stock and settings">{() => <Later load={loadSpread} />}</Fold>
      <Fold name="Seasons">{() => <Later load={loadSeasons} />}</Fold>
    </>
  );
}

const loadSpread = () => import('./spread-sizes.tsx').then(({ SpreadSizes }) => SpreadSizes);
const loadSeasons = () => import('./season-sizes.tsx').then(({ SeasonSizes }) => SeasonSizes);

function CutRun({ cut, index }: { cut: Cut; index: number }): JSX.Element {
  const desk = useDesk();
  const at = `cuts[${index}]`;
  const degrees = (cut.tilt * 180) / Math.PI;
  const presented = cut.tilt === 0 ? 'flat' : Math.abs(degrees - 90) < 1e-9 ? 'on-edge' : 'tilted';
  const heads = Object.keys(desk.job.value.shop?.heads ?? {});
  const present = (value: string) => {
    if (value === 'on-edge')
      desk.change([
        [`${at}.presented`, 'on-edge'],
        [`${at}.run`, undefined],
      ]);
    else desk.change([[`${at}.presented`, value === 'flat' ? undefined : 15]]);
  };
  return (
    <li>
      <fieldset>
        <legend class="unseen">{cut.name}</legend>
        <TextField path={`${at}.name`} label={`Cut ${index + 1}`} value={cut.name} />
        <Choice
          label="Panel held"
          name={`presented ${index}`}
          value={presented}
          options={[
            ['flat', 'flat'],
            ['on-edge', 'on edge'],
            ['tilted', 'tilted'],
          ]}
          choose={present}
        />
        {presented === 'tilted' && (
          <NumberField path={`${at}.presented`} label="Spindle tilt" value={degrees} step={5} digits={1} unit="°" />
        )}
        {presented !== 'on-edge' && (
          <Choice
            label="Cutter"
            name={`run ${index}`}
            value={cut.run}
            options={[
              ['under', 'below the stock'],
              ['over', 'above it'],
            ]}
            choose={(value) => desk.change([[`${at}.run`, value]])}
          />
        )}
        {heads.length > 0 && (
          <Choice
            label="Head"
            name={`head ${index}`}
            value={cut.head ?? ''}
            options={heads.map((head) => [head, head] as const)}
            choose={(value) => desk.change([[`${at}.head`, value]])}
          />
        )}
        <RunOrder index={index} />
      </fieldset>
    </li>
  );
}

function RunOrder({ index }: { index: number }): JSX.Element {
  const desk = useDesk();
  const cuts = getAt(desk.doc.value.data, 'cuts') as readonly Data[];
  const swap = (other: number) => {
    const next = [...cuts];
    [next[index], next[other]] = [next[other]!, next[index]!];
    desk.change([['cuts', next]]);
  };
  const name = isGroup(cuts[index]) ? String(cuts[index].name ?? `cut ${index + 1}`) : '';
  return (
    <div class="order">
      <button
        type="button"
        class="quiet"
        aria-label={`Move up: ${name}`}
        aria-disabled={index === 0}
        onClick={() => index > 0 && swap(index - 1)}
      >
        Move up
      </button>
      <button
        type="button"
        class="quiet"
        aria-label={`Remove: ${name}`}
        aria-disabled={cuts.length === 1}
        onClick={() => {
          if (cuts.length === 1) return;
          desk.change([[`cuts[${index}]`, undefined]]);
          desk.notice.value = { kind: 'note', text: `${name} is removed. Undo brings it back.` };
        }}
      >
        Remove this cut
      </button>
    </div>
  );
}
