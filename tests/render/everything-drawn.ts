// Every drawing and sheet that there is of several jobs, in a language: what the walks through all words and all layouts go through.
import { readFileSync } from 'node:fs';
import {
  answerPlan,
  assumedRules,
  evaluate,
  type Job,
  type Language,
  makeCuttingList,
  matchKnives,
  prepareJob,
  type Report,
  readJob,
  readShop,
  reportShopKnives,
  sampleBoard,
  sweptOutline,
} from '@fielded/core';
import {
  boardPage,
  boardScene,
  cuttingSheets,
  doorSchedule,
  knifeScene,
  labelSheets,
  liveScene,
  makeTemplate,
  matchScene,
  type OfficePaper,
  orderSheets,
  planSheets,
  type Scene,
  SIXTY_FIVE,
  sampleLabel,
  scene,
  seasonScene,
  setUpPicture,
  sheets,
  spreadScene,
  templateScene,
  templateSheets,
  viewsOf,
} from '@fielded/render';
import { FEW } from '../support/few-joints.ts';
import { shopJob } from '../support/plans.ts';
import { JOBS } from './jobs-to-draw.ts';

const EXAMPLES = ['wardrobe', 'dry-winter', 'coped-frame', 'inch-rebate', 'bead-on-edge', 'hall-doors'];

/** An example's job. */
function exampleJob(name: string): Job {
  const folder = `examples/${name}`;
  const { job } = readJob(readFileSync(`${folder}/job.yaml`, 'utf8'), {
    loadShop: () => readFileSync(`${folder}/shop.yaml`, 'utf8'),
  });
  if (job === null) throw new Error(`examples/${name} cannot be read`);
  return job;
}

/** The jobs, by name: mm and inches, doors square and shaped, a shop, seasons, a spread, and what is wrong in many ways. */
export function everyJob(): Readonly<Record<string, Job>> {
  jobs ??= makeJobs();
  return jobs;
}

let jobs: Readonly<Record<string, Job>> | undefined;

function makeJobs(): Readonly<Record<string, Job>> {
  const inches = exampleJob('coped-frame');
  return {
    ...JOBS,
    ...Object.fromEntries(EXAMPLES.map((name) => [name, exampleJob(name)])),
    'coped in inches': { ...inches, units: 'in' },
    'off its thickness': { ...JOBS['ogee and cove']!, panel: { thickness: 20, measured: 19.7, sawn: 'flat' } },
    'season in inches': { ...exampleJob('dry-winter'), units: 'in' },
    kitchen: exampleJob('kitchen'),
    'two machines': exampleJob('two-machines'),
    'over the stock': shopJob({
      run: 'over',
      reversing: true,
      doors: '[{ name: A, width: 400, height: 700, stile: 60, rail: 60 }]',
    }),
    'not known': shopJob({ ogee: 'measured: wood', cove: 'measured: wood' }),
    'several passes': shopJob({ power: 0.8 }),
    'on edge and tilted': shopJob({
      cuts: '[{ name: raise, side: front, knife: ogee, presented: on-edge }, { name: slope, side: back, knife: cove, presented: 12 }]',
      machines: '{ m: { speeds: [6000], seat: [-90, 90], opening: 220, nutDiameter: 40, tilt: [0, 45] } }',
    }),
  };
}

/** A drawing with what it is of. */
export interface Drawn {
  readonly name: string;
  readonly scene: Scene;
}

