// A made-up language whose every sentence stands in marks and has none of our letters: what is printed with one of them was never said through
// the catalogue.
import { copyFileSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { ENGLISH, SEVERITIES, writeQuoteWords } from '@fielded/core';
import { RENDER_ENGLISH, VIEW_WORDS } from '@fielded/render';
import { afterAll, describe, expect, it } from 'vitest';
import { commandTexts } from '../../packages/cli/src/command-texts.ts';
import { COMMANDS } from '../../packages/cli/src/commands.ts';
import { openLanguage } from '../../packages/cli/src/files/read-language.ts';
import { allEnglish } from '../../packages/cli/src/words/all-english.ts';
import { CLI_ENGLISH } from '../../packages/cli/src/words/english.ts';
import { makeFolder, put, run } from './command.ts';

const VIEWS = [...Object.keys(VIEW_WORDS), 'sheet', 'spread', 'season'];

const folder = makeFolder();
const english = await allEnglish(COMMANDS);
const lines = Object.keys(CLI_ENGLISH);

/** A sentence in marks, a sign of its own first where it is a line of the command; one letter, not ours, for each word, what is filled in as it was. */
function mark(sentence: string, key = ''): string {
  const other = sentence.replace(/\{\w+(?::\w+)?\}|\[\w+\]|\p{Script=Latin}+/gu, (found) =>
    found.startsWith('{') ? found : 'ж',
  );
  const place = lines.indexOf(key);
  return `⟦${place < 0 ? '' : signOf(place)}${other}⟧`;
}

const FIRST = 0x4e00;
const signOf = (place: number) => String.fromCodePoint(FIRST + place);

/** The sentences in marks, a line to each as `fielded language` writes them: read in a thirtieth of the time that JSON takes. */
function languageOf(sentences: Readonly<Record<string, string>>): string {
  const marked = Object.entries(sentences).map(
    ([key, sentence]) => `  ${key}: ${JSON.stringify(mark(sentence, key))}\n`,
  );
  return `decimal: ","\nsentences:\n${marked.join('')}`;
}

const language = put(folder, 'language.yaml', languageOf(english));

/** What the help and wrong uses are said in: read a few times faster than the whole. */
const usageLanguage = put(
  folder,
  'usage.yaml',
  languageOf(
    Object.fromEntries(
      Object.entries(english).filter(([key]) => /^(?:help|print\.(?:help|usage|no-)|misread|instead)/.test(key)),
    ),
  ),
);

/** Both as the command reads them. */
const [spoken, spokenUsage] = await Promise.all([language, usageLanguage].map((path) => openLanguage(path, COMMANDS)));

/** The commands that were told the file. */
const told = new Set<string | undefined>();

/** Runs a command in the made-up language: the first time with its file, then with what was read from it, since to read it takes longer than the command. */
function say(argv: readonly string[], path: string) {
  const known = told.has(argv[0]);
  told.add(argv[0]);
  if (!known) return run([...argv, '--language', path]);
  const read = path === language ? spoken : spokenUsage;
  return run(argv, { language: read! });
}

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

/** The same in the help, and in what is wrong with the arguments. */
const SYNTAX: Allowed = [
  [new RegExp(`\\b(?:fielded|${[...Object.keys(COMMANDS), ...VIEWS].join('|')})\\b`, 'g'), 'commands and views'],
  [/--?[a-z][\w-]*|\b[A-Z]+(?:[-=|][A-Z]+)*\b/g, 'options and what stands for their values'],
  [/(?<!\w)\.(?:svg|pdf|png|html|dxf|csv|docx|yaml)\b/g, 'endings of files'],
  [/\b(?:bash|zsh|fish)\b/g, 'shells'],
  [/: \{ .*? \}|\brail\b|\bx\b|\bq\w*/gi, 'examples, and what was given'],
  [/\b(?:insertion|frontFace|backFace)\b/g, 'figures, as --for takes them'],
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
const shopFile = put(folder, 'shop.yaml', readFileSync(join(folder, 'kitchen-1-shop.yaml'), 'utf8'));
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

/** Joints made at random: the words for many are those for few, and the first report has as many as usual. */
const FEW = ['--simulate', '200'];

const PRINTED: readonly (readonly [what: string, argv: readonly string[]])[] = [
  ['a report', ['check', kitchen]],
  ['a report of errors', ['check', failing, ...FEW]],
  ['a report in inches', ['check', inches, ...FEW]],
  ['an odd report', ['check', odd, ...FEW]],
  ['a coped frame', ['check', coped]],
  ['shaped heads', ['check', wardrobe]],
  ['several jobs', ['check', kitchen, failing, coped, ...FEW]],
  ['jobs of which one cannot be read', ['check', kitchen, bare, ...FEW]],
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

/** What cannot be done as it was asked for. Words that were given start with q. */
const WRONG: readonly (readonly string[])[] = [
  ['qcheck'],
  ['--qelp'],
  ['help', 'qraw'],
  ['completion', 'qash'],
  ['check'],
  ['check', kitchen, '--qhop', 'x'],
  ['check', kitchen, '--json', '--json'],
  ['check', kitchen, '--json=q'],
  ['check', kitchen, '--seed', 'q'],
  ['check', kitchen, '--shop', ''],
  ['plan', kitchen, kitchen],
  ['plan', kitchen, '--sheet', '2'],
  ['plan', kitchen, '--json', '-o', 'q.pdf'],
  ['plan', kitchen, '--all', '-o', 'q.pdf'],
  ['plan', kitchen, '-o', 'q.q'],
  ['plan', machines, '-o', 'q.svg', '--sheet', '99'],
  ['plan', kitchen, '--machine', 'Qpindle'],
  ['draw', kitchen, '--view', 'qjoint'],
  ['draw', kitchen, '--view', 'spread', '--bare'],
  ['draw', kitchen, '--paper', 'a4', '--width', '90'],
  ['quote', kitchen, '--paper', 'letter'],
  ['draw', kitchen, '--landscape'],
  ['draw', kitchen, '-o', 'q.dxf', '--view', 'door'],
  ['draw', kitchen, '-o', 'q.dxf', '--bare'],
  ['draw', kitchen, '-o', 'q.pdf', '--theme', 'dark'],
  ['draw', kitchen, '-o', 'q.pdf', '--text', 'live'],
  ['draw', kitchen, '--font', 'q.ttf'],
  ['draw', kitchen, '--dpi', '90'],
  ['draw', kitchen, '--scale', 'fit'],
  ['draw', kitchen, '--scale', 'q'],
  ['draw', plain, '--paper', 'a4', '--sheet', '99'],
  ['draw', kitchen, '--view', 'corner'],
  ['draw', kitchen, '--view', 'door', '--door', 'q'],
  ['draw', plain, '--view', 'door'],
  ['draw', plain, '--view', 'panel', '--door', 'q'],
  ['draw', plain, '--view', 'spread'],
  ['draw', plain, '--view', 'season'],
  ['draw', plain, '-o', 'q.png', '--dpi', '1200', '--scale', '40:1'],
  ['cutting-list', kitchen, '--doors'],
  ['cutting-list', kitchen, '--json', '--labels', '65'],
  ['cutting-list', kitchen, '--labels', '65'],
  ['cutting-list', kitchen, '--outlines'],
  ['cutting-list', kitchen, '--labels', 'q', '-o', 'q.pdf'],
  ['cutting-list', kitchen, '--labels', '900 x 900', '-o', 'q.pdf'],
  ['template', wardrobe, '--door', 'q'],
  ['template', wardrobe, '--cut', 'q'],
  ['template', wardrobe, '--bearing', '60', '--part', 'rail'],
  ['template', wardrobe, '--bearing', 'q'],
  ['template', wardrobe, '--bearing', '60', '--cut', 'q'],
  ['match', kitchen],
  ['match', kitchen, '--cut', 'Qrais'],
  ['knife', kitchen],
  ['knife', kitchen, '--name', 'q'],
  ['knife', shopFile, '--name', 'q'],
  ['knife', kitchen, '--name', 'Qraise', '--number', '7'],
  ['knife', kitchen, '--name', 'Qraise', '--part', 'knife', '-o', 'q.pdf'],
  ['solve', kitchen],
  ['solve', kitchen, '--for', 'clearance=1'],
  ['solve', kitchen, '--for', 'q', '--by', 'Qraise.depth'],
  ['solve', kitchen, '--for', 'q=1', '--by', 'Qraise.depth'],
  ['solve', kitchen, '--for', 'q=0 q', '--by', 'Qraise.depth'],
  ['solve', kitchen, '--for', 'clearance=1', '--by', 'Qrais.depth'],
  ['solve', kitchen, '--for', 'clearance=1', '--by', 'q', '--by', 'q', '--by', 'q'],
  ['quote'],
  ['quote', plain],
  ['quote', kitchen, '--date', '2026-02-30'],
  ['trace', sample, '--json', '-o', 'q.svg'],
];

/** What was printed in all. */
let printed = '';

describe('in another language', () => {
  it.each(PRINTED)('every word of %s is said in it', async (what, argv) => {
    const { out, err } = await say(argv, language);
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
    const ask = [...argv, '-o', table];
    expect((await say(ask, language)).status).toBeLessThan(2);
    const text = readFileSync(table, 'utf8');
    printed += text;
    expect(unsaid(text)).toEqual([]);
    expect((await say(ask, language)).err).not.toContain('--force');
  });

  it.each(['', ...Object.keys(COMMANDS)])('every word of the help of "%s" is said in it', async (name) => {
    const asked = name === '' ? ['--help'] : [name, '--help'];
    const { out } = await say(asked, usageLanguage);
    expect((await say(['help', ...(name === '' ? [] : [name])], usageLanguage)).out).toBe(out);
    expect(out).toContain('⟦');
    expect(unsaid(out, [...ALLOWED, ...SYNTAX])).toEqual([]);
  });

  it.each(WRONG)('every word of %j, a wrong use, is said in it', async (...argv) => {
    const { status, out, err } = await say(argv, usageLanguage);
    printed += err;
    expect([status, out]).toEqual([2, '']);
    expect(err).toMatch(/^fielded: ⟦/);
    expect(unsaid(err, [...ALLOWED, ...FIGURES, ...SYNTAX])).toEqual([]);
  });

  it('is known wherever it stands, and is English where it cannot be read', async () => {
    const bogus = (await run(['check', '--qogus', kitchen, '--language', usageLanguage])).err;
    expect(bogus).toContain('⟦');
    expect((await run(['check', '--language', usageLanguage, kitchen, '--qogus'])).err).toBe(bogus);
    expect((await run(['check', kitchen, '--qogus', `--language=${usageLanguage}`])).err).toBe(bogus);
    expect((await run(['check', kitchen, '--qogus', '--language', 'none.yaml'])).err).toBe(
      'fielded: --qogus is no option here. See fielded help check.\n',
    );
    expect((await run(['check', '--help', '--language', 'none.yaml'])).err).toMatch(/^fielded: --language none.yaml: /);
  });

  it('a word that is not said in it is found, wherever it stands', async () => {
    for (const key of ['print.tongue', 'verdict.sliding', 'print.season.driest', 'print.source.film'] as const) {
      const { [key]: _, ...sentences } = spoken!.sentences;
      const { out } = await run(['check', kitchen, ...FEW], { language: { ...spoken!, sentences } });
      const found = out.includes(mark(english[key]!, key)) ? [] : unsaid(out);
      expect([key, found.length > 0]).toEqual([key, key !== 'print.source.film']);
    }
  });

  afterAll(() => {
    if (process.env.SHOW) console.log(lines.filter((_, place) => !printed.includes(signOf(place))).join('\n'));
  });
});

it('has a key of its own for every line, drawing and sentence', async () => {
  const help = await commandTexts(COMMANDS);
  const all = [ENGLISH, RENDER_ENGLISH, CLI_ENGLISH, help].flatMap((catalogue) => Object.keys(catalogue));
  expect(new Set(all).size).toBe(all.length);
  expect(Object.keys(english)).toHaveLength(all.length);
});
