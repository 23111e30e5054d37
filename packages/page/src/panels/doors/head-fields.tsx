import { formatLength, type Job } from '@fielded/core';
import type { JSX } from 'preact';
import { useDesk } from '../../desk/context.ts';
import { Fold } from '../../entry/fold.tsx';
import { getAt } from '../../job/data.ts';
import { keepTogether } from '../../words/keep-together.ts';
import { plainFault } from '../../words/plain-fault.ts';
import { Choice, TextField } from '../sizes/choice.tsx';
import { headChanges, isPointed } from './door-changes.ts';
import { DoorLength } from './door-length.tsx';
import { TemplateButtons } from './template-buttons.tsx';

type Door = NonNullable<Job['doors']>[number];

const SHAPES = [
  ['none', 'straight'],
  ['arch', 'arch'],
  ['cathedral', 'cathedral'],
  ['pointed', 'pointed'],
  ['outline', 'own outline'],
] as const;

/** The shape of the door's head, its sizes as the rail shows them, and the templates for it. */
export function HeadFields({ door, at, index }: { door: Door; at: string; index: number }): JSX.Element {
  const desk = useDesk();
  const { head } = door;
  const reported = desk.report.value.doors?.[index];
  if (head === undefined && (door.across > 1 || door.grain === 'across'))
    return <p class="hint">A shaped head needs one panel across the top, its grain upright.</p>;
  const path = getAt(desk.doc.value.data, `${at}.head.path`);
  const shown = isPointed(path) ? 'pointed' : (head?.shape ?? 'none');
  const choose = (shape: string) => {
    const changes = headChanges(desk, door, at, shape, reported?.opening.width ?? door.width - 2 * door.stile);
    const [fault] = desk.change(changes);
    if (fault) desk.notice.value = { kind: 'fault', text: plainFault(fault, desk.job.value.units) };
  };
  const size = (of: string, label: string, mm: number) => (
    <DoorLength key={of} door={door} at={at} of={of} label={label} mm={mm} />
  );
  return (
    <>
      <Choice label="Head" name={`head ${index}`} value={shown} options={SHAPES} choose={choose} />
      {head !== undefined && head.shape !== 'outline' && size('head.rise', 'Rise', head.rise)}
      {head?.shape === 'cathedral' && size('head.crown', 'Crown, radius', head.crown)}
      {head?.shape === 'cathedral' && size('head.ears', 'Ears, radius', head.ears)}
      {head?.shape === 'cathedral' && reported?.head?.leastConcave != null && (
        <p class="hint">
          The cutters follow ears of {keepTogether(formatLength(reported.head.leastConcave, desk.units.value))} or more.
        </p>
      )}
      {head?.shape === 'outline' && (
        <TextField
          path={`${at}.head.path`}
          label="Outline"
          value={String(path ?? '')}
          hint="SVG path data over the opening, from its left side to its right."
        />
      )}
      {reported?.head && (
        <Fold name="Templates at full size">{() => <TemplateButtons door={reported} index={index} />}</Fold>
      )}
    </>
  );
}
