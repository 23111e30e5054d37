import type { Way } from './plan.ts';
import type { Judged } from './ways.ts';
import type { Work } from './work.ts';

/** One way of making a cut as the report gives it, `chosen` being the way of each of the panel's cuts. */
export function reportWay(way: Judged, works: readonly Work[], chosen: readonly (Judged | undefined)[]): Way {
  const { work, machineName, run, rotation, against, warnings } = way;
  return {
    cut: work.cut.name,
    machine: machineName,
    head: work.headName,
    run,
    rotation,
    works: against.length === 0,
    against: against.map(({ code }) => code),
    problems: [...against, ...warnings],
    tonguePerStock: tonguePerStock(way, works, chosen),
  };
}

/**
 * Change of the tongue's thickness for each mm of stock: the whole of it, less once for each side whose deepest cut at the edge
 * is run over the stock and so follows it (formula 3).
 */
function tonguePerStock(way: Judged, works: readonly Work[], chosen: readonly (Judged | undefined)[]): number | null {
  if (way.work.of === 'frame') return null;
  const follows = (side: 'front' | 'back') => {
    const mine = works.filter((work) => work.of === 'panel' && work.cut.side === side);
    if (mine.length === 0) return 0;
    const deepest = mine.reduce((one, other) => (other.atEdge > one.atEdge ? other : one));
    const run = deepest === way.work ? way.run : (chosen[works.indexOf(deepest)]?.run ?? deepest.cut.run);
    return run === 'over' && deepest.cut.tilt !== Math.PI / 2 ? 1 : 0;
  };
  return 1 - follows('front') - follows('back');
}
