import type { Cut } from '@fielded/core';
import type { JSX } from 'preact';
import { useDesk } from '../../desk/context.ts';
import { attempt, fetchPart } from '../../desk/fetch-part.ts';
import { Later } from '../../desk/later.tsx';
import { Fold } from '../../entry/fold.tsx';
import { getAt } from '../../job/data.ts';
import { writeAt } from '../../job/sizes.ts';
import { CutSizes } from './cut-sizes.tsx';
import { Running } from './running.tsx';
import { LengthField, SizeField } from './size-field.tsx';

/** Every size, in four groups that follow the making. */
export function Sizes(): JSX.Element {
  return (
    <div class="sizes">
      <Group name="Stock and frame">
        <StockSizes />
      </Group>
      <Group name="Front">
        <SideSizes side="front" />
      </Group>
      <Group name="Back">
        <SideSizes side="back" />
      </Group>
      <Group name="Running">
        <Later load={loadRunning} />
      </Group>
    </div>
  );
}

/** What is folded away is fetched when it is unfolded. */
const loadSticking = () => import('./sticking-sizes.tsx').then(({ StickingSizes }) => StickingSizes);
const loadWood = () => import('./wood-sizes.tsx').then(({ WoodSizes }) => WoodSizes);
/** Shown once the rest stands: it is the longest group, and below the screen. */
const loadRunning = async () => Running;

function Group({ name, children }: { name: string; children: JSX.Element }): JSX.Element {
  const id = `group-${name.replaceAll(' ', '-').toLowerCase()}`;
  return (
    <section class="group" aria-labelledby={id}>
      <h2 id={id}>{name}</h2>
      {children}
    </section>
  );
}

function StockSizes(): JSX.Element {
  const desk = useDesk();
  const { panel, frame } = desk.job.value;
  const measured = getAt(desk.doc.value.data, 'panel.measured') === undefined ? null : panel.measured;
  return (
    <>
      <SizeField of="panel.thickness" label="Stock, planed" mm={panel.thickness} />
      <LengthField
        label="Stock, as measured"
        place={{
          path: 'panel.measured',
          mm: measured,
          changes: writeAt('panel.measured'),
          optional: true,
        }}
      />
      <SizeField of="frame.thickness" label="Frame, thickness" mm={frame.thickness} />
      <SizeField of="frame.groove.width" label="Groove, width" mm={frame.groove.width} />
      <SizeField of="frame.groove.depth" label="Groove, depth" mm={frame.groove.depth} />
      <SizeField of="frame.groove.setback" label="Groove, setback" mm={frame.groove.setback} />
      <SizeField of="frame.swellGap" label="Swell gap" mm={frame.swellGap} />
      <Fold name="Sticking on the frame">{() => <Later load={loadSticking} />}</Fold>
      <Fold name="Wood and fit">{() => <Later load={loadWood} />}</Fold>
    </>
  );
}

function SideSizes({ side }: { side: Cut['side'] }): JSX.Element {
  const desk = useDesk();
  const indices = desk.job.value.cuts.flatMap((cut, index) => (cut.side === side ? [index] : []));
  return (
    <>
      {indices.map((index) => (
        <CutSizes key={index} index={index} several={indices.length > 1} />
      ))}
      {indices.length === 0 && (
        <p class="empty">{side === 'front' ? 'Nothing is cut on the front.' : 'The back stays as it is.'}</p>
      )}
      <AddCut side={side} />
    </>
  );
}

function AddCut({ side }: { side: Cut['side'] }): JSX.Element {
  const desk = useDesk();
  const add = () =>
    attempt(desk, async () => {
      const { addCut } = await fetchPart(() => import('./add-cut.ts'));
      addCut(desk, side);
    });
  return (
    <button type="button" class="quiet" onClick={add}>
      Add a cut on the {side}
    </button>
  );
}
