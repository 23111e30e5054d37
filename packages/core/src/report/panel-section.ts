import { cornerOverlap, fallingOverlap } from '../door/panel-volume.ts';
import type { PanelSection } from '../door/panels.ts';
import type { Job } from '../job/job.ts';
import { fieldStart } from '../joint/edge.ts';
import { lowestOver, readTongue, type Tongue } from '../joint/tongue.ts';
import { woodDensity } from '../wood/density.ts';
import { moistureContent } from '../wood/moisture.ts';
import type { PreparedJob } from './prepared-job.ts';
import { speciesNamed } from './seasons.ts';

/** Moisture that weights are given at where the job has no season, %: the handbook's own. */
const USUAL_MOISTURE = 12;

/** What the panels of a job have in common: thickness, what the cuts take, the wood's density. */
export function panelSection({ job, edge }: PreparedJob): PanelSection {
  const { section } = edge;
  const tongue = readTongue(section);
  const deepest = Math.max(0, ...job.cuts.map(({ reach }) => reach));
  const front = (a: number) => section.thickness - heightOver(tongue, a, 'front', section.thickness);
  const back = (a: number) => heightOver(tongue, a, 'back', 0);
  const { area, x } = section.removed;
  const falls = fallsInward(front, deepest) && fallsInward(back, deepest);
  const overlap = falls
    ? fallingOverlap(area, area > 0 ? x / area : 0)
    : cornerOverlap(front, deepest) + cornerOverlap(back, deepest);
  const taken = tongue.flatMap(({ x0, x1, ...surfaces }) => {
    if (x0 >= deepest) return [];
    const left = (a: number) => lowestOver(surfaces.front, a, a) - lowestOver(surfaces.back, a, a);
    return [{ x0, x1: Math.min(x1, deepest), taken: (a: number) => section.thickness - left(a) }];
  });
  const field = fieldStart(edge) ?? 0;
  return { thickness: section.thickness, field, area, overlap, taken, density: densityOf(job) };
}

/** Height of the front or back surface over the back face at `a` mm in; `none` where no wood is. */
function heightOver(tongue: Tongue, a: number, side: 'front' | 'back', none: number): number {
  const at = tongue.find(({ x0, x1 }) => x0 <= a && a <= x1);
  return at === undefined ? none : lowestOver(at[side], a, a);
}

/** Whether a cut never takes more further in, looked at in 500 places. */
function fallsInward(depth: (a: number) => number, reach: number): boolean {
  let before = Number.POSITIVE_INFINITY;
  for (let i = 0; i < 500; i++) {
    const here = depth(((i + 0.5) / 500) * reach);
    if (here > before + 1e-6) return false;
    before = here;
  }
  return true;
}

/** kg/m³ at the moisture made, or at 12 %; null where the wood or its density is not known. */
function densityOf({ panel, season }: Job): number | null {
  const gravity = speciesNamed(panel)?.gravity ?? null;
  if (gravity === null) return null;
  return woodDensity(gravity, season === undefined ? USUAL_MOISTURE : moistureContent(season.made));
}
