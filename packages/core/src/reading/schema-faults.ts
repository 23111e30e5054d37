import type * as v from 'valibot';
import type { FaultCode } from '../problem/codes.ts';
import { kindOf } from './figures.ts';
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
  const [code, what, instead] = explain(issue, at, tree);
  return [{ code, at, ...findPlace(tree, at, code), what, instead }];
}

/** Of a figure that may also be a group of keys, the issues of the one that was written. */
function pickBranch(issue: Issue): readonly Issue[] {
  const isGroup = typeof issue.input === 'object' && issue.input !== null && !Array.isArray(issue.input);
  return (issue.issues ?? []).filter((one) => (one.path !== undefined || one.type.startsWith('object')) === isGroup);
}

/** Of a key that is as long as a file, this much is shown. */
const LONGEST_KEY = 40;

type Words = readonly [code: FaultCode, what: string, instead: string];

function explain(issue: Issue, at: string, tree: Tree): Words {
  const { type, expected, message } = issue;
  if (message.startsWith(UNKNOWN_KEY)) return explainUnknownKey(issue, at, message.split(' ').slice(1));
  if (issue.input === undefined && !tree.places.has(at)) return explainMissing(issue, at);
  const value = tree.places.get(at)?.text ?? '';
  if (type === 'raw_transform') {
    const code = issue.input === null ? 'empty-value' : (issue.received as FaultCode);
    const shown = value === '' || issue.input === null ? '' : `: ${value}`;
    return [code, `${at}${shown} is ${message}`, `Write ${expected}`];
  }
  const options = listOptions(expected);
  if (at === 'fielded') return ['unknown-version', `Version ${value} of the format is not known`, 'Write fielded: 1'];
  if (type === 'min_length' || (at === 'cuts' && issue.input === null))
    return at === 'cuts'
      ? ['no-cuts', 'cuts holds no cut', 'Add at least one, with a side and a profile']
      : ['empty-value', `${at} is an empty list`, 'Write at least one value in it'];
  if (type === 'max_length')
    return ['too-many', `${at} holds more than ${issue.requirement}`, 'Split the job into several files'];
  if (at === '' && issue.input === null)
    return ['file-empty', 'The file is empty', 'Start from one of the examples, or from docs/job-file.md'];
  if (issue.input === null)
    return ['empty-value', `${at} is empty`, `Write ${wantedOf(type, options)}, or take the line out`];
  if (options.length > 0 && typeof issue.input === 'string') {
    const near = findNearest(issue.input, options);
    const others = `one of ${options.join(', ')}`;
    return [
      'unknown-choice',
      `${at}: ${value} is not known`,
      near ? `Did you mean ${near}? Write ${others}` : `Write ${others}`,
    ];
  }
  const wanted = wantedOf(type, options);
  const shown = value === '' ? '' : `: ${value}`;
  return [
    'wrong-type',
    `${at === '' ? 'The file' : `${at}${shown}`} is ${kindOf(issue.input, wanted.replace(', as in the examples', ''))}`,
    at === '' ? 'Start it with fielded: 1, as in the examples' : `Write ${wanted}`,
  ];
}

function explainUnknownKey(issue: Issue, at: string, known: readonly string[]): Words {
  const key = String(issue.path?.at(-1)?.key ?? '');
  const shown = key.length > LONGEST_KEY ? `${key.slice(0, LONGEST_KEY)}…` : key;
  if (/^\d+\D*$/.test(key) && issue.input === null)
    return [
      'unknown-key',
      `A comma inside { } parts two keys, so ${shown} stands alone`,
      'Write the decimal with a point, or the length in quotes',
    ];
  const group = at.slice(0, at.length - key.length).replace(/\.$/, '');
  const near = findNearest(shown, known);
  const what = `${shown} is no key ${group === '' ? 'of this file' : `of ${group}`}`;
  return ['unknown-key', what, `${near ? `Did you mean ${near}? ` : ''}Known here: ${known.join(', ')}`];
}

function explainMissing(issue: Issue, at: string): Words {
  const key = String(issue.path?.at(-1)?.key ?? '');
  const options = listOptions(issue.expected).filter((option) => option !== key);
  const meaning = issue.message.startsWith('Invalid') ? '' : issue.message;
  if (at === 'cuts') return ['no-cuts', 'cuts is missing', 'Add at least one cut, with a side and a profile'];
  if (at === 'fielded') return ['missing-key', 'fielded is missing', 'Add fielded: 1, the version of this format'];
  if (options.length > 0) return ['missing-key', `${at} is missing`, `Add ${key}: one of ${options.join(', ')}`];
  return ['missing-key', `${at} is missing`, `Add ${key}${meaning === '' ? '' : ` (${meaning})`}`];
}

/** `("front" | "back")` as its words. */
function listOptions(expected: string | null): string[] {
  return [...(expected ?? '').matchAll(/"([^"]+)"/g)].map((match) => match[1]!);
}

function wantedOf(type: string, options: readonly string[]): string {
  if (options.length > 0) return `one of ${options.join(', ')}`;
  if (type === 'boolean') return 'true or false';
  if (type === 'array' || type === 'tuple') return 'a list';
  if (type === 'literal') return 'the number 1';
  return 'a group of keys, as in the examples';
}
