import type { Units } from '@fielded/core';
import {
  Component,
  type JSX,
  type TargetedFocusEvent,
  type TargetedInputEvent,
  type TargetedKeyboardEvent,
} from 'preact';
import { useEffect, useId, useRef, useState } from 'preact/hooks';
import { useDesk } from '../../desk/context.ts';
import { describe, Field } from '../../entry/field.tsx';
import { KeysAtHand } from '../../entry/keys-at-hand.tsx';
import { Stepper, Unit } from '../../entry/stepper.tsx';
import { type LengthEntry, type LengthPlace, useLength } from '../../entry/use-length.ts';
import { findSize } from '../../job/sizes.ts';

interface SizeFieldProps {
  readonly of: string;
  readonly label: string;
  /** What it is a size of, where several sizes have the same label. */
  readonly whose?: string;
  readonly mm: number;
}

/** The field of a size of the job, by its path on the drawings; nothing where it cannot be typed over. */
export function SizeField(props: SizeFieldProps): JSX.Element | null {
  const desk = useDesk();
  const { size } = findSize(desk.doc.peek().data, desk.job.peek(), desk.report.peek(), props.of);
  return size && <KnownSizeField {...props} path={size.path} />;
}

/** Rendered again only when its own size has changed: a drag moves one of many. */
class KnownSizeField extends Component<SizeFieldProps & { readonly path: string }> {
  override shouldComponentUpdate(next: SizeFieldProps & { readonly path: string }): boolean {
    return (['of', 'label', 'whose', 'mm', 'path'] as const).some((key) => next[key] !== this.props[key]);
  }

  override render({ of, label, whose, mm, path }: SizeFieldProps & { readonly path: string }): JSX.Element {
    return <WritableSizeField of={of} label={label} {...(whose !== undefined && { whose })} mm={mm} path={path} />;
  }
}

function WritableSizeField({ of, label, whose, mm, path }: SizeFieldProps & { readonly path: string }): JSX.Element {
  const desk = useDesk();
  const changes: LengthPlace['changes'] = (...given) =>
    findSize(desk.doc.peek().data, desk.job.peek(), desk.report.peek(), of).size?.changes(...given) ?? [];
  return <LengthField label={label} {...(whose !== undefined && { whose })} place={{ path, mm, changes }} />;
}

/** A length: its name, the figure over its line, and a step either way. */
export function LengthField({
  label,
  whose,
  place,
  hint,
}: {
  label: string;
  whose?: string;
  place: LengthPlace;
  hint?: string;
}): JSX.Element {
  const name = whose === undefined ? label : `${label}, ${whose}`;
  const desk = useDesk();
  const id = useId();
  const field = useRef<HTMLInputElement>(null);
  const [inside, setInside] = useState(false);
  const entry = useLength(place);
  const unit = desk.units.value;
  // On a small screen: bring what is wrong into sight above the keyboard.
  useEffect(() => {
    if (inside && entry.fault !== '') field.current?.closest('.field')?.scrollIntoView({ block: 'nearest' });
  }, [inside, entry.fault]);
  const typing = typingIn(entry, unit, setInside);
  const canStep = place.mm !== null;
  return (
    <Field id={id} label={label} fault={entry.fault} hint={hint} below={inside && <KeysAtHand field={field} />}>
      <Stepper
        name={name}
        canStep={{ less: canStep, more: canStep }}
        step={(way, event) => entry.step(way, event.shiftKey)}
      >
        <input
          {...typing}
          id={id}
          ref={field}
          data-path={place.path}
          aria-label={whose === undefined ? undefined : name}
          placeholder={typeof place.optional === 'string' ? place.optional : place.optional ? '–' : ''}
          aria-describedby={describe(id)}
        />
        <Unit of={id}>{unit}</Unit>
      </Stepper>
    </Field>
  );
}

/** How a length is typed: what its input shows, and what is done in it. */
function typingIn(entry: LengthEntry, units: Units, setInside: (inside: boolean) => void) {
  return {
    type: 'text',
    inputMode: units === 'mm' ? 'decimal' : 'text',
    autocomplete: 'off',
    spellcheck: false,
    enterkeyhint: 'done',
    'aria-invalid': entry.fault !== '',
    value: entry.text,
    onFocus(event: TargetedFocusEvent<HTMLInputElement>) {
      setInside(true);
      entry.enter();
      event.currentTarget.select();
    },
    onInput: (event: TargetedInputEvent<HTMLInputElement>) => entry.type(event.currentTarget.value),
    onBlur() {
      setInside(false);
      entry.leave();
    },
    onKeyDown(event: TargetedKeyboardEvent<HTMLInputElement>) {
      if (event.key === 'ArrowUp' || event.key === 'ArrowDown') {
        event.preventDefault();
        entry.step(event.key === 'ArrowUp' ? 1 : -1, event.shiftKey);
      }
      if (event.key === 'Escape' && entry.giveUp()) event.preventDefault();
    },
  } as const;
}