/** Everything that is drawn of a job. */
export function drawJob(name: string, given: Job, language?: Language): Drawn[] {
  const job: Job = language === undefined ? given : { ...given, language };
  // Few joints: a chart of them has the words and the parts of one of many.
  const report = evaluate(job, FEW);
  const spoken = language === undefined ? {} : { language };
  const drawn: Drawn[] = [];
  const put: Put = (what, scenes) => {
    drawn.push(...scenes.map((each, i) => ({ name: `${name}: ${what} ${i + 1}`, scene: each })));
  };
  for (const view of viewsOf(report)) put(view, [scene(report, { view, checkBar: true })]);
  put('both units', [scene(report, { view: 'joint', units: 'both' })]);
  for (const view of ['section', 'joint'] as const)
    put(`live ${view}`, [liveScene(report, { view, scale: 2, only: null })]);
  put(
    'sheet',
    sheets(report, { view: 'sheet', paper: 'a4', number: '7', date: '3 May', drawnBy: 'Ann', shop: 'Shop' }),
  );
  if (report.spread) put('spread', [spreadScene(report)]);
  if (report.season) put('season', [seasonScene(report)]);
  put('sample', [
    sampleLabel({ report, knives: {} }),
    sampleLabel({
      report,
      date: '3 May',
      wood: 'oak',
      knives: Object.fromEntries(job.cuts.map((c) => [c.name, 'K1'])),
    }),
  ]);
  for (const knife of report.knives ?? []) {
    const of = { knife, units: job.units, title: job.title, paper: paperOf(job), ...spoken };
    put(`knife ${knife.cut}`, [
      knifeScene({ ...of, part: 'knife' as const }),
      ...(knife.limiter ? [knifeScene({ ...of, part: 'limiter' as const })] : []),
    ]);
    put(`order ${knife.cut}`, orderSheets(of));
  }
  if (job.shop && job.cuts.length > 0) drawShop(job, report, put, spoken);
  if (report.doors?.length) drawDoors(job, report, put, spoken);
  return drawn;
}

/** Where inches are read, shops print on Letter. */
const paperOf = ({ units }: Pick<Job, 'units'>): OfficePaper => (units === 'in' ? 'letter' : 'a4');

type Put = (what: string, scenes: readonly Scene[]) => void;
type Spoken = { readonly language?: Language };

function drawShop(job: Job, report: Report, put: Put, spoken: Spoken): void {
  const planned = answerPlan(prepareJob(job));
  if (planned) {
    put('plan', planSheets(planned, report, paperOf(job)));
    const { setups } = planned.plan;
    setups.forEach((_, i) => {
      put('set-up picture', [setUpPicture(report, setups, i, { width: 160, height: 100 })]);
    });
  }
  for (const cut of job.cuts) {
    const [best] = matchKnives(job, cut.name);
    const of = { wanted: sweptOutline(cut), cut: cut.name, title: job.title, units: job.units, ...spoken };
    if (best) put(`match ${cut.name}`, [matchScene({ match: best, ...of })]);
  }
}

function drawDoors(job: Job, report: Report, put: Put, { language }: Spoken): void {
  const list = makeCuttingList([report]);
  put(
    'cutting',
    cuttingSheets(list, { reports: [report], assumed: assumedRules([job], job.units), paper: paperOf(job) }),
  );
  put('labels', labelSheets(list, report.units, SIXTY_FIVE, true, language));
  put('schedule', doorSchedule(report, paperOf(job)));
  for (const door of report.doors!.filter(({ head }) => head !== undefined))
    for (const part of ['panel', 'field', 'rail'] as const) {
      const bearing = door.head!.bearings[0];
      for (const asked of [undefined, ...(bearing && part === 'panel' ? [{ cut: bearing.cut, diameter: 70 }] : [])]) {
        const template = makeTemplate(report, door, part, asked);
        if (template) put(`template ${door.name} ${part}`, [templateScene(template), ...templateSheets(template)]);
      }
    }
}

/** The example shop's board and knives. */
const { shop: SHOP } = readShop(readFileSync('examples/shop/shop.yaml', 'utf8'));
const SAMPLES = sampleBoard(SHOP!);
const KNIVES = reportShopKnives(SHOP!).reports;

/** What is drawn of a shop alone: its board, and an order for each of its knives. */
export function drawKnives(language?: Language): Drawn[] {
  const spoken = language === undefined ? {} : { language };
  return (['mm', 'in'] as const).flatMap((units) => [
    { name: `board ${units}`, scene: boardScene({ samples: SAMPLES, units, title: 'Our knives', ...spoken }) },
    ...KNIVES.flatMap((knife) =>
      orderSheets({ knife, units, title: 'Knives', orderedBy: 'Joinery', paper: paperOf({ units }), ...spoken }).map(
        (each, i) => ({
          name: `order ${knife.cut} ${units} ${i + 1}`,
          scene: each,
        }),
      ),
    ),
  ]);
}

/** The board as a page that is printed. */
export function drawBoardPage(language?: Language): string {
  return boardPage({ samples: SAMPLES, units: 'mm', title: 'Our knives', ...(language && { language }) });
}
