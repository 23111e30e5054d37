import { edgeOutline, type ReadJob } from '@fielded/core';
import type { JSX } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { useDesk } from '../../desk/context.ts';
import { applyChanges, type JobChange } from '../../job/changes.ts';
import { type Data, getAt } from '../../job/data.ts';
import { writeLength } from '../../job/write-length.ts';
import { type ShapeDrawing, ShapeRow } from './shape-row.tsx';

const SHAPES = ['rebate', 'bevel', 'cove', 'ovolo', 'ogee'] as const;
type Shape = (typeof SHAPES)[number];

interface Choice extends ShapeDrawing<Shape> {
  readonly changes: readonly JobChange[];
}

/** Shapes to choose from, each drawn with the sizes that the cut has now. */
export function ShapePicker({ index, whose }: { index: number; whose: string }): JSX.Element {
  const desk = useDesk();
  const [drawn, setDrawn] = useState<{ readonly data: Data | null; readonly choices: readonly ShapeDrawing<Shape>[] }>(
    UNDRAWN,
  );
  const { data } = desk.doc.value;
  // After the page is painted, and not while a size is dragged: the small drawings take more than a frame.
  const wanted = desk.moving.value === null && drawn.data !== data;
  useEffect(() => {
    if (wanted) setDrawn({ data, choices: SHAPES.flatMap((shape) => tryShape(data, desk.read, index, shape)) });
  }, [wanted, data]);
  return (
    <ShapeRow
      label={`Shape, ${whose}`}
      name={`shape ${index}`}
      drawings={drawn.choices}
      value={getAt(data, `cuts[${index}].profile.shape`)}
      choose={(shape) => desk.change(tryShape(data, desk.read, index, shape).flatMap(({ changes }) => changes))}
    />
  );
}

const UNDRAWN = {
  data: null,
  choices: SHAPES.map((shape) => ({ value: shape, word: shape, outline: '', width: 1, thickness: 1 })),
};

/** The job with another shape at a cut: with its sizes, or else without land or shoulder or with more reach. None where no such job can be read. */
function tryShape(data: Data, read: (data: Data) => ReadJob, index: number, shape: Shape): Choice[] {
  const at = `cuts[${index}].profile`;
  const before = read(data).job?.cuts[index];
  if (before === undefined) return [];
  const file = getAt(data, 'units') === 'in' ? 'in' : 'mm';
  const write = (mm: number) => writeLength(mm, file, file);
  const { reach, depth } = before;
  const [land, shoulder] = before.profile.shape === 'outline' ? [0, 0] : [before.profile.land, before.profile.shoulder];
  const from: readonly JobChange[] =
    before.profile.shape === 'outline'
      ? [
          [`${at}.path`, undefined],
          [`${at}.reach`, write(reach)],
          [`${at}.depth`, write(depth)],
        ]
      : [];
  const plain: JobChange[] = [...from, [`${at}.shape`, shape]];
  if (shape !== 'ogee') plain.push([`${at}.balance`, undefined]);
  const attempts: JobChange[][] = [
    plain,
    [...plain, [`${at}.land`, undefined]],
    [...plain, [`${at}.land`, undefined], [`${at}.shoulder`, undefined]],
    [...plain, [`${at}.reach`, write(Math.ceil(land + depth - shoulder))]],
  ];
  for (const changes of attempts) {
    const { job } = read(applyChanges(data, changes));
    if (job === null) continue;
    return [
      {
        value: shape,
        word: shape,
        changes,
        outline: edgeOutline(job.panel, [job.cuts[index]!]),
        width: Math.max(...job.cuts.map((cut) => cut.reach)) + 4,
        thickness: job.panel.measured,
      },
    ];
  }
  return [];
}
