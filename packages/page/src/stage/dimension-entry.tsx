import type { JSX } from 'preact';
import { useLayoutEffect, useMemo, useRef } from 'preact/hooks';
import { useDesk } from '../desk/context.ts';
import { Later } from '../desk/later.tsx';
import { KeysAtHand } from '../entry/keys-at-hand.tsx';
import { Unit } from '../entry/stepper.tsx';
import { type LengthEntry, type LengthPlace, useLength } from '../entry/use-length.ts';
import { findSize } from '../job/sizes.ts';
import { UNITS, useTold } from '../words/aloud.ts';
import { bringUpSheet, figureSpot, placeOver } from './over-figure.ts';
import { isSmallScreen } from './small-screen.ts';
import type { Spot } from './view-scene.ts';

/** A dimension that was tapped: what it shows, and where it stands on the sheet, pixels. */
export interface OpenDimension {
  readonly of: string;
  readonly mm: number;
  readonly label: string;
  readonly x: number;
  readonly y: number;
}

/** The dimension as a field of its own, where it stands; or, for one that follows from others, the words that say so. */
export function DimensionEntry({
  open,
  still,
  close,
}: {
  open: OpenDimension;
  /** Whether the drawing keeps its scale and place meanwhile. */
  still: boolean;
  close: () => void;
}): JSX.Element {
  const desk = useDesk();
  const found = findSize(desk.doc.value.data, desk.job.value, desk.report.value, open.of);
  return found.size === null ? (
    <Later load={loadFixedNote} open={open} close={close} words={found.fixed} />
  ) : (
    <SizeEntry open={open} still={still} close={close} path={found.size.path} changes={found.size.changes} />
  );
}

const loadFixedNote = () => import('./fixed-note.tsx').then(({ FixedNote }) => FixedNote);

function SizeEntry({
  open,
  still,
  close,
  path,
  changes,
}: {
  open: OpenDimension;
  still: boolean;
  close: () => void;
  path: string;
  changes: LengthPlace['changes'];
}): JSX.Element {
  const desk = useDesk();
  // The length as it was when the field opened: the drawing moves on under it.
  const entry = useLength({ path, name: `${path} on the sheet`, mm: open.mm, changes });
  const { field, docked, spot } = useOpenedField(entry, still, open);
  const { leave, listen } = useLeaving(entry, open, close);
  useTold(entry.fault);
  return (
    <div
      class={docked ? 'dimension-entry docked' : 'dimension-entry'}
      ref={(element) => {
        if (!docked) placeOver(element, spot.current);
      }}
    >
      <span class="name" aria-hidden="true">
        {open.label}
      </span>
      <input
        ref={field}
        type="text"
        inputMode="text"
        autocomplete="off"
        spellcheck={false}
        enterkeyhint="done"
        data-of={docked ? (open.of.startsWith('doors') ? open.of : path) : undefined}
        aria-label={`${open.label}, ${UNITS[desk.units.value]}`}
        aria-invalid={entry.fault !== ''}
        aria-describedby="dimension-fault"
        value={entry.text}
        onInput={(event) => entry.type(event.currentTarget.value)}
        onKeyDown={listen}
        onBlur={leave}
      />
      <Unit of="dimension">{desk.units.value}</Unit>
      {entry.fault !== '' && (
        <p class="fault" id="dimension-fault">
          {entry.fault}
        </p>
      )}
      <KeysAtHand field={field} />
    </div>
  );
}

/** How the field is left: with what stands in it, or without; and the keys that do so, or step. */
function useLeaving(entry: LengthEntry, { label }: OpenDimension, close: () => void) {
  const desk = useDesk();
  const giveUp = () => {
    entry.giveUp();
    close();
  };
  const leave = () => {
    const { fault, text } = entry;
    if (fault === '') {
      entry.leave();
      close();
      return;
    }
    giveUp();
    // What is refused is said where it can still be read once the field is gone.
    desk.notice.value = { kind: 'fault', text: `${label}: ${text} was not taken. ${fault}` };
  };
  const listen = (event: KeyboardEvent) => {
    const { key } = event;
    if (key === 'Enter' && entry.fault === '') leave();
    if (key !== 'ArrowUp' && key !== 'ArrowDown' && key !== 'Escape') return;
    event.preventDefault();
    if (key === 'Escape') giveUp();
    else entry.step(key === 'ArrowUp' ? 1 : -1, event.shiftKey);
  };
  return { leave, listen };
}

/**
 * Takes the focus into a field that has just opened, and holds the drawing still meanwhile if `still`: of its dimensions only the
 * one in hand stays, and the field stands on its figure, at `spot`. On a small screen the field is docked above the keyboard, and
 * the drawing has the rest.
 */
function useOpenedField(entry: LengthEntry, still: boolean, open: OpenDimension) {
  const desk = useDesk();
  const spot = useRef<Spot>(open);
  const field = useRef<HTMLInputElement>(null);
  const docked = useMemo(isSmallScreen, []);
  // Before anything is painted: what is typed next belongs here.
  useLayoutEffect(() => {
    if (!docked && still) {
      desk.moving.value = [open.of];
      const box = field.current!.parentElement!;
      spot.current = figureSpot(box.parentElement!, open.of) ?? open;
      placeOver(box, spot.current);
    }
    entry.enter();
    field.current?.focus({ preventScroll: true });
    field.current?.select();
    const goBack = docked ? bringUpSheet(field.current) : null;
    return () => {
      desk.moving.value = null;
      goBack?.();
    };
  }, []);
  return { field, docked, spot };
}
