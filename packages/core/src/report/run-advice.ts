import type { Voice } from '../problem/language.ts';
import type { Said } from '../problem/problem.ts';
import { say, told } from '../problem/say.ts';
import type { Arrangement } from '../spread/arrangements.ts';
import type { SpreadReport } from '../spread/report.ts';
import type { Report } from './report.ts';

type Cuts = Report['section']['cuts'];
type Face = 'front' | 'back';

/**
 * Which face to keep on the table, or on edge against the fence, and what turning the panel over would buy: "Keep the panel face down for both cuts. Stock
 * thickness then no longer matters." Run under, the worked face lies on the table; over, the other one.
 */
export function adviseRuns(
  { arrangements }: SpreadReport,
  cuts: Cuts,
  units: Report['units'],
  voice: Voice = { units },
): string {
  const given = arrangements.find((arrangement) => arrangement.given)!;
  const best = arrangements[0]!;
  const follows = Math.abs(thicknessSlope(given));
  if (widthOf(best) < widthOf(given) - WORTH_SAYING) {
    const figures = { best: widthOf(best), given: widthOf(given) };
    const bought =
      Math.abs(thicknessSlope(best)) < LEVEL
        ? say('stock.no-longer', figures, voice)
        : say('stock.less', figures, voice);
    return `${describeRuns(best, cuts, voice)} ${bought}`;
  }
  if (follows < LEVEL) return `${say('stock.out', {}, voice)} ${describeRuns(given, cuts, voice)}`;
  // Without a ± for the stock its worst case is no wider; what the stock does is still said.
  const even = arrangements.find((each) => Math.abs(thicknessSlope(each)) < LEVEL);
  if (even !== undefined && widthOf(even) <= widthOf(given) + WORTH_SAYING)
    return `${describeRuns(even, cuts, voice)} ${say('stock.then-out', {}, voice)}`;
  return Math.abs(follows - 1) < LEVEL ? say('stock.one-for-one', {}, voice) : say('stock.in-part', {}, voice);
}

/** A gain in the worst case of less than this, mm, is not worth turning a panel over. */
const WORTH_SAYING = 0.005;

/** Clearance that follows the stock by less than this part of it does not follow it. */
const LEVEL = 1e-6;

function widthOf({ worst }: Arrangement): number {
  return worst[1] - worst[0];
}

function thicknessSlope({ sources }: Arrangement): number {
  return sources.find(({ name }) => name === 'panel.thickness')?.slope ?? 0;
}

/** "Keep the panel face down for both cuts", or cut by cut where it has to be turned. */
function describeRuns({ runs }: Pick<Arrangement, 'runs'>, cuts: Cuts, voice: Voice): string {
  const faces = runs.map((run, index): Face => {
    const { side } = cuts[index]!;
    return run === 'under' ? side : side === 'front' ? 'back' : 'front';
  });
  const listed = { runs: tellRuns(runs, cuts) };
  if (cuts.length === 1 || new Set(faces).size > 1) return say('runs.run', listed, voice);
  const many = cuts.length === 2 ? 'both' : 'all';
  // On edge the panel stands against the fence: its face is neither up nor down. Cuts that are all on edge and all on one
  // side never come here, since the stock goes into the clearance whatever is done.
  if (cuts.some(isOnEdge)) return say(`runs.keep.${faces[0]!}.on-edge-too.${many}`, listed, voice);
  return say(`runs.keep.${faces[0] === 'front' ? 'face-down' : 'face-up'}.${many}`, listed, voice);
}

function isOnEdge({ presented }: Cuts[number]): boolean {
  return presented === 90;
}

/** How each cut is run: `raise under, back relief over`. */
export function listRuns(runs: Arrangement['runs'], cuts: Cuts, voice: Voice = { units: 'mm' }): string {
  return say('runs.list', { runs: tellRuns(runs, cuts) }, voice);
}

function tellRuns(runs: Arrangement['runs'], cuts: Cuts): Said[] {
  return cuts.map((cut, index) =>
    told(isOnEdge(cut) ? 'runs.on-edge' : `runs.${runs[index] ?? 'under'}`, { cut: cut.name }),
  );
}
