// The largest inputs that are read, as awkward as we could make them: each is checked in under 2 seconds of processor time
// and 512 MB, and what is larger is refused in words.
import { spawn } from 'node:child_process';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';
import { builtCommand } from '../support/built-command.ts';
import { inLongRun } from '../support/trials.ts';
import { makeFolder, put, run } from './command.ts';

const folder = makeFolder();
const fielded = builtCommand();
const MOST = 5_990;
/** What is promised of a command in a process of its own. */
const PROMISED_SECONDS = 2;
/** Less than that by what code gains that has run before. */
const WARM_SECONDS = 1.7;

const HEAD = `fielded: 1
panel: { thickness: 20 }
frame: { thickness: 22, groove: { width: 6.4, depth: 11, setback: 7.5 }, swellGap: 2 }
`;
const SPREAD = 'spread: { thickness: 0.15, height: 0.1, fence: 0.2, grooveWidth: 0.1 }\n';

/** A fall from edge to face in `n` strokes: plain, with teeth that stand up, or a comb of long strokes that lie over each other. */
function stairs(n: number, kind: 'plain' | 'teeth' | 'comb'): string {
  const strokes = Array.from({ length: kind === 'comb' ? n / 2 : n }, (_, i) => {
    const share = (i + 1) / n;
    const depth = 9 - 8 * share * (kind === 'comb' ? 2 : 1);
    if (kind === 'comb') return `H${i % 2 === 0 ? 30 : 5}V${depth.toFixed(5)}`;
    return `L${(38 * share).toFixed(5)} ${(depth + (kind === 'teeth' ? 0.5 * (i % 2) : 0)).toFixed(5)}`;
  });
  return `M0 9${strokes.join('')}V0`;
}

const cut = (i: number, path: string, presented: string) =>
  `  - { name: c${i}, side: ${i % 2 === 0 ? 'front' : 'back'}, profile: { shape: outline, path: "${path}" }, presented: ${presented} }\n`;
const ogee = (i: number) =>
  `  - { name: c${i}, side: ${i % 2 === 0 ? 'front' : 'back'}, profile: { shape: ogee, reach: ${20 + i * 0.1}, depth: ${4 + i * 0.01}, land: 9 } }\n`;
const many = (n: number, one: (i: number) => string) => Array.from({ length: n }, (_, i) => one(i)).join('');

const CASES: [string, string][] = [
  ...(['plain', 'teeth', 'comb'] as const).flatMap((kind) =>
    ['flat', 'on-edge', '30'].map((presented): [string, string] => [
      `${kind}, ${presented}`,
      `${HEAD}cuts:\n${cut(0, stairs(MOST, kind), presented)}`,
    ]),
  ),
  ['plain, with a spread', `${HEAD}${SPREAD}cuts:\n${cut(0, stairs(MOST, 'plain'), 'flat')}`],
  ['teeth, with a spread', `${HEAD}${SPREAD}cuts:\n${cut(0, stairs(MOST, 'teeth'), 'flat')}`],
  ['comb, with a spread', `${HEAD}${SPREAD}cuts:\n${cut(0, stairs(MOST, 'comb'), 'flat')}`],
  [
    '12 cuts of teeth, with a spread',
    `${HEAD}${SPREAD}cuts:\n${many(12, (i) => cut(i, stairs(480, 'teeth'), 'flat'))}`,
  ],
  ['12 cuts, with a spread', `${HEAD}${SPREAD}cuts:\n${many(12, ogee)}`],
  [
    'teeth across teeth',
    `${HEAD}cuts:\n${cut(0, stairs(2980, 'teeth'), 'flat')}${cut(2, stairs(2980, 'teeth').replace('M0 9L', 'M0 9.01L'), 'on-edge')}`,
  ],
  ['two combs', `${HEAD}cuts:\n${cut(0, stairs(2980, 'comb'), 'flat')}${cut(1, stairs(2980, 'comb'), 'flat')}`],
  [
    '3,000 doors',
    `${HEAD}cuts:\n${ogee(0)}doors:\n${many(3000, (i) => `  - { name: d${i}, quantity: 4, width: 396, height: 716, stile: 60, rail: 60 }\n`)}`,
  ],
];

/** What is checked each day: every kind of outline, every way of presenting one, each kind of job, and whatever took longest. */
const DAILY = [
  'plain, flat',
  'teeth, 30',
  'comb, on-edge',
  'comb, with a spread',
  '12 cuts of teeth, with a spread',
  'teeth across teeth',
  '3,000 doors',
];

interface Cost {
  readonly status: number | null;
  readonly seconds: number;
  readonly megabytes: number;
}

const start = () =>
  fielded.then((path) => {
    const argv = [
      fileURLToPath(new URL('tell-costs.mjs', import.meta.url)),
      path.replace(/bin\/fielded\.js$/, 'bundle/index.js'),
    ];
    const child = spawn(process.execPath, argv, { stdio: ['pipe', 'ignore', 'pipe'] });
    return { child, answers: createInterface({ input: child.stderr })[Symbol.asyncIterator]() };
  });
const started = start();
afterAll(async () => (await started).child.stdin.end());

/** What a command of its own costs, run in a process as it is shipped: what that took to start is told with it. */
async function costIn(telling: typeof started, argv: readonly string[]): Promise<Cost> {
  const { child, answers } = await telling;
  child.stdin.write(`${JSON.stringify(argv)}\n`);
  for (;;) {
    const { value, done } = await answers.next();
    if (done) throw new Error('the process ended');
    if (value.startsWith('#')) return JSON.parse(value.slice(1)) as Cost;
  }
}

