import { formatLength } from '../measure/format.ts';
import type { Arrangement } from '../spread/arrangements.ts';
import type { SpreadReport } from '../spread/report.ts';
import type { Report } from './report.ts';

type Cuts = Report['section']['cuts'];
type Face = 'front' | 'back';

/**
 * Which face to keep on the table, and what turning the panel over would buy: "Keep the panel face down for both cuts: stock
 * thickness then no longer matters." Run under, the worked face lies on the table; over, the other one.
 */
export function adviseRuns({ arrangements }: SpreadReport, cuts: Cuts, units: Report['units']): string {
  const given = arrangements.find((arrangement) => arrangement.given)!;
  const best = arrangements[0]!;
  const width = ({ worst }: Arrangement) => worst[1] - worst[0];
  const say = (mm: number) => formatLength(mm, units);
  const better = arrangements.length > 1 && width(best) < width(given) - WORTH_SAYING;
  const follows = thicknessSlope(given);
  if (better) {
    const stock = Math.abs(thicknessSlope(best)) < 1e-6 ? 'no longer matters' : 'matters less';
    return `${capital(describeRuns(best, cuts))}: stock thickness then ${stock}, and at the very worst the clearance differs by ${say(width(best))} instead of ${say(width(given))}.`;
  }
  if (Math.abs(follows) < 1e-6) {
    return `Stock thickness does not matter to the clearance as the cuts are run: ${describeRuns(given, cuts)}.`;
  }
  return `Stock thickness goes ${Math.abs(Math.abs(follows) - 1) < 1e-6 ? 'one for one' : 'in part'} into the clearance, and running the cuts another way does not help: have the stock even.`;
}

/** A narrower worst case by less than this, mm, is not worth turning a panel over for. */
const WORTH_SAYING = 0.005;

function thicknessSlope({ sources }: Arrangement): number {
  return sources.find(({ name }) => name === 'panel.thickness')?.slope ?? 0;
}

/** "keep the panel face down for both cuts", or cut by cut where it has to be turned. */
function describeRuns({ runs }: Pick<Arrangement, 'runs'>, cuts: Cuts): string {
  const faces = runs.map((run, index): Face => {
    const { side } = cuts[index]!;
    return run === 'under' ? side : side === 'front' ? 'back' : 'front';
  });
  const count = cuts.length === 2 ? 'both cuts' : 'every cut';
  if (cuts.length > 1 && new Set(faces).size === 1) {
    return `keep the panel ${faces[0] === 'front' ? 'face down' : 'face up'} for ${count} (${listRuns(runs, cuts)})`;
  }
  return `run ${listRuns(runs, cuts)}`;
}

/** How each cut is run: `raise under, back relief over`. */
export function listRuns(runs: Arrangement['runs'], cuts: Cuts): string {
  return cuts.map(({ name, presented }, index) => `${name} ${presented === 90 ? 'on edge' : runs[index]}`).join(', ');
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
