import type { Job } from '@fielded/core';
import type { JSX } from 'preact';
import { useDesk } from '../../desk/context.ts';
import { getAt } from '../../job/data.ts';
import { writeAt } from '../../job/sizes.ts';
import { LengthField } from '../sizes/size-field.tsx';

type Door = NonNullable<Job['doors']>[number];

/** A length of a door; `optional` shows it only where the job gives it. */
export function DoorLength({
  door,
  at,
  of,
  label,
  mm,
  optional = false,
}: {
  door: Door;
  at: string;
  of: string;
  label: string;
  mm: number | undefined;
  optional?: boolean;
}): JSX.Element {
  const { data } = useDesk().doc.value;
  const path = `${at}.${of}`;
  const shown = getAt(data, path) === undefined && optional ? null : (mm ?? null);
  return <LengthField label={label} whose={door.name} place={{ path, mm: shown, changes: writeAt(path), optional }} />;
}
