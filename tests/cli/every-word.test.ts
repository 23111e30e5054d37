// A made-up language whose every sentence stands in marks and has none of our letters: what is printed with one of them was never said through
// the catalogue.
import { copyFileSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { ENGLISH, SEVERITIES, writeQuoteWords } from '@fielded/core';
import { RENDER_ENGLISH } from '@fielded/render';
import { afterAll, describe, expect, it } from 'vitest';
import { allEnglish } from '../../packages/cli/src/words/all-english.ts';
import { CLI_ENGLISH } from '../../packages/cli/src/words/english.ts';
import { makeFolder, put, run } from './command.ts';

const folder = makeFolder();
const english = await allEnglish();
const lines = Object.keys(CLI_ENGLISH);

/** A sentence in marks, a sign of its own first where it is a line of the command; its letters others than ours, what is filled in as it was. */
function mark(sentence: string, key = ''): string {
  const other = sentence.replace(/\{\w+(?::\w+)?\}|\[\w+\]|\p{Script=Latin}/gu, (found) =>
    found.startsWith('{') ? found : 'ж',
  );
  const place = lines.indexOf(key);
  return `⟦${place < 0 ? '' : signOf(place)}${other}⟧`;
}

const FIRST = 0x4e00;
const signOf = (place: number) => String.fromCodePoint(FIRST + place);

function languageOf(sentences: Readonly<Record<string, string>>): string {
  const marked = Object.entries(sentences).map(([key, sentence]) => [key, mark(sentence, key)]);
  return JSON.stringify({ decimal: ',', sentences: Object.fromEntries(marked) });
}

const language = put(folder, 'language.json', languageOf(english));

/** The fixed words of a quote in marks. */
const words = put(
  folder,
  'words.yaml',
  writeQuoteWords().replace(/^(?!language)([^:\n]+): (.*)$/gm, (_, key, said) => {
    return `${key}: ${JSON.stringify(mark(JSON.parse(said)))}`;
  }),
);

type Allowed = readonly (readonly [pattern: RegExp, why: string])[];

/** What may stand in a line with our letters, and why. */
const ALLOWED: Allowed = [
  [/black cherry|white oak/g, 'woods, as the files name them'],
  [/\/\S*\.(?:yaml|csv|png)(?::\d+)*/g, 'paths of files'],
  [/\b(?:mm²?|m\/s|m\/min|m³|m|in²?|kg|ft\/min|W|EUR)(?![\p{L}\d])/gu, 'units'],
  [
    /\b(?:cuts|frame|panel|shop|spread|season|doors|rates|machines|knives|heads)(?:\.\w+|\[\d+\])+/g,
    'places of the files',
  ],
  [/^fielded:/gm, 'the name of the command'],
  [/\(cuts(?=, )|\b(?:fromFace|tallFence)\b/g, 'places of the files'],
  [/Q\w+/g, 'names that the files of these tests give'],
  [new RegExp(`\\b(?:${Object.keys(SEVERITIES).join('|')})\\b`, 'g'), 'codes of problems'],
];

/** The same where a file is at fault. */
const KEYS: Allowed = [
  [
    /\b(?:panel|frame|cuts|side|setback|width|depth|thickness|measured|swellGap|reach|name|nan)\b/g,
    'keys of the files',
  ],
];

/** The same for an answer of `solve`. */
const FIGURES: Allowed = [
  [
    /\b(?:clearance|face|depth|deepestInsertion|bottomGap|visibleMargin|(?:front|back)Face\.(?:most|least)|thicknessAt(?:Tip|Mouth)|verdict|setback)\b/g,
    'figures and sizes, as --for and --by take them',
  ],
];

/** The words of a text that are none of these. */
function unsaid(text: string, allowed: Allowed = ALLOWED): string[] {
  const rest = allowed.reduce((left, [pattern]) => left.replace(pattern, ''), text);
  return [...new Set(rest.match(/\p{Script=Latin}+/gu) ?? [])];
}

/** Names that the examples' files give; each becomes one that starts with Q. */
const NAMES =
  /(?<![\w-])(?:Longmeadow Joinery|back relief|ogee-38-left|cove-14-left|ogee-38|cove-14|(?:base|wall) pair|(?:small|pan) drawer|raiser?|small|main|large|bench|sink|narrow|bottles|VAT)(?![\w-])|(?<=name: )(?:arched|cathedral|study|cove|cupboard|dresser)/g;

let taken = 0;

/** A job of the examples with its shop beside it, every name of its own starting with Q. */
function takeExample(name: string, change: (job: string) => string = (job) => job): string {
  const rename = (text: string) =>
    text
      .replace(NAMES, (said) => `Q${said.replace(/\W/g, '')}`)
      .replace(/^title: .*$/m, 'title: Qtitle')
      .replace(/^ {4}- [A-Z].*$/gm, '    - Qterms')
      .replace(/(?<=head: )frame\b|(?<=^ {2})(?:frame(?=: *\{ cutting)|spindle(?=:))/gm, 'Q$&');
  const read = (file: string) => readFileSync(`examples/${name}/${file}`, 'utf8');
  const at = `${name}-${++taken}`;
  put(folder, `${at}-shop.yaml`, rename(read('shop.yaml')));
  return put(folder, `${at}.yaml`, change(rename(read('job.yaml'))).replace(/^shop: .*$/m, `shop: ${at}-shop.yaml`));
}

const kitchen = takeExample('kitchen');
const failing = takeExample('kitchen', (job) =>
  job.replace('20,', '20, measured: 19.4,').replace('width: 6.4', 'width: 3'),
);
const coped = takeExample('coped-frame');
const wardrobe = takeExample('wardrobe');
const machines = takeExample('two-machines');
const headless = takeExample('kitchen', (job) => job.replace('    head: Qraiser\n', ''));
put(folder, 'shop.yaml', readFileSync(join(folder, 'kitchen-1-shop.yaml'), 'utf8'));
const inches = put(
  folder,
  'inches.yaml',
  `fielded: 1
title: Qtitle
units: in
shop: shop.yaml
panel: { thickness: 3/4, measured: 11/16 }
frame: { thickness: 7/8, groove: { width: 1/4, depth: 7/16, setback: 5/16 }, swellGap: 1/16 }
cuts:
  - { name: Qa, side: front, profile: { shape: bevel, reach: 1-1/2, depth: 3/8, land: 7/16 }, run: over }
  - { name: Qb, side: back, profile: { shape: rebate, reach: 1/2, depth: 0.14 }, run: over }
spread: { thickness: 0.004, setback: 0.001, grooveDepth: 0.01, panelSize: 0.02, film: 0.001, square: 0.2 }
doors:
  - { name: Qone, width: 6, height: 30, stile: 2-1/4, rail: 2-1/4, grain: across }
`,
);
const odd = put(
  folder,
  'odd.yaml',
  `fielded: 1
title: Qtitle
shop: shop.yaml
panel: { thickness: 20, species: black cherry, width: 300 }
frame: { thickness: 22, groove: { width: 6.4, depth: 11, setback: 7.5 }, swellGap: 2 }
cuts:
  - { name: Qa, side: front, profile: { shape: ovolo, reach: 12, depth: 9 }, presented: on-edge, head: Qsmall }
  - { name: Qb, side: back, profile: { shape: outline, path: "M 0 4.6 H 14 V 0" }, head: Qraiser }
  - { name: Qc, side: back, profile: { shape: rebate, reach: 8, depth: 4 }, presented: 20 }
spread: { thickness: 0.1, moisture: 1 }
season: { made: 8, driest: 6, dampest: 11, pinned: edge }
doors:
  - { name: Qone, width: 150, height: 700, stile: 60, rail: 60 }
`,
);
const plain = put(
  folder,
  'plain.yaml',
  readFileSync('examples/ogee-cove/job.yaml', 'utf8')
    .replace(NAMES, (said) => `Q${said.replace(/\W/g, '')}`)
    .replace(/^title: .*$/m, 'title: Qtitle'),
);
copyFileSync('examples/traced-sample/sample.png', join(folder, 'Qsample.png'));
const sample = join(folder, 'Qsample.png');
const bare = put(folder, 'bare.yaml', 'fielded: 1\nunits: mm\n');
const faulty = put(
  folder,
  'faulty.yaml',
  `fielded: 1
panel: { thickness: 1--1/4 in, measured: [2], width: -3 }
frame: { thickness: 22, groove: { width: 3/4, depth: 1/0, setback: 12 kg }, swellGap: 1,000 }
cuts: [{ name: 17.5, profile: { shape: bevel, reach: .nan, depth: 99999 } }]
`,
);

const COMMANDS: readonly (readonly [what: string, argv: readonly string[]])[] = [
  ['a report', ['check', kitchen]],
  ['a report of errors', ['check', failing]],
  ['a report in inches', ['check', inches]],
  ['an odd report', ['check', odd]],
  ['a coped frame', ['check', coped]],
  ['shaped heads', ['check', wardrobe]],
  ['several jobs', ['check', kitchen, failing, coped]],
  ['jobs of which one cannot be read', ['check', kitchen, bare]],
  ['faults of a file', ['check', faulty]],
  ['a simulation without a spread', ['check', coped, '--simulate', '20']],
  ['a plan', ['plan', kitchen, '--all']],
  ['a plan of a coped frame', ['plan', coped, '--all']],
  ['a plan of shaped heads', ['plan', wardrobe, '--all']],
  ['a plan of two machines', ['plan', machines, '--all']],
  ['an odd plan', ['plan', odd, '--all']],
  ['no plan', ['plan', plain]],
  ['a cutting list', ['cutting-list', kitchen]],
  ['a cutting list of errors', ['cutting-list', failing]],
  ['an odd cutting list', ['cutting-list', odd]],
  ['a cutting list in inches', ['cutting-list', inches]],
  ['a cutting list of several jobs', ['cutting-list', kitchen, wardrobe, coped]],
  ['no cutting list', ['cutting-list', plain]],
  ['a setting', ['solve', kitchen, '--for', 'clearance=0.2', '--by', 'Qbackrelief.depth']],
  ['no setting', ['solve', kitchen, '--for', 'clearance=3', '--by', 'frame.groove.setback']],
  ['two settings', ['solve', kitchen, '--for', 'face=flush']],
  ['knives that match', ['match', wardrobe, '--cut', 'Qraise', '--all']],
  ['no knives that match', ['match', plain, '--cut', 'Qraise']],
  ['a price', ['quote', kitchen, '--words', words, '--date', '2026-03-04', '--number', '7']],
  ['a price of errors', ['quote', failing, '--words', words, '--date', '2026-03-04', '--draft', '--estimate']],
  ['no price of errors', ['quote', failing, '--words', words, '--date', '2026-03-04']],
  ['a template of no door', ['template', kitchen]],
  ['a traced sample', ['trace', sample]],
  ['a knife without a head', ['knife', headless, '--name', 'Qraise']],
  ['a board without knives', ['board', bare]],
  ['a drawing of errors', ['draw', failing, '--view', 'sheet', '-o', join(folder, 'drawing.svg')]],
  ['a sheet of a plan', ['plan', kitchen, '-o', join(folder, 'plan.svg')]],
];

/** What was printed in all. */
let printed = '';

describe('in another language', () => {
  it.each(COMMANDS)('every word of %s is said in it', async (what, argv) => {
    const { out, err } = await run([...argv, '--language', language]);
    printed += out + err;
    expect(out + err).toContain('⟦');
    const more = argv[0] === 'solve' ? FIGURES : /read|faults/.test(what) ? KEYS : [];
    expect(unsaid(out + err, [...ALLOWED, ...more])).toEqual([]);
  });

  it.each([
    ['a cutting list', ['cutting-list', kitchen]],
    ['a cutting list of errors', ['cutting-list', failing]],
    ['a price', ['quote', kitchen, '--words', words, '--date', '2026-03-04']],
    ['a price of errors', ['quote', failing, '--words', words, '--date', '2026-03-04', '--draft']],
  ])('every word of %s is said in it in a spreadsheet, which is known as ours', async (what, argv) => {
    const table = join(folder, `${what.replaceAll(' ', '-')}.csv`);
    const ask = [...argv, '--language', language, '-o', table];
    expect((await run(ask)).status).toBeLessThan(2);
    const text = readFileSync(table, 'utf8');
    printed += text;
    expect(unsaid(text)).toEqual([]);
    expect((await run(ask)).err).not.toContain('--force');
  });

  it('a word that is not said in it is found, wherever it stands', async () => {
    for (const key of ['print.tongue', 'verdict.sliding', 'print.season.driest', 'print.source.film'] as const) {
      const { [key]: _, ...others } = english;
      const lacking = put(folder, 'lacking.json', languageOf(others));
      const { out } = await run(['check', kitchen, '--language', lacking]);
      const found = out.includes(mark(english[key]!, key)) ? [] : unsaid(out);
      expect([key, found.length > 0]).toEqual([key, key !== 'print.source.film']);
    }
  });

  afterAll(() => {
    if (process.env.SHOW) console.log(lines.filter((_, place) => !printed.includes(signOf(place))).join('\n'));
  });
});

it('has a key of its own for every line, drawing and sentence', () => {
  const all = [ENGLISH, RENDER_ENGLISH, CLI_ENGLISH].flatMap((catalogue) => Object.keys(catalogue));
  expect(new Set(all).size).toBe(all.length);
  expect(Object.keys(english)).toHaveLength(all.length);
});
