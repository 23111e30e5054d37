// Set-up sheets, knife orders and cutting lists of odd shops and cuts, which leave words and pictures little room: in millimetres on
// A4 and in inches on Letter, in English and in German, nothing lies over anything else or off the paper.
import { assumedRules, evaluateWithPlan, type Language, makeCuttingList, ONE_JOINT } from '@fielded/core';
import { cuttingSheets, orderSheets, planSheets, type Scene } from '@fielded/render';
import { expect, it } from 'vitest';
import { readPlanJob } from '../fuzz/fuzz-plans.ts';
import { Random } from '../support/random.ts';
import { trials } from '../support/trials.ts';
import { layoutFaults } from './layout-faults.ts';
import { readGerman } from './read-german.ts';

/**
 * What others do not notice. 2: a section that only fits as a mark, corrections in fractions of an inch. 4: a wide circle seen from
 * above. 27: a blank higher than a page. 30: statements too long for half a line. 28, 57: an enlarged outline beside its template.
 */
const TELLING = [2, 4, 27, 28, 30, 57];
const SEEDS = new Set([...TELLING, ...Array.from({ length: trials(0, 150) }, (_, i) => i + 1)]);

/**
 * Names in a blank stand on a white strip over its grain. Two things are left as they are: the letter of a wall may lie on the
 * dashed profile in the wood, and the sizes of a panel of a few centimetres on each other.
 */
const LEFT =
  /\/panel \d+ words .* over line .*\/grain$|\/wall \w .* over line \/drawing\/wood$|\/width .* over .*\/height /;

const GERMAN = await readGerman();

function drawSheets(seed: number, language: Language | null): Scene[] {
  const { job: read } = readPlanJob(new Random(seed));
  if (read === null) return [];
  const units = seed % 2 ? 'mm' : 'in';
  const paper = units === 'in' ? 'letter' : 'a4';
  const job = { ...read, units, ...(language && { language }) } as const;
  const { planned, report } = evaluateWithPlan(job, { simulation: ONE_JOINT });
  const words = { units, title: job.title, paper, ...(language && { language }) } as const;
  const sheets = [
    ...(planned ? planSheets(planned, report, paper) : []),
    ...(report.knives ?? []).flatMap((knife) => orderSheets({ ...words, knife })),
  ];
  if (!report.doors?.length) return sheets;
  const assumed = assumedRules([job], units);
  return [...sheets, ...cuttingSheets(makeCuttingList([report]), { reports: [report], assumed, paper })];
}

it('leave every word to be read', { timeout: 120_000 }, () => {
  const faults: string[] = [];
  let drawn = 0;
  for (const seed of SEEDS)
    for (const language of [null, GERMAN])
      for (const sheet of drawSheets(seed, language)) {
        drawn += 1;
        for (const fault of layoutFaults(sheet))
          if (!LEFT.test(fault)) faults.push(`${seed}, ${sheet.title}: ${fault}`);
      }
  expect(drawn).toBeGreaterThan(SEEDS.size);
  expect(faults).toEqual([]);
});
