import type * as v from 'valibot';
import type { Said } from '../problem/problem.ts';
import { codeOfFault, type FaultSentence, type ToldFault, tellFault, toldKey, toldPart } from '../problem/say-fault.ts';
import { FIGURE_ISSUE, type FigureFault, type FigureFaultCode } from './figure-schema.ts';
import { kindOf } from './figures.ts';
import { MOST_FAULTS } from './limits.ts';
import { findNearest } from './nearest.ts';
import { findPlace } from './place.ts';
import { joinPath, type TextFault, type Tree } from './tree.ts';

type Issue = v.BaseIssue<unknown>;

/** The schema's issues in a maker's words, each with its place in the text; the first `MOST_FAULTS` of them. */
export function explainIssues(issues: readonly Issue[], tree: Tree): TextFault[] {
  return issues.slice(0, MOST_FAULTS).flatMap((issue) => explainIssue(issue, tree, ''));
}

function explainIssue(issue: Issue, tree: Tree, base: string): TextFault[] {
  const keys = (issue.path ?? []).map((item) => item.key as string | number);
  const at = keys.reduce<string>(joinPath, base);
  const inside = issue.type === 'union' ? pickBranch(issue) : [];
  if (inside.length > 0) return inside.flatMap((one) => explainIssue(one, tree, at));
  const told = explain(issue, at, tree);
  return [{ at, ...findPlace(tree, at, codeOfFault(told.sentence)), ...told }];
}

/** Of a figure that may also be a group of keys, the issues of the one that was written. */
function pickBranch(issue: Issue): readonly Issue[] {
  const isGroup = typeof issue.input === 'object' && issue.input !== null && !Array.isArray(issue.input);
  return (issue.issues ?? []).filter((one) => (one.path !== undefined || one.type.startsWith('object')) === isGroup);
}

/** The most characters of a key that are shown. */
const LONGEST_KEY = 40;

function explain(issue: Issue, at: string, tree: Tree): ToldFault {
  const { type, expected, requirement, input } = issue;
  if (type === 'never') return explainUnknownKey(issue, at, requirement as readonly string[]);
  if (input === undefined && !tree.places.has(at)) return explainMissing(issue, at);
  const value = tree.places.get(at)?.text ?? '';
  if (type === FIGURE_ISSUE)
    return explainFigure(requirement as FigureFault, at, input === null ? '' : value, input === null);
  const options = listOptions(expected);
  if (at === 'fielded') return tellFault('fault.unknown-version', { value });
  if (type === 'min_length' || (at === 'cuts' && input === null))
    return tellFault(at === 'cuts' ? 'fault.no-cuts.empty' : 'fault.empty-value.list', {});
  if (type === 'max_length') return tellFault('fault.too-many', { most: Number(requirement) });
  if (type === 'max_entries')
    return tellFault('fault.too-many', { most: Number(requirement) }, 'fault.too-many.shop.do');
  if (at === '' && input === null) return tellFault('fault.file-empty', {});
  if (input === null) return tellFault('fault.empty-value', { wanted: wantedOf(type, options, 'wanted.group-like') });
  if (options.length > 0 && typeof input === 'string') {
    const near = findNearest(input, options);
    const figures = { value, options: options.join(', ') };
    return near === undefined
      ? tellFault('fault.unknown-choice', figures)
      : tellFault('fault.unknown-choice', { ...figures, near }, 'fault.unknown-choice.near.do');
  }
  const read = kindOf(input, wantedOf(type, options, 'wanted.group'));
  if (at === '') return tellFault('fault.wrong-type.file', { read });
  const wanted = wantedOf(type, options, 'wanted.group-like');
  return tellFault('fault.wrong-type', { subject: subjectOf(at, value), read, wanted });
}

/** The sentences of a figure's faults. */
const FIGURE_FAULTS = {
  'wrong-type': 'fault.wrong-type',
  'empty-value': 'fault.empty-value.figure',
  'not-a-length': 'fault.not-a-length',
  'not-an-angle': 'fault.not-an-angle',
  'not-a-number': 'fault.not-a-number',
  'out-of-range': 'fault.out-of-range',
  'unknown-choice': 'fault.unknown-choice.figure',
} as const satisfies Readonly<Record<FigureFaultCode, FaultSentence>>;

function explainFigure({ code, read, wanted }: FigureFault, at: string, value: string, empty: boolean): ToldFault {
  return tellFault(FIGURE_FAULTS[empty ? 'empty-value' : code], { subject: subjectOf(at, value), read, wanted });
}

/** What is faulty: the value that was written at a place, or the place where nothing, a list or a group was. */
function subjectOf(at: string, value: string): Said {
  return value === '' ? toldPart('subject.place', { at }) : toldPart('subject.written', { at, value });
}

function explainUnknownKey(issue: Issue, at: string, known: readonly string[]): ToldFault {
  const key = String(issue.path?.at(-1)?.key ?? '');
  const shown = key.length > LONGEST_KEY ? `${key.slice(0, LONGEST_KEY)}…` : key;
  if (/^\d+\D*$/.test(key) && issue.input === null) return tellFault('fault.unknown-key.comma', { key: shown });
  const group = at.slice(0, at.length - key.length).replace(/\.$/, '');
  const near = findNearest(shown, known);
  const sentence = group === '' ? 'fault.unknown-key.top' : 'fault.unknown-key';
  const figures = { key: shown, known: known.join(', '), group };
  return near === undefined
    ? tellFault(sentence, figures)
    : tellFault(sentence, { ...figures, near }, 'fault.unknown-key.near.do');
}

function explainMissing(issue: Issue, at: string): ToldFault {
  const key = String(issue.path?.at(-1)?.key ?? '');
  const options = listOptions(issue.expected).filter((option) => option !== key);
  const meaning = meaningOf(issue, key);
  if (at === 'cuts') return tellFault('fault.no-cuts', {});
  if (at === 'fielded') return tellFault('fault.missing-key.version', {});
  if (options.length > 0)
    return tellFault('fault.missing-key', { key, options: options.join(', ') }, 'fault.missing-key.options.do');
  return meaning === ''
    ? tellFault('fault.missing-key', { key })
    : tellFault('fault.missing-key', { key, meaning: toldKey(meaning) }, 'fault.missing-key.meaning.do');
}

/** What a key that is missing is for, as its group says; '' where it does not. */
function meaningOf({ type, requirement }: Issue, key: string): string {
  return type === 'object_with_rest' ? ((requirement as Readonly<Record<string, string>>)[key] ?? '') : '';
}

/** `("front" | "back")` as its words. */
function listOptions(expected: string | null): string[] {
  return [...(expected ?? '').matchAll(/"([^"]+)"/g)].map((match) => match[1]!);
}

function wantedOf(type: string, options: readonly string[], group: 'wanted.group' | 'wanted.group-like'): Said {
  if (options.length > 0) return toldPart('wanted.one-of', { options: options.join(', ') });
  if (type === 'boolean') return toldPart('wanted.boolean', {});
  if (type === 'array' || type === 'tuple') return toldPart('wanted.list', {});
  return type === 'literal' ? toldPart('wanted.version', {}) : toldPart(group, {});
}
