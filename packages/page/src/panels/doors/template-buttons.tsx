import { type DoorReport, formatLength } from '@fielded/core';
import { useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useDesk } from '../../desk/context.ts';
import type { Desk } from '../../desk/desk.ts';
import { attempt, fetchPart } from '../../desk/fetch-part.ts';
import { fileName, handOver } from '../../files/hand-over.ts';
import { keepTogether } from '../../words/keep-together.ts';
import { Choice } from '../sizes/choice.tsx';

type Part = 'panel' | 'rail' | 'field';
const PARTS: readonly (readonly [Part, string])[] = [
  ['panel', 'panel'],
  ['rail', 'top rail'],
  ['field', 'field'],
];

/** The outline of a shaped door's part as a file: on sheets to print, or as lines and arcs for a machine. */
export function TemplateButtons({ door, index }: { door: DoorReport; index: number }): JSX.Element {
  const desk = useDesk();
  const part = useSignal<Part>('panel');
  const units = desk.units.value;
  const own = (door.head?.bearings ?? []).map(
    ({ cut, diameter }) => `${keepTogether(formatLength(diameter, units))} for the ${cut}`,
  );
  return (
    <>
      <Choice
        label="Of the"
        name={`template ${index}`}
        value={part.value}
        options={PARTS}
        choose={(value) => {
          part.value = value as Part;
        }}
      />
      {own.length > 0 && <p class="hint">The panel's own edge runs on a bearing of {own.join(', ')}.</p>}
      <div class="order">
        {(['pdf', 'dxf'] as const).map((format) => (
          <button
            key={format}
            type="button"
            class="quiet"
            onClick={() => saveTemplate(desk, index, part.value, format)}
          >
            Save as {format.toUpperCase()}
          </button>
        ))}
      </div>
    </>
  );
}

async function saveTemplate(desk: Desk, index: number, part: Part, format: 'pdf' | 'dxf'): Promise<void> {
  await attempt(desk, async () => {
    const { templateFile } = await fetchPart(() => import('../../files/template-file.ts'));
    const job = { ...desk.job.value, units: desk.units.value };
    const file = await templateFile(job, index, part, format);
    if (file === null) {
      desk.notice.value = { kind: 'fault', text: `Nothing is left of the ${part}: there is no outline to save.` };
      return;
    }
    const name = fileName(`${job.title} ${job.doors[index]?.name ?? ''} ${part}`, format);
    handOver(name, file, format === 'pdf' ? 'application/pdf' : 'image/vnd.dxf');
    desk.notice.value = { kind: 'note', text: `Saved as ${name}.` };
  });
}
