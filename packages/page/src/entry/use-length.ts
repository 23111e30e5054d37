import type { Fault, Units } from '@fielded/core';
import { useMemo, useRef } from 'preact/hooks';
import { useDesk } from '../desk/context.ts';
import type { Desk } from '../desk/desk.ts';
import { attempt, fetchPart } from '../desk/fetch-part.ts';
import { takeBack } from '../desk/take-back.ts';
import type { JobChange } from '../job/changes.ts';
import type { Data } from '../job/data.ts';
import type { WrittenSize } from '../job/sizes.ts';
import { writeLength } from '../job/write-length.ts';
import { faultBeside } from '../words/plain-fault.ts';
import { entryText } from './entry-text.ts';
import { readEntry } from './read-entry.ts';
import { buttonStep, nextStep } from './steps.ts';

/** The place of a length that is typed: where the job keeps it and how it is written there. */
export interface LengthPlace {
  /** Where it is kept in the job file. */
  readonly path: string;
  /** The key of what is typed in the field meanwhile; the path unless told. */
  readonly name?: string;
  /** The length now, mm; null where the job does not give it. */
  readonly mm: number | null;
  /** As in `WrittenSize`. */
  readonly changes: WrittenSize['changes'];
  /** Whether the field may be left empty, which takes the line out of the job; a word stands in the empty field. */
  readonly optional?: boolean | string;
  /** What leaving it empty changes instead. */
  readonly emptied?: readonly JobChange[];
}

export interface LengthEntry {
  /** What stands in the field. */
  readonly text: string;
  /** What is wrong with it; '' for nothing. */
  readonly fault: string;
  type(text: string): void;
  /** Call it when the field is left: what can be read becomes the size, what cannot stays with its fault. */
  leave(): void;
  /** Takes back what was typed since the field was entered; false where that is nothing. */
  giveUp(): boolean;
  enter(): void;
  step(way: 1 | -1, fine: boolean): void;
}

let visits = 0;

/** The text of a length's field, what is wrong with it, and what typing does: the job follows every keystroke that can be read. */
export function useLength(place: LengthPlace): LengthEntry {
  const desk = useDesk();
  const visit = useRef({ key: '' });
  const name = place.name ?? place.path;
  const draft = desk.drafts.value[name];
  const shown = desk.units.value;
  const text = draft ?? (place.mm === null ? '' : entryText(place.mm, shown));
  const fault = useFault(desk, place, draft, shown);

  const write = (mm: number) => writeLength(mm, desk.units.value, desk.job.value.units);
  const put = (mm: number, written?: Data) =>
    desk.change(place.changes(mm, write, written), visit.current.key || undefined);
  return {
    text,
    fault,
    enter() {
      visits += 1;
      visit.current = { key: `${name} ${visits}` };
    },
    type(typed) {
      setDraft(desk, name, typed);
      if (typed.trim() === '' && place.optional) {
        desk.change(place.emptied ?? [[place.path, undefined]], visit.current.key);
        return;
      }
      const entry = readEntry(typed, shown, desk.job.value.units);
      if (entry.kind === 'length' && entry.mm >= 0) put(entry.mm, entry.written);
      if (entry.kind === 'sum') workOut(desk, name, typed, put);
    },
    leave() {
      const typed = desk.drafts.peek()[name];
      const { key } = visit.current;
      visit.current = { key: '' };
      if (typed === undefined) return desk.settle();
      const entry = readEntry(typed, shown, desk.job.value.units);
      const keep = () => setDraft(desk, name, undefined);
      // What was read on the way to something that is no size was not meant.
      const drop = () => takeBack(desk, key);
      if (entry.kind === 'sum') return workOut(desk, name, typed, put, keep, drop);
      const fits = (mm: number) => desk.check(place.changes(mm, write)).length === 0;
      const isKept =
        (typed.trim() === '' && place.optional) || (entry.kind === 'length' && entry.mm >= 0 && fits(entry.mm));
      if (!isKept) return void drop();
      keep();
      desk.settle();
    },
    giveUp() {
      setDraft(desk, name, undefined);
      return takeBack(desk, visit.current.key) || draft !== undefined;
    },
    step(way, fine) {
      const typed = readEntry(draft ?? '', shown, desk.job.value.units);
      const from = typed.kind === 'length' ? typed.mm : place.mm;
      if (from === null) return;
      const next = Math.max(0, nextStep(from, buttonStep(shown) / (fine ? 5 : 1), way));
      // On the sheet the length stands as it was when its field opened.
      setDraft(desk, name, place.name === undefined ? undefined : entryText(next, shown));
      put(next);
    },
  };
}

/** What is wrong with what is typed, '' for nothing: it is no length, or the job cannot have it. */
function useFault(desk: Desk, place: LengthPlace, draft: string | undefined, shown: Units): string {
  // Only a field with something typed in it follows every change of the job.
  const data = draft === undefined ? null : desk.doc.value.data;
  const typed = useMemo(() => {
    if (draft === undefined || (draft.trim() === '' && place.optional)) return '';
    const file = desk.job.peek().units;
    const entry = readEntry(draft, shown, file);
    if (entry.kind === 'fault') return entry.message;
    if (entry.kind === 'sum') return '';
    if (entry.mm < 0) return 'A size cannot be negative.';
    const [fault] = desk.check(place.changes(entry.mm, (mm) => writeLength(mm, shown, file), entry.written));
    return fault === undefined ? '' : faultBeside(fault, file);
  }, [draft, shown, place.path, place.optional, data, desk]);
  const sum = desk.sumFaults.value[place.name ?? place.path];
  return typed !== '' || draft === undefined ? typed : (sum ?? '');
}

function setDraft(desk: Desk, path: string, text: string | undefined): void {
  const { [path]: _, ...others } = desk.drafts.peek();
  desk.drafts.value = text === undefined ? others : { ...others, [path]: text };
}

/** Computes a sum, by a parser fetched the first time, and puts it into the job; `kept` is called if the sum still stands in the field and the job could have it, `lost` if it is none or the job cannot. */
function workOut(
  desk: Desk,
  path: string,
  typed: string,
  put: (mm: number) => readonly Fault[],
  kept: () => void = () => {},
  lost: () => void = () => {},
): void {
  void attempt(desk, async () => {
    const { workOutSum } = await fetchPart(() => import('./sums.ts'));
    if (desk.drafts.peek()[path] !== typed) return;
    const sum = workOutSum(typed, desk.units.peek());
    const { [path]: _, ...others } = desk.sumFaults.peek();
    const [fault] = 'mm' in sum && sum.mm >= 0 ? put(sum.mm) : [];
    if ('mm' in sum && sum.mm >= 0 && fault === undefined) {
      desk.sumFaults.value = others;
      kept();
      return;
    }
    const negative = 'That comes to less than 0.';
    const message = 'message' in sum ? sum.message : fault ? faultBeside(fault, desk.job.peek().units) : negative;
    desk.sumFaults.value = { ...others, [path]: message };
    lost();
  });
}
