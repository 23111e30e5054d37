// Advice never makes it worse: each piece is written into the job's file alone, the file read again and evaluated whole.
import { evaluate, type Job, type Problem, readJobData } from '@fielded/core';
import { expect, it } from 'vitest';
import { completeDoor } from '../support/doors.ts';
import { jobData, writeInto } from '../support/job-data.ts';
import { Random } from '../support/random.ts';
import { randomJob } from '../support/random-job.ts';
import { trials } from '../support/trials.ts';

const JOBS = Number(process.env.ADVICE_JOBS ?? trials(400, 2000));

const SHOP = {
  fielded: 1,
  heads: {
    small: { cuttingDiameter: 120, bodyDiameter: 70, height: 40, rake: 18, maxSpeed: 9000, feed: 'hand' },
    large: { cuttingDiameter: 180, bodyDiameter: 80, height: 60, rake: 12, maxSpeed: 7000, feed: 'hand' },
  },
  machines: {
    main: { speeds: [3000, 4500, 6000], seat: [-120, 120], opening: 230, nutDiameter: 48, reversing: true },
  },
};

/** A random job, often with seasons, doors, or heads, and with lips and gaps that are sometimes too small. */
function oddJob(seed: number): { data: Record<string, unknown>; shop: unknown } {
  const random = new Random(seed * 7 + 3);
  const job = randomJob(seed, random.oneOf(['free', 'exact', 'near']));
  const withHeads = random.unit() < 0.1;
  const cuts = job.cuts.map((cut, k) => ({
    ...cut,
    name: `cut ${k + 1}`,
    ...(withHeads && { head: random.oneOf(['small', 'large']) }),
  }));
  const frame = {
    ...job.frame,
    swellGap: random.unit() < 0.1 ? 0 : job.frame.swellGap,
    groove: { ...job.frame.groove, setback: random.unit() < 0.2 ? random.between(0, 3) : job.frame.groove.setback },
  };
  const width = random.between(60, 600);
  const panel = { ...job.panel, ...(random.unit() < 0.5 && { species: 'black cherry', width }) };
  const season = {
    made: 9,
    driest: random.between(4, 8),
    dampest: random.between(10, 16),
    pinned: random.unit() < 0.7,
  };
  const door = { name: 'door 1', quantity: 1, width: random.between(250, 600), height: random.between(200, 900) };
  const doors = [completeDoor({ ...door, stile: 60, rail: 60, across: 1, up: 1, muntin: 0 })];
  const whole: Job = {
    ...job,
    cuts,
    frame,
    panel,
    ...(panel.width !== undefined && random.unit() < 0.7 && { season }),
    doors: random.unit() < 0.2 ? doors : [],
  };
  const data = jobData(whole);
  return withHeads ? { data: { ...data, shop: 'shop.yaml' }, shop: SHOP } : { data, shop: undefined };
}

const keyOf = ({ code, at }: Problem) => `${code} ${at}`;

/** What is wrong with the advice of one job; nothing where all of it helps. */
function faultsOf(seed: number): { given: number; faults: string[] } {
  const { data, shop } = oddJob(seed);
  const read = readJobData(data, shop);
  if (read.job === null) return { given: 0, faults: [] };
  const { problems } = evaluate(read.job);
  const before = new Set(problems.map(keyOf));
  const faults: string[] = [];
  let given = 0;
  for (const problem of problems) {
    for (const { writes, message } of problem.advice ?? []) {
      given++;
      const told = `seed ${seed}, ${keyOf(problem)}, "${message}"`;
      const changed = writes.reduce<unknown>(
        (file, write) => writeInto(file, write.path, 'mm' in write ? write.mm : write.word),
        data,
      );
      const again = readJobData(changed, shop);
      if (again.job === null) {
        faults.push(`${told} is not read: ${again.faults[0]!.message}`);
        continue;
      }
      const after = evaluate(again.job).problems;
      if (after.some((each) => keyOf(each) === keyOf(problem))) faults.push(`${told} does not help`);
      const worse = after.find((each) => each.severity !== 'caution' && !before.has(keyOf(each)));
      if (worse) faults.push(`${told} makes it worse: ${worse.message}`);
    }
  }
  return { given, faults };
}

it(`each piece of advice on ${JOBS} jobs puts its problem right and brings no other`, () => {
  const faults: string[] = [];
  let given = 0;
  for (let seed = 1; seed <= JOBS; seed++) {
    const one = faultsOf(seed);
    given += one.given;
    faults.push(...one.faults);
  }
  expect(faults.slice(0, 10)).toEqual([]);
  expect(given).toBeGreaterThan(JOBS / 3);
}, 300_000);
