import { acrossGrain, doorInsertion, layOpenings, panelSize } from '../door/door.ts';
import type { Job, Season } from '../job/job.ts';
import { sweptOf } from '../joint/edge.ts';
import type { Problem } from '../problem/problem.ts';
import { sayProblem, told } from '../problem/say.ts';
import { type FrameWood, reportSeasons, type SeasonReport } from '../season/seasons.ts';
import { AIR_COVERED, equilibriumMoisture, type Moisture } from '../wood/moisture.ts';
import { MOST_MOISTURE } from '../wood/movement.ts';
import { findSpecies, nearestSpecies, type Species, speciesOf, woodsCalled } from '../wood/species.ts';
import type { PreparedJob } from './prepared-job.ts';
import { STATES, type State, seasonProblems } from './season-problems.ts';

/** What the seasons do to a job's joint, and what is wrong with that; no report where something it needs is missing. */
export interface Seasons {
  readonly report?: SeasonReport;
  readonly problems: readonly Problem[];
}

/**
 * Takes a job's joint through its seasons. A job without seasons has none; one without species or width is told what it
 * needs; a joint without a tongue has nothing to swell.
 */
export function answerSeasons({ job, fit, edge }: Pick<PreparedJob, 'job' | 'fit' | 'edge'>): Seasons {
  const { season } = job;
  if (season === undefined || fit.clearance === null) return { problems: [] };
  const faults = [
    ...speciesFaults(job),
    ...widthFaults(job),
    ...STATES.flatMap((state) => airFaults(job, season, state)),
  ];
  const species = speciesNamed(job.panel);
  const width = panelWidth(job);
  if (faults.length > 0 || species === null || width === null) return { problems: faults };
  const deepest = fit.deepestInsertion ?? undefined;
  const made = reportSeasons(job, season, species, width, sweptOf(edge), frameWood(job, species), deepest);
  const door = job.panel.width === undefined ? widestPanel(job)?.door : undefined;
  const report = { ...made, ...(door !== undefined && { door }) };
  return { report, problems: seasonProblems(job, report) };
}

/** Width of the panel across the grain, mm: as given, or of the widest panel among the doors; null where neither is. */
export function panelWidth(job: Job): number | null {
  return job.panel.width ?? widestPanel(job)?.width ?? null;
}

/** The widest panel across the grain among a job's doors, mm, and the first door that has it; null without doors. */
function widestPanel(job: Job): { readonly width: number; readonly door: string } | null {
  let widest: { width: number; door: string } | null = null;
  for (const door of job.doors) {
    const insertion = doorInsertion(job, door);
    for (const opening of layOpenings(door)) {
      const width = acrossGrain(door, panelSize(opening, insertion));
      if (widest === null || width > widest.width) widest = { width, door: door.name };
    }
  }
  return widest;
}

/** A wood by its own figures, or as the table has it; null where neither knows it. */
export function speciesNamed({ species, wood }: Pick<Job['panel'], 'species' | 'wood'>): Species | null {
  return wood === undefined ? findSpecies(species ?? '') : speciesOf(wood);
}

/** The frame's wood: its own, or the panel's. */
export function frameWood({ frame, panel }: Job, panelSpecies: Species): FrameWood {
  const own = frame.species === undefined ? null : speciesNamed(frame);
  return { species: own ?? panelSpecies, sawn: frame.sawn ?? panel.sawn };
}

/** What is wrong with the wood named: nothing if it is known, or if none is and nothing has been asked. */
export function speciesFaults(job: Job): Problem[] {
  return job.panel.species === undefined ? [sayProblem('species-missing', 'panel.species', {}, job)] : [];
}

/** Woods that are named and not known, whether or not anything was asked of them. */
export function unknownWoods(job: Job): Problem[] {
  const named = [
    ['panel.species', job.panel],
    ['frame.species', job.frame],
  ] as const;
  return named.flatMap(([at, part]) => {
    const { species } = part;
    if (species === undefined || speciesNamed(part) !== null) return [];
    const several = woodsCalled(species);
    if (several.length > 0)
      return [sayProblem('unknown-species.several', at, { species, woods: several.join(', ') }, job)];
    const near = nearestSpecies(species);
    return [
      near === null
        ? sayProblem('unknown-species.none', at, { species }, job)
        : sayProblem('unknown-species.near', at, { species, near }, job),
    ];
  });
}

export function widthFaults(job: Job): Problem[] {
  return panelWidth(job) === null ? [sayProblem('width-missing', 'panel.width', {}, job)] : [];
}

/** Air that the handbook does not cover, or in which wood no longer swells. */
function airFaults(job: Job, season: Season, state: State): Problem[] {
  const at = `season.${state}`;
  const moisture: Moisture = season[state];
  if (typeof moisture === 'number') return [];
  const { temperature, humidity } = moisture;
  if (!(temperature >= AIR_COVERED.least && temperature <= AIR_COVERED.most))
    return [
      sayProblem(
        'temperature-out-of-range',
        `${at}.temperature`,
        { when: told(`when.${state}`, {}), temperature },
        job,
      ),
    ];
  if (equilibriumMoisture(temperature, humidity) <= MOST_MOISTURE) return [];
  return [sayProblem('moisture-out-of-range', at, { when: told(`when.${state}`, {}), most: MOST_MOISTURE }, job)];
}
