import type * as v from 'valibot';
import type { Said } from '../problem/problem.ts';
import { codeOfFault, type FaultSentence, type ToldFault, tellFault, toldPart } from '../problem/say-fault.ts';
import { type FigureFault, type FigureFaultCode, kindOf } from './figures.ts';
import { MOST_FAULTS } from './limits.ts';
import { findNearest } from './nearest.ts';
import { findPlace } from './place.ts';
import { UNKNOWN_KEY } from './schema-shapes.ts';
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

/** Of a key that is as long as a file, this much is shown. */
const LONGEST_KEY = 40;

function explain(issue: Issue, at: string, tree: Tree): ToldFault {
  const { type, expected, message, input } = issue;
  if (message.startsWith(UNKNOWN_KEY)) return explainUnknownKey(issue, at, message.split(' ').slice(1));
  if (input === undefined && !tree.places.has(at)) return explainMissing(issue, at);
  const value = tree.places.get(at)?.text ?? '';
  if (type === 'raw_transform')
    return explainFigure(JSON.parse(message) as FigureFault, input === null ? '' : value, input);
  const options = listOptions(expected);
  if (at === 'fielded') return tellFault('fault.unknown-version', { value });
  if (type === 'min_length' || (at === 'cuts' && input === null))
    return tellFault(at === 'cuts' ? 'fault.no-cuts.empty' : 'fault.empty-value.list', {});
  if (type === 'max_length') return tellFault('fault.too-many', { most: Number(issue.requirement) });
  if (at === '' && input === null) return tellFault('fault.file-empty', {});
  if (input === null) return tellFault('fault.empty-value', { wanted: wantedOf(type, options, 'wanted.group-like') });
  if (options.length > 0 && typeof input === 'string') {
    const near = findNearest(input, options);
    const figures = { value, options: options.join(', ') };
    return near === undefined
      ? tellFault('fault.unknown-choice', figures)
      : tellFault('fault.unknown-choice.near', { ...figures, near });
  }
  const read = kindOf(input, wantedOf(type, options, 'wanted.group'));
  if (at === '') return tellFault('fault.wrong-type.file', { read });
  const wanted = wantedOf(type, options, 'wanted.group-like');
  return value === ''
    ? tellFault('fault.wrong-type', { read, wanted })
    : tellFault('fault.wrong-type.shown', { read, wanted, value });
}

/** The sentences of a figure's faults: without the value that was written, and with it. */
const FIGURE_FAULTS = {
  'wrong-type': ['fault.wrong-type', 'fault.wrong-type.shown'],
  'empty-value': ['fault.empty-value.figure', 'fault.empty-value.figure-shown'],
  'not-a-length': ['fault.not-a-length', 'fault.not-a-length.shown'],
  'not-an-angle': ['fault.not-an-angle', 'fault.not-an-angle.shown'],
  'not-a-number': ['fault.not-a-number', 'fault.not-a-number.shown'],
  'out-of-range': ['fault.out-of-range', 'fault.out-of-range.shown'],
  'unknown-choice': ['fault.unknown-choice.figure', 'fault.unknown-choice.figure-shown'],
} as const satisfies Readonly<Record<FigureFaultCode, readonly [FaultSentence, FaultSentence]>>;

function explainFigure({ code, read, wanted }: FigureFault, value: string, input: unknown): ToldFault {
  const [bare, shown] = FIGURE_FAULTS[input === null ? 'empty-value' : code];
  return value === '' ? tellFault(bare, { read, wanted }) : tellFault(shown, { read, wanted, value });
}

function explainUnknownKey(issue: Issue, at: string, known: readonly string[]): ToldFault {
  const key = String(issue.path?.at(-1)?.key ?? '');
  const shown = key.length > LONGEST_KEY ? `${key.slice(0, LONGEST_KEY)}…` : key;
  if (/^\d+\D*$/.test(key) && issue.input === null) return tellFault('fault.unknown-key.comma', { key: shown });
  const group = at.slice(0, at.length - key.length).replace(/\.$/, '');
  const near = findNearest(shown, known);
  const figures = { key: shown, known: known.join(', ') };
  if (group === '')
    return near === undefined
      ? tellFault('fault.unknown-key.top', figures)
      : tellFault('fault.unknown-key.top-near', { ...figures, near });
  return near === undefined
    ? tellFault('fault.unknown-key', { ...figures, group })
    : tellFault('fault.unknown-key.near', { ...figures, group, near });
}

function explainMissing(issue: Issue, at: string): ToldFault {
  const key = String(issue.path?.at(-1)?.key ?? '');
  const options = listOptions(issue.expected).filter((option) => option !== key);
  const meaning = issue.message.startsWith('Invalid') ? '' : issue.message;
  if (at === 'cuts') return tellFault('fault.no-cuts', {});
  if (at === 'fielded') return tellFault('fault.missing-key.version', {});
  if (options.length > 0) return tellFault('fault.missing-key.options', { key, options: options.join(', ') });
  return meaning === ''
    ? tellFault('fault.missing-key', { key })
    : tellFault('fault.missing-key.meaning', { key, meaning });
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
