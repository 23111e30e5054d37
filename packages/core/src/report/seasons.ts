import { sizeDoor } from '../door/door.ts';
import { LEAST_ENGAGEMENT } from '../job/default-figures.ts';
import type { Job, Season } from '../job/job.ts';
import { designInsertion } from '../joint/fit.ts';
import { formatLength, formatNumber } from '../measure/format.ts';
import type { Problem } from '../problem/problem.ts';
import { reportSeasons, type SeasonReport, type SeasonState } from '../season/seasons.ts';
import { AIR_COVERED, equilibriumMoisture, type Moisture } from '../wood/moisture.ts';
import { MOST_MOISTURE } from '../wood/movement.ts';
import { findSpecies, nearestSpecies } from '../wood/species.ts';
import type { PreparedJob } from './prepare.ts';

/** What the seasons do to a job's joint, and what is wrong with that; no report where something it needs is missing. */
export interface Seasons {
  readonly report?: SeasonReport;
  readonly problems: readonly Problem[];
}

/**
 * Takes a job's joint through its seasons. A job without seasons has none; one without species or width is told what it
 * needs; a joint without a tongue has nothing to swell.
 */
export function answerSeasons({ job, fit }: Pick<PreparedJob, 'job' | 'fit'>): Seasons {
  const { season } = job;
  if (season === undefined || fit.clearance === null) return { problems: [] };
  const faults = [...speciesFaults(job), ...widthFaults(job), ...STATES.flatMap((state) => airFaults(season, state))];
  const species = findSpecies(job.panel.species ?? '');
  const width = panelWidth(job);
  if (faults.length > 0 || species === null || width === null) return { problems: faults };
  const report = reportSeasons(job, season, species, width);
  return { report, problems: seasonProblems(job, report) };
}

const STATES = ['made', 'driest', 'dampest'] as const;
type State = (typeof STATES)[number];

/** Width of the panel across the grain, mm: as given, or of the widest panel among the doors; null where neither is. */
export function panelWidth(job: Job): number | null {
  if (job.panel.width !== undefined) return job.panel.width;
  const insertion = designInsertion(job.frame);
  const widths = job.doors.map((door) => sizeDoor(door, insertion).panel.width);
  return widths.length > 0 ? Math.max(...widths) : null;
}

/** What is wrong with the wood named: nothing if it is known, or if none is and nothing has been asked. */
export function speciesFaults({ panel }: Job): Problem[] {
  const { species } = panel;
  if (species === undefined) {
    return [
      {
        severity: 'warning',
        code: 'species-missing',
        at: 'panel.species',
        message: 'How much the panel moves depends on its wood: give panel.species, such as black cherry.',
      },
    ];
  }
  if (findSpecies(species) !== null) return [];
  return [
    {
      severity: 'error',
      code: 'unknown-species',
      at: 'panel.species',
      message: `No figures are known for ${species}: the nearest named wood is ${nearestSpecies(species)}. Give a wood of the Wood Handbook's tables.`,
    },
  ];
}

export function widthFaults(job: Job): Problem[] {
  if (panelWidth(job) !== null) return [];
  return [
    {
      severity: 'warning',
      code: 'width-missing',
      at: 'panel.width',
      message: 'How far the panel moves depends on its width across the grain: give panel.width, or the doors.',
    },
  ];
}

