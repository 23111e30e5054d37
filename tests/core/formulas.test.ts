// The formulas written down and the formulas named in the code are the same ones.
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const root = fileURLToPath(new URL('../..', import.meta.url));
const page = readFileSync(join(root, 'docs/formulas.md'), 'utf8');

/** Numbers of the formulas that a text names: "formula K4", "formulas 7 to 10", "formulas 2 and 5". */
function numbersNamed(text: string): string[] {
  const joined = text.replace(/\n\s*\*?\s*/g, ' ');
  return [...joined.matchAll(/\bformulas? ([A-Z]?\d+)(?: (and|to) ([A-Z]?\d+))?/g)].flatMap(([, first, link, last]) => {
    if (last === undefined) return [first!];
    if (link === 'and') return [first!, last];
    const [from, to] = [Number(first), Number(last)];
    return Array.from({ length: to - from + 1 }, (_, i) => String(from + i));
  });
}

const written = [...page.matchAll(/^\*\*([A-Z]?\d+)\. /gm)].map(([, number]) => number!);
/** Where formulas stand: files of core and exchange by their room, files of geometry with `geometry/` before it. */
const sources = new Map(
  ['core', 'exchange', 'geometry'].flatMap((part) =>
    readdirSync(join(root, 'packages', part, 'src'), { recursive: true, encoding: 'utf8' })
      .filter((name) => name.endsWith('.ts'))
      .map(
        (name) => [part === 'geometry' ? `geometry/${name}` : name, join(root, 'packages', part, 'src', name)] as const,
      ),
  ),
);
const named = [...sources.values()].flatMap((file) => numbersNamed(readFileSync(file, 'utf8')));

/** Formulas without a row among the witnesses, and rows whose test is not there under those words. */
function witnessFaults(text: string): string[] {
  const rows = [...text.matchAll(/^\| ([A-Z]?\d+) \| [^|]+ \| `([^`]+)` \| (.+?) \|$/gm)];
  const having = new Set(rows.map(([, number]) => number!));
  const missing = written.filter((number) => !having.has(number)).map((number) => `${number} has no witness`);
  const gone = rows
    .filter(([, , file, words]) => {
      const path = join(root, file!);
      return !existsSync(path) || !titlesOf(readFileSync(path, 'utf8')).some((title) => title.includes(words!));
    })
    .map(([, number, file]) => `${number}: no such test in ${file}`);
  return [...missing, ...gone];
}

/** What a test file calls its tests and groups of them: the words before each function, on its line or alone on the one before. */
function titlesOf(source: string): string[] {
  const titles = source.matchAll(/^.*?(['"`])(.+?)\1,(?: \{[^}]*\},)?(?: (?:async )?\(|$)/gm);
  return [...titles].map(([, , title]) => title!);
}

describe('docs/formulas.md', () => {
  it('has every formula that the code names, and the code names every one it has', () => {
    expect(written.length).toBeGreaterThan(20);
    expect([...new Set(named)].sort()).toEqual([...written].sort());
  });

  it('says of each where it stands and how it is checked', () => {
    const entries = page.split(/^(?=\*\*[A-Z]?\d+\. )/m).slice(1);
    const silent = entries.filter(
      (entry) => !/`(?:[a-z-]+\/)+[a-z-]+\.ts`/.test(entry) || !/[Cc]hecked|against/.test(entry),
    );
    expect(silent.map((entry) => entry.slice(0, 40))).toEqual([]);
    const missing = [...page.matchAll(/`((?:[a-z-]+\/)+[a-z-]+\.ts)`/g)].filter(([, path]) => !sources.has(path!));
    expect(missing).toEqual([]);
  });

  it('has for every formula a test that holds it against something outside', () => {
    expect(witnessFaults(page)).toEqual([]);
  });

  it('would be caught without a witness, or with one whose test is gone', () => {
    const row = /^\| K4 .*\n/m;
    expect(witnessFaults(page.replace(row, ''))).toEqual(['K4 has no witness']);
    expect(witnessFaults(page.replace('has its least clearance at the edge', 'has another clearance'))).toEqual([
      'K4: no such test in tests/core/tooling-report.test.ts',
    ]);
    expect(witnessFaults(page.replace('tooling-report.test.ts` | has its', 'no-such.test.ts` | has its'))).toEqual([
      'K4: no such test in tests/core/no-such.test.ts',
    ]);
  });

  it('would be caught with a number too many or too few', () => {
    expect(numbersNamed('(formula K4), formulas 7 to\n * 9 and formulas 2 and 5')).toEqual([
      'K4',
      '7',
      '8',
      '9',
      '2',
      '5',
    ]);
  });
});