/**
 * Holds the cost of a command within the bounds. The commands of this file share a process, and some code is warm after the
 * first. One that takes too long there is given a process of its own, twice: what else runs on the machine only adds to its time.
 */
async function expectBounds(argv: readonly string[]): Promise<void> {
  let cost = await costIn(started, argv);
  let most = WARM_SECONDS;
  for (let turn = 0; turn < 2 && cost.seconds >= most; turn++) {
    const own = start();
    cost = await costIn(own, argv);
    most = PROMISED_SECONDS;
    (await own).child.stdin.end();
  }
  expect(cost.status, 'answered').toBeLessThan(2);
  expect(cost.seconds, 'seconds of processor time').toBeLessThan(most);
  expect(cost.megabytes, 'megabytes at most').toBeLessThan(512);
}

describe('inputs at the bounds', () => {
  const check = (name: string, text: string) =>
    expectBounds(['check', '--json', put(folder, `${name.replaceAll(/\W/g, '-')}.yaml`, text)]);
  const isDaily = ([name]: [string, string]) => DAILY.includes(name);
  it.each(CASES.filter(isDaily))('%s', { timeout: 30_000 }, check);
  inLongRun.each(CASES.filter((one) => !isDaily(one)))('%s', { timeout: 30_000 }, check);
  it('has all that is checked each day among them', () => {
    expect(CASES.filter(isDaily)).toHaveLength(DAILY.length);
  });
});

/** A shop of so many knives, heads and machines, all of them possible, and a job whose cuts run on the first. */
function largeShop(knives: number, heads: number, machines: number, cuts: number): { shop: string; job: string } {
  const shop = `fielded: 1
knives:
${many(knives, (i) => `  k${i}: { shape: ogee, reach: ${30 + (i % 100) / 10}, depth: ${4 + (i % 17) / 10}, head: h${i % heads}, fromFace: 1 }\n`)}heads:
${many(heads, (i) => `  h${i}: { cuttingDiameter: ${140 + (i % 50)}, bodyDiameter: 50, height: 40, rake: 15, maxSpeed: 7000 }\n`)}machines:
${many(machines, (i) => `  m${i}: { speeds: [3000, 6000], seat: [-70, 90], opening: 220, nutDiameter: 48, feeds: [4], fenceGap: ${120 + i} }\n`)}`;
  const side = (i: number) => (i % 2 === 0 ? 'front' : 'back');
  const job = `${HEAD.replace('thickness: 20', 'thickness: 30').replace('thickness: 22', 'thickness: 32')}shop: shop.yaml
cuts:\n${many(cuts, (i) => `  - { name: c${i}, side: ${side(i)}, knife: k${i} }\n`)}`;
  return { shop, job };
}

describe('a shop with as much in it as it may hold', () => {
  const { shop, job } = largeShop(500, 200, 50, 2);
  put(folder, 'shop.yaml', shop);
  const path = put(folder, 'large-shop.yaml', job);

  it.each([
    ['check', []],
    ['plan', []],
    ['match', ['--cut', 'c0']],
  ])('%s %j takes under 2 seconds and 512 MB', { timeout: 30_000 }, (command, rest) =>
    expectBounds([command, path, ...rest]),
  );

  it('is refused in a line with more', async () => {
    const refusal = async (...counts: [number, number, number]) => {
      put(folder, 'shop.yaml', largeShop(...counts, 1).shop);
      const { err } = await run(['check', put(folder, 'past-shop.yaml', largeShop(1, 1, 1, 1).job)]);
      put(folder, 'shop.yaml', shop);
      return err.replace(/^.*shop\.yaml:\d+:\d+ {2}/, '');
    };
    const keep = 'Keep in the shop file what its jobs use.\n';
    expect(await refusal(501, 1, 1)).toBe(`knives holds more than 500. ${keep}`);
    expect(await refusal(1, 201, 1)).toBe(`heads holds more than 200. ${keep}`);
    expect(await refusal(1, 1, 51)).toBe(`machines holds more than 50. ${keep}`);
    expect(await refusal(10_000, 1, 1)).toContain(
      'The file holds more than 250000 words, marks and line ends of YAML.',
    );
  });
});

describe('inputs past the bounds', () => {
  const said = async (text: string) =>
    (await run(['check', put(folder, 'past.yaml', text)])).err.replace(/^.*past\.yaml:\d+:\d+ {2}/, '');

  it('are refused, each in a line', async () => {
    expect(await said(`${HEAD}cuts:\n${cut(0, stairs(6002, 'plain'), 'flat')}`)).toBe(
      'cuts[0].profile.path: the path has more than 6000 strokes. Draw it with fewer.\n',
    );
    expect(
      await said(`${HEAD}cuts:\n${cut(0, stairs(4000, 'plain'), 'flat')}${cut(1, stairs(4000, 'plain'), 'flat')}`),
    ).toBe('cuts: their outlines have 8002 lines and arcs, and up to 6000 are computed. Draw them with fewer.\n');
    expect(await said(`${HEAD}cuts:\n${many(13, ogee)}`)).toBe(
      'cuts holds more than 12. Split the job into several files.\n',
    );
  });

  it('a spread that would take too long is left out, and says so', async () => {
    const { out } = await run([
      'check',
      '--json',
      put(folder, 'lips.yaml', `${HEAD}${SPREAD}cuts:\n${cut(0, stairs(200, 'comb'), 'flat')}`),
    ]);
    const { spread, problems } = JSON.parse(out);
    expect(spread).toBeUndefined();
    expect(problems.map(({ code }: { code: string }) => code)).toContain('spread-too-large');
  });
});
