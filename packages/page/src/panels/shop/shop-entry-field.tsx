import type { JSX } from 'preact';
import { useId, useState } from 'preact/hooks';
import { useDesk } from '../../desk/context.ts';
import type { Desk } from '../../desk/desk.ts';
import { takeBack } from '../../desk/take-back.ts';
import { describe, Field } from '../../entry/field.tsx';
import { SelectField } from '../../entry/select-field.tsx';
import { Unit } from '../../entry/stepper.tsx';
import { type Data, getAtKeys, isGroup, type Keys } from '../../job/data.ts';
import { faultBeside } from '../../words/plain-fault.ts';
import { labelOf, type ShopField } from './shop-fields.ts';

/** One thing known of a head, a machine or a rule, as the shop file has it; left empty, the line goes. */
export function ShopEntryField({ at, field, whose }: { at: Keys; field: ShopField; whose: string }): JSX.Element {
  const { kind } = field;
  if (kind === 'yes') return <YesField at={at} field={field} whose={whose} />;
  if (kind === 'lines') return <LinesField at={at} field={field} whose={whose} />;
  if (typeof kind === 'object') return <WordField at={at} field={field} words={kind} whose={whose} />;
  return <WrittenField at={at} field={field} whose={whose} />;
}

interface FieldProps {
  readonly at: Keys;
  readonly field: ShopField;
  readonly whose: string;
}

function useShopValue({ at, field }: FieldProps): Data | undefined {
  return getAtKeys(useDesk().doc.value.shop?.data, keysOf(at, field));
}

function keysOf(at: Keys, { within, key }: ShopField): Keys {
  return within === undefined ? [...at, key] : [...at, within, key];
}

/** The key that what is typed in a field shares as a step of undo. */
function typingKey({ at, field, whose }: FieldProps): string {
  return `shop ${whose} ${at.join(' ')} ${field.key}`;
}

/** Writes a field into the shop, and with it what it cannot be without; what is wrong with it, '' for nothing. */
function putShop(desk: Desk, { at, field, whose }: FieldProps, value: Data | undefined): string {
  const { within, key, beside } = field;
  const before = within === undefined ? undefined : getAtKeys(desk.doc.value.shop?.data, [...at, within]);
  const [keys, next] =
    within === undefined || beside === undefined
      ? [keysOf(at, field), value]
      : [
          [...at, within],
          value === undefined ? undefined : { ...beside, ...(isGroup(before) && before), [key]: value },
        ];
  const [fault] = desk.changeShop(keys, next, typingKey({ at, field, whose }));
  return fault ? faultBeside(fault, desk.job.value.units) : '';
}

function WrittenField(props: FieldProps): JSX.Element {
  const { field, whose } = props;
  const desk = useDesk();
  const id = useId();
  const value = useShopValue(props);
  const [draft, setDraft] = useState<string | null>(null);
  const [fault, setFault] = useState('');
  const label = labelOf(field, desk.report.value.terms);
  const put = (text: string) => {
    const said = putShop(desk, props, readWritten(text, field));
    setFault(said);
    return said === '';
  };
  return (
    <Field id={id} label={label} fault={fault} {...(field.kind === 'figures' && { layout: 'list' })}>
      <div class={field.kind === 'figure' ? 'line short' : 'line wide'}>
        <input
          id={id}
          type="text"
          autocomplete="off"
          spellcheck={false}
          data-shop={keysOf(props.at, field).join('.')}
          aria-label={`${label}, ${whose}`}
          aria-invalid={fault !== ''}
          aria-describedby={describe(id)}
          placeholder="–"
          value={draft ?? writeShown(value)}
          onFocus={(event) => event.currentTarget.select()}
          onInput={(event) => {
            setDraft(event.currentTarget.value);
            put(event.currentTarget.value);
          }}
          onBlur={(event) => {
            desk.settle();
            if (draft === null || put(event.currentTarget.value)) setDraft(null);
          }}
          onKeyDown={(event) => {
            if (event.key !== 'Escape') return;
            if (takeBack(desk, typingKey(props)) || draft !== null) event.preventDefault();
            setDraft(null);
            setFault('');
          }}
        />
        {field.unit && <Unit of={id}>{unitOf(field, desk.doc.value.shop?.data)}</Unit>}
      </div>
    </Field>
  );
}

/** What stands behind a figure of a shop. */
function unitOf({ unit }: ShopField, shop: Data | undefined): string {
  if (unit === 'length') return String(getAtKeys(shop, ['units']) ?? 'mm');
  return unit === 'currency' ? String(getAtKeys(shop, ['rates', 'currency']) ?? '') : (unit ?? '');
}

function YesField(props: FieldProps): JSX.Element {
  const desk = useDesk();
  const value = useShopValue(props) === true;
  return (
    <label class="yes">
      <input
        type="checkbox"
        aria-label={`${props.field.label}, ${props.whose}`}
        checked={value}
        onChange={(event) =>
          desk.changeShop([...props.at, props.field.key], event.currentTarget.checked ? true : undefined)
        }
      />
      <span>{props.field.label}</span>
    </label>
  );
}

function WordField({ words, ...props }: FieldProps & { words: readonly string[] }): JSX.Element {
  const desk = useDesk();
  const id = useId();
  const value = useShopValue(props);
  return (
    <SelectField
      id={id}
      label={props.field.label}
      name={`${props.field.label}, ${props.whose}`}
      value={String(value ?? words[0])}
      options={words.map((word) => [word, word || 'not known'] as const)}
      choose={(word) => {
        const said = putShop(desk, props, word || undefined);
        if (said !== '') desk.notice.value = { kind: 'fault', text: said };
      }}
    />
  );
}

/** Paragraphs or lines, one to a line. */
function LinesField(props: FieldProps): JSX.Element {
  const { field, whose } = props;
  const desk = useDesk();
  const id = useId();
  const value = useShopValue(props);
  const [fault, setFault] = useState('');
  return (
    <Field id={id} label={field.label} fault={fault} layout="lines">
      <textarea
        id={id}
        rows={3}
        dir="auto"
        aria-label={`${field.label}, ${whose}`}
        aria-invalid={fault !== ''}
        aria-describedby={describe(id)}
        defaultValue={Array.isArray(value) ? value.join('\n') : ''}
        onInput={(event) => {
          const lines = event.currentTarget.value.split('\n').filter((line) => line.trim() !== '');
          setFault(putShop(desk, props, lines.length === 0 ? undefined : lines));
        }}
        onBlur={() => desk.settle()}
      />
    </Field>
  );
}

/** A figure as a number, or as written where it has a unit; several are parted by commas followed by a blank, semicolons or blanks. */
function readWritten(text: string, { kind }: ShopField): Data | undefined {
  if (text.trim() === '') return undefined;
  if (kind === 'text') return text.trim();
  if (kind === 'figure') return asNumber(text);
  return text
    .split(/[;,]\s+|;|\s{2,}|(?<=\d),(?=\d{2,})|(?<=\d) (?=-?\d+(?:[;,\s]|$))/)
    .filter((part) => part.trim() !== '')
    .map(asNumber);
}

function asNumber(text: string): Data {
  const plain = text.trim().replace(',', '.');
  return /^-?\d*\.?\d+$/.test(plain) ? Number(plain) : text.trim();
}

function writeShown(value: Data | undefined): string {
  if (value === undefined || value === null) return '';
  return Array.isArray(value) ? value.join(', ') : String(value);
}