/** Moisture and air that cannot be, or that the handbook does not cover. */
function airFaults(season: Season, state: State): Problem[] {
  const at = `season.${state}`;
  const fault = (code: string, where: string, message: string): Problem[] => [
    { severity: 'error', code, at: where, message },
  ];
  const moisture: Moisture = season[state];
  if (typeof moisture === 'number') {
    if (moisture >= 0 && moisture <= MOST_MOISTURE) return [];
    const message = `${at} is ${formatNumber(moisture, 2)} %: a moisture content must be 0 to ${MOST_MOISTURE} %, above which wood no longer swells.`;
    return fault('moisture-out-of-range', at, message);
  }
  const { temperature, humidity } = moisture;
  if (!(humidity >= 0 && humidity <= 100)) {
    const message = `${at}.humidity is ${formatNumber(humidity, 2)} %: relative humidity must be 0 to 100 %.`;
    return fault('humidity-out-of-range', `${at}.humidity`, message);
  }
  if (!(temperature >= AIR_COVERED.least && temperature <= AIR_COVERED.most)) {
    const message = `${at}.temperature is ${formatNumber(temperature, 1)} °C: the Wood Handbook's table of moisture covers −1 to 132 °C. Give the moisture content itself.`;
    return fault('temperature-out-of-range', `${at}.temperature`, message);
  }
  return equilibriumMoisture(temperature, humidity) <= MOST_MOISTURE
    ? []
    : fault('moisture-out-of-range', at, `${at}: wood in this air is wetter than ${MOST_MOISTURE} %.`);
}

/** What the seasons spoil. */
function seasonProblems(job: Job, report: SeasonReport): Problem[] {
  const say = (mm: number) => formatLength(mm, job.units);
  const states = STATES.map((state) => ({ at: `season.${state}`, when: WHEN[state], ...report[state] }));
  const problems: Problem[] = [];
  const warn = (code: string, at: string, message: string) => problems.push({ severity: 'warning', code, at, message });
  const least = job.shop?.rules.leastEngagement ?? LEAST_ENGAGEMENT;
  for (const { at, when, moisture, bottomGap, insertion, clearance } of states) {
    const now = `${when} (${formatNumber(moisture, 1)} %)`;
    if (bottomGap < 0) {
      const wanted = job.frame.swellGap - bottomGap;
      warn(
        'bottoms-out',
        at,
        `${now} the panel swells until it bottoms out in the groove, ${say(-bottomGap)} too wide, and pushes the frame apart. Leave a swell gap of ${say(wanted)} or more.`,
      );
    }
    if (insertion <= 0) {
      warn(
        'leaves-groove',
        at,
        `${now} the panel shrinks out of its groove. Give the groove ${say(least - insertion)} more depth.`,
      );
    } else if (insertion < least) {
      warn(
        'little-engagement',
        at,
        `${now} only ${say(insertion)} of the tongue is in the groove, less than the ${say(least)} that holds it. Give the groove more depth or the panel less gap.`,
      );
    }
    const { snug } = job.fit;
    if (clearance !== null && clearance < snug && report.made.clearance! >= snug) {
      const left = clearance < 0 ? `${say(-clearance)} too thick` : `${say(clearance)} to spare`;
      warn(
        'swells-tight',
        at,
        `${now} the tongue swells tight in the groove, ${left}: the panel can no longer move and will split or push the frame apart. Leave ${say(report.made.clearance! - clearance + snug)} of clearance when it is made.`,
      );
    }
  }
  return [...problems, ...formulaCaution(states), ...finishCaution(report, say)];
}

const WHEN = { made: 'As made', driest: 'At the driest', dampest: 'At the dampest' } as const;

function formulaCaution(states: readonly (SeasonState & { at: string })[]): Problem[] {
  const outside = states.find(({ formula }) => formula === '13-3');
  if (outside === undefined) return [];
  const message =
    'Some of this moisture lies outside 6 to 14 %, where the dimensional change coefficients hold: the change is computed by eq. 13-3 of the Wood Handbook instead, from green to oven-dry shrinkage.';
  return [{ severity: 'caution', code: 'outside-coefficients', at: outside.at, message }];
}

function finishCaution(report: SeasonReport, say: (mm: number) => string): Problem[] {
  const state = report.driest.bare >= report.dampest.bare ? 'driest' : 'dampest';
  const { bare } = report[state];
  if (bare < LEAST_SEEN) return [];
  const message = `Finish the panel before glue-up: ${WHEN[state].toLowerCase()} ${say(bare)} of bare wood would show along each long edge.`;
  return [{ severity: 'caution', code: 'finish-before-glue-up', at: `season.${state}`, message }];
}

/** A bare strip narrower than this, mm, does not show. */
const LEAST_SEEN = 0.05;
