import type { FileValue } from '@fielded/core';
import type { Desk } from '../../desk/desk.ts';
import type { JobChange } from '../../job/changes.ts';
import { pathOf } from '../../job/data.ts';
import { findSize } from '../../job/sizes.ts';
import { writeLength } from '../../job/write-length.ts';

/** The changes to the job that an answer of the solver asks for. */
export function changesOf(desk: Desk, writes: readonly FileValue[]): JobChange[] {
  const { units, job, doc, report } = desk;
  return writes.flatMap(({ path, mm }): readonly JobChange[] => {
    const write = (value: number) => writeLength(value, units.value, job.value.units);
    // A depth or a reach is kept where the job keeps it now: with the cut, or in its profile.
    const { size } = findSize(doc.value.data, job.value, report.value, pathOf(path));
    return size?.changes(mm, write) ?? [[pathOf(path), write(mm)]];
  });
}
