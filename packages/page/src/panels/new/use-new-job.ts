import { type Signal, useSignal } from '@preact/signals';
import { useMemo, useRef } from 'preact/hooks';
import { useDesk } from '../../desk/context.ts';
import { type Begun, beginJob, type StartShape } from '../../job/new-job.ts';
import { drawShapes } from './begun-shapes.ts';
import { askFor, inOtherUnits, type LengthName, readLengths, usualTexts } from './new-lengths.ts';

/** What is typed and chosen for a new job, and the job that comes of it. */
export interface NewJobEntry {
  readonly title: Signal<string>;
  readonly front: Signal<StartShape>;
  readonly back: Signal<StartShape | 'none'>;
  /** What stands in the fields of the lengths, and what is wrong there. */
  readonly texts: Readonly<Record<LengthName, string>>;
  readonly faults: Readonly<Partial<Record<LengthName, string>>>;
  type(name: LengthName, text: string): void;
  /** The title, or what a job without one is called. */
  readonly named: string;
  /** The job as it would be begun, or why it cannot; null while a length cannot be read. */
  readonly begun: Begun | null;
  /** The shapes to choose from for front and back, in the sizes asked for. */
  readonly drawings: ReturnType<typeof drawShapes>;
}

/** Keeps what is typed for a new job. Change the unit that lengths are shown in, and the lengths follow. */
export function useNewJob(): NewJobEntry {
  const units = useDesk().units.value;
  const title = useSignal('');
  const front = useSignal<StartShape>('ogee');
  const back = useSignal<StartShape | 'none'>('cove');
  const typed = useSignal({ units, texts: usualTexts(units) });
  const texts = useMemo(() => inOtherUnits(typed.value.texts, typed.value.units, units), [typed.value, units]);
  const { lengths, faults } = useMemo(() => readLengths(texts, units), [texts, units]);
  const named = title.value.trim() || 'New job';
  const asked = useMemo(
    () => lengths && askFor(lengths, named, units, front.value, back.value),
    [lengths, named, units, front.value, back.value],
  );
  const begun = useMemo(() => asked && beginJob(asked), [asked]);
  const drawn = useRef(asked);
  // While a length is half typed, or no such job can be made, the shapes stay as they were.
  if (begun !== null && 'data' in begun) drawn.current = asked;
  const drawings = useMemo(() => drawShapes(drawn.current, units), [drawn.current, units]);
  const type = (name: LengthName, text: string) => {
    typed.value = { units, texts: { ...texts, [name]: text } };
  };
  return { title, front, back, texts, faults, type, named, begun, drawings };
}
