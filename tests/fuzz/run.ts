// Tries many odd jobs, shops and spoilt files: npm run fuzz -- --cases 100000 --plans 10000 --seed 1, or --minutes 30 for all kinds in turn.
import { parseArgs } from 'node:util';
import { fuzzDoors } from './fuzz-doors.ts';
import { fuzzDrawing } from './fuzz-drawings.ts';
import { fuzzImages } from './fuzz-images.ts';
import { type Finding, fuzzJob } from './fuzz-jobs.ts';
import { fuzzKnives } from './fuzz-knives.ts';
import { fuzzPlans } from './fuzz-plans.ts';
import { fuzzQuotes } from './fuzz-quotes.ts';
import { fuzzSetting } from './fuzz-settings.ts';
import { fuzzShop } from './fuzz-shops.ts';
import { fuzzTemplates } from './fuzz-templates.ts';
import { fuzzText, readStarts } from './fuzz-text.ts';

const starts = readStarts();

/** Every kind of case, by the option that says how many, with how many where nobody says. */
const KINDS: Readonly<Record<string, { readonly usual: number; readonly run: (seed: number) => Finding[] }>> = {
  cases: { usual: 20_000, run: fuzzJob },
  shops: { usual: 2000, run: fuzzShop },
  texts: { usual: 5000, run: (seed) => fuzzText(seed, starts) },
  drawings: { usual: 5000, run: fuzzDrawing },
  settings: { usual: 1000, run: fuzzSetting },
  doors: { usual: 2000, run: fuzzDoors },
  quotes: { usual: 2000, run: fuzzQuotes },
  templates: { usual: 1000, run: fuzzTemplates },
  images: { usual: 200, run: fuzzImages },
  plans: { usual: 1000, run: fuzzPlans },
  knives: { usual: 500, run: fuzzKnives },
};

const number = { type: 'string' } as const;
const { values } = parseArgs({
  options: { seed: number, minutes: number, ...Object.fromEntries(Object.keys(KINDS).map((kind) => [kind, number])) },
});
const given = values as Record<string, string | undefined>;
const seed = Number(given.seed ?? 1);
let found = 0;

/** Runs so many cases of a kind from a seed on, and says what they found. */
function runKind(kind: string, from: number, count: number): void {
  const begun = performance.now();
  for (let i = 0; i < count; i++) {
    for (const { seed: at, what } of KINDS[kind]!.run(from + i))
      if (found++ < 50) console.log(`${kind}, seed ${at}: ${what}`);
  }
  console.log(`${kind}: ${count} in ${((performance.now() - begun) / 1000).toFixed(1)} s`);
}

if (given.minutes === undefined) {
  const named = Object.keys(KINDS).filter((kind) => given[kind] !== undefined);
  for (const kind of named.length > 0 ? named : Object.keys(KINDS))
    runKind(kind, seed, Number(given[kind] ?? KINDS[kind]!.usual));
} else {
  const end = performance.now() + Number(given.minutes) * 60_000;
  for (let round = 0; performance.now() < end; round++)
    for (const [kind, { usual }] of Object.entries(KINDS)) runKind(kind, seed + round * usual, usual);
}
console.log(`${found} findings`);
process.exitCode = found > 0 ? 1 : 0;
