import type { Job } from '../job/job.ts';
import type { Problem } from '../problem/problem.ts';
import type { Report } from '../report/report.ts';
import { facePhrase } from '../report/verdict-sentence.ts';
import { LEAST_BARE_SEEN } from '../season/seasons.ts';
import type { QuotePromise } from './quote-report.ts';

/** Promises that a job's own figures bear, and the keys of the job that are missing for more. */
export interface Promises {
  readonly promises: readonly QuotePromise[];
  readonly notPromised: readonly string[];
}

/**
 * What a client may be told of the finished doors: how the panels move, how they stand and slide. Only what the report has
 * worked out is said; `notPromised` names what the job would have to give for the rest.
 *
 * The raise that is seen changes on each side by what one edge of the panel moves: half of its width's change where it is
 * held at its centre, all of it otherwise (formula Q3).
 */
export function listPromises(job: Job, report: Report): Promises {
  const promises: QuotePromise[] = [];
  const notPromised: string[] = [];
  const { season, spread, fit } = report;
  if (season === undefined) notPromised.push('season');
  else {
    promises.push({ sentence: 'moisture', figures: { moisture: season.made.moisture }, from: 'season.made' });
    const changes = [season.driest.widthChange, season.dampest.widthChange];
    const across = Math.max(...changes) - Math.min(0, ...changes);
    const edges = [season.driest, season.made, season.dampest].map(({ insertion }) => insertion);
    const margin = Math.max(...edges) - Math.min(...edges);
    promises.push({
      sentence: 'movesWhole',
      figures: { driest: season.driest.moisture, dampest: season.dampest.moisture, across, margin },
      from: 'season',
    });
    if (season.driest.bare > LEAST_BARE_SEEN)
      promises.push({ sentence: 'finishBefore', figures: {}, from: 'season.driest.bare' });
  }
  if (fit.clearance !== null && fit.verdict === 'sliding') {
    if (isFree(report)) promises.unshift({ sentence: 'freeToMove', figures: {}, from: 'fit, season' });
    const sentence = alwaysSlides(spread) ? 'fits' : 'fitsNominal';
    promises.push({ sentence, figures: { clearance: fit.clearance }, from: 'fit.clearance' });
  }
  if (spread === undefined) notPromised.push('spread');
  if (spread !== undefined && fit.frontFace !== null) {
    const { least, most } = spread.frontFace;
    promises.push({
      sentence: 'faceSpread',
      figures: { least: least.worst[0], most: most.worst[1] },
      from: 'spread.frontFace',
    });
  } else if (fit.frontFace !== null)
    promises.push({ sentence: 'face', figures: { face: facePhrase(fit.frontFace, job.units) }, from: 'fit.frontFace' });
  return { promises, notPromised };
}

/** Whether nothing that the report found holds the panels fast in any season. */
function isFree({ problems }: Report): boolean {
  return problems.every(({ code }) => !HELD.includes(code));
}

const HELD: readonly Problem['code'][] = ['bottoms-out', 'swells-tight', 'no-swell-gap', 'head-bottoms-out'];

/** Whether every joint within the tolerances slides: neither binds nor rattles, at its worst. */
function alwaysSlides(spread: Report['spread']): boolean {
  if (spread === undefined) return false;
  const [least, most] = spread.clearance.worst;
  return least >= spread.limits.snug && most <= spread.limits.loose;
}
