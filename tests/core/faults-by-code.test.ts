import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import { LineCounter, Parser } from 'yaml';
import { composeFirst } from '../../packages/core/src/reading/compose-yaml.ts';
import { jobSchema } from '../../packages/core/src/reading/job-schema.ts';
import { readJob } from '../../packages/core/src/reading/read.ts';
import { explainIssues } from '../../packages/core/src/reading/schema-faults.ts';
import { explainYamlErrors } from '../../packages/core/src/reading/yaml-faults.ts';
import { readYaml } from '../../packages/core/src/reading/yaml-tree.ts';

/** A text that is not YAML, and the sentence of its first fault. */
const BROKEN: readonly (readonly [what: string, text: string, sentence: string])[] = [
  ['a tab', 'panel:\n\tthickness: 20', 'tab'],
  ['a quote too many', 'thickness: "3/4""', 'quotes'],
  ['quotes that open a text of several lines', 'a: "3/4" and "1"\nb: 2', 'quotes'],
  ['a quote that never closes', 'title: "Pantry\nunits: mm', 'open-quote'],
  ['a single quote that never closes', "title: 'Pantry\nunits: mm", 'open-quote'],
  ['a group that never ends', 'groove: { width: 6.4\nswellGap: 2', 'list'],
  ['a list without its comma', 'cuts: [{ a: 1 } { b: 2 }]', 'list'],
  ['a list with two commas', 'cuts: [1, , 2]', 'list'],
  ['a list with lines of their own', 'cuts: [\n  - a\n]', 'list'],
  ['an indent that does not match', 'frame:\n  a: 1\n b: 2', 'indent'],
  ['two colons', 'thickness: measured: 20', 'colon'],
  ['a sign that starts no value', 'thickness: @20', 'sign'],
  ['a reversed quote', 'thickness: `20`', 'sign'],
  ['an anchor without a name', 'thickness: & 20', 'alias'],
  ['a word after a list', 'cuts: [1] 2', 'line'],
  ['an unknown escape', 'title: "a\\qb"', 'line'],
  ['a bracket too many', 'cuts: [1]]', 'line'],
  // Words that the library says of other faults make no difference.
  ['a text about indents', 'title: x: "all of the same column, indent"', 'colon'],
  ['a key called flow map', 'flow map: a: 1', 'colon'],
  ['a text about quotes', 'title: [1] missing closing quote', 'line'],
];

/** What the sentences of a text's faults are, with the library's messages as they are or taken out. */
function explained(text: string, mute: boolean): string[] {
  const lines = new LineCounter();
  lines.addNewLine(0);
  const tokens = [...new Parser(lines.addNewLine).parse(text)];
  const refused = new Set(tokens.filter(({ type }) => type === 'error').map(({ offset }) => offset));
  const { errors } = composeFirst(tokens);
  if (mute) for (const error of errors) error.message = '';
  return explainYamlErrors(errors, { text, lines, refused }).map(({ sentence }) => sentence);
}

describe('faults are found by codes and places, never by messages', () => {
  it.each(BROKEN)('%s', (_, text, sentence) => {
    expect(explained(text, false)[0]).toBe(`fault.yaml-syntax.${sentence}`);
    expect(explained(text, true)).toEqual(explained(text, false));
    expect(readJob(text).faults[0]?.sentence).toBe(`fault.yaml-syntax.${sentence}`);
  });

  it('holds every sentence of YAML that a short text can call for', () => {
    const told = new Set(BROKEN.map(([, , sentence]) => sentence));
    expect([...told].sort()).toEqual(
      ['alias', 'colon', 'indent', 'line', 'list', 'open-quote', 'quotes', 'sign', 'tab'].sort(),
    );
  });

  it('says the same of every issue of the schema without its message', () => {
    const tree = readYaml(STRANGE);
    const { issues = [] } = v.safeParse(jobSchema('mm'), tree.value);
    const mute = issues.map((issue) => ({ ...issue, message: '' }));
    const told = explainIssues(issues, tree);
    expect(told.map(({ sentence, remedy, at }) => `${at} ${sentence} ${remedy}`)).toEqual([
      'panel.thickness fault.not-a-length fault.not-a-length.do',
      'frame.groove.width fault.missing-key fault.missing-key.meaning.do',
      'frame.groove.depht fault.unknown-key fault.unknown-key.near.do',
      'frame.swellGap fault.missing-key fault.missing-key.meaning.do',
      'cuts[0].run fault.unknown-choice fault.unknown-choice.near.do',
    ]);
    expect(explainIssues(mute, tree)).toEqual(told);
    expect(told[1]).toMatchObject({ figures: { key: 'width', meaning: { sentence: 'means.groove-width' } } });
    expect(told[2]).toMatchObject({ figures: { near: 'depth', known: 'width, depth, setback' } });
  });
});

/** A job with a fault of each kind that the schema finds. */
const STRANGE = `fielded: 1
panel: { thickness: steep }
frame: { thickness: 22, groove: { depht: 11, depth: 11, setback: 7 } }
cuts: [{ side: front, profile: { shape: bevel, reach: 30, depth: 9 }, run: undr }]
`;
