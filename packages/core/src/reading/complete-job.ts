import type { Job, Season } from '../job/job.ts';
import type { Cut } from '../machining/cut.ts';
import type { Shop } from '../shop/shop.ts';
import { completeCuts } from './complete-cuts.ts';
import { completeDoors } from './complete-doors.ts';
import { completeFrame } from './complete-frame.ts';
import { completeWood } from './complete-wood.ts';
import { type FaultDesk, orNaN } from './fault-desk.ts';
import type { JobFile, Loose } from './job-file.ts';
import { MOST_PIECES } from './limits.ts';

/**
 * The job that a file describes: its parts checked against each other, against the stock and against the shop, names
 * and settings filled in. Everything that is wrong is reported; undefined then, or when a part was struck out before.
 */
export function completeJob(file: Loose<JobFile>, shop: Shop | undefined, desk: FaultDesk): Job | undefined {
  const thickness = orNaN(file?.panel?.thickness);
  const measured = file?.panel?.measured ?? thickness;
  // Complete every part, so that all faults are reported at once.
  const frame = completeFrame(file?.frame, shop, desk);
  const cuts = completeCuts(file?.cuts, { thickness, measured }, shop, desk);
  const doors = completeDoors(file?.doors, orNaN(file?.frame?.groove?.depth), desk);
  checkPieces(cuts, desk);
  checkFit(file?.fit, desk);
  checkSeason(file?.season, desk);
  // Is every part whole? Then put the job together.
  if (frame === undefined || file?.panel === undefined || cuts.includes(undefined)) return undefined;
  const { title, units, terms, fit, spread, season } = file as JobFile;
  const { species, ...panel } = (file as JobFile).panel;
  const { spares } = file as JobFile;
  const job = {
    title,
    units,
    panel: { ...panel, measured, ...completeWood(species, shop) },
    frame,
    cuts: cuts as Cut[],
    fit,
    doors,
  };
  return {
    ...job,
    ...(terms && { terms }),
    ...(spread && { spread }),
    ...(season && { season }),
    ...(spares !== undefined && { spares }),
    ...(shop && { shop }),
  };
}

/** A shop's knife can be named by many cuts: what counts is what is run. */
function checkPieces(cuts: readonly (Cut | undefined)[], desk: FaultDesk): void {
  const pieces = cuts.reduce((sum, cut) => sum + (cut?.profile.shape === 'outline' ? cut.profile.chain.length : 0), 0);
  if (pieces > MOST_PIECES) desk.report('fault.too-many.pieces', 'cuts', { pieces, most: MOST_PIECES });
}

function checkFit(fit: Loose<JobFile['fit']>, desk: FaultDesk): void {
  const snug = orNaN(fit?.snug);
  const loose = orNaN(fit?.loose);
  if (snug > loose) desk.report('fault.out-of-order.fit', 'fit', { snug, loose });
}

function checkSeason(season: Loose<Season>, desk: FaultDesk): void {
  const { driest, dampest } = (season ?? {}) as Partial<Season>;
  // Of air, the more humid is the damper where it is no warmer; a figure and air are not compared here.
  if (typeof driest === 'object' && typeof dampest === 'object') {
    const [dry, damp] = [driest.humidity, dampest.humidity];
    if (dry > damp && driest.temperature <= dampest.temperature)
      desk.report('fault.out-of-order.season', 'season', { driest: `${dry}`, dampest: `${damp}` });
    return;
  }
  if (typeof driest !== 'number' || typeof dampest !== 'number' || driest <= dampest) return;
  desk.report('fault.out-of-order.season', 'season', { driest: `${driest}`, dampest: `${dampest}` });
}
