import { isTurnedOver, type Judged } from './ways.ts';

/** What one cut may be made with: ways that nothing stands against, the best first; empty where there is none. */
type Choices = readonly Judged[];

/**
 * Chooses a way for every cut: as few set-ups as there can be, then the best ways.
 *
 * Panels that are run twice, ends in blanks and then long edges, save a set-up for every machine that still stands as it was:
 * `spread` asks for as many machines in use as possible (formula U10). Otherwise each cut takes its best way. undefined for
 * a cut that nothing can make.
 */
export function chooseWays(ways: readonly (readonly Judged[])[], spread: boolean): (Judged | undefined)[] {
  const choices = ways.map(sortWorking);
  const best = choices.map(([first]) => first);
  if (!spread) return best;
  const held = assignMachines(choices);
  return choices.map((mine, k) => mine.find(({ machineName }) => machineName === held[k]) ?? best[k]);
}

/** The ways that work, best first: as the job says where that works at all. */
function sortWorking(ways: readonly Judged[]): Choices {
  const working = ways.filter(({ against }) => against.length === 0);
  const asGiven = working.filter(({ work, run }) => run === work.cut.run);
  return [...(asGiven.length > 0 ? asGiven : working)].sort(compareWays);
}

/** What spoils least, then the fewest changes, then the least effect of the stock, then the cutter under the wood. */
function compareWays(one: Judged, other: Judged): number {
  const [a, b] = [rank(one), rank(other)];
  for (let k = 0; k < a.length; k++) if (a[k] !== b[k]) return a[k]! - b[k]!;
  return 0;
}

function rank(way: Judged): number[] {
  const changes = Number(isTurnedOver(way)) + Number(way.rotation === 'clockwise');
  // Over the stock the depth follows its thickness. Common practice keeps the cutter under the wood.
  return [way.warnings.length, changes, Number(way.run === 'over')];
}

/** A machine for as many cuts as possible, no machine for two: augmenting paths, each cut trying its best machines first. */
function assignMachines(choices: readonly Choices[]): (string | undefined)[] {
  const heldBy = new Map<string, number>();
  const place = (cut: number, tried: Set<string>): boolean => {
    for (const { machineName } of choices[cut]!) {
      if (tried.has(machineName)) continue;
      tried.add(machineName);
      const holder = heldBy.get(machineName);
      if (holder !== undefined && !place(holder, tried)) continue;
      heldBy.set(machineName, cut);
      return true;
    }
    return false;
  };
  for (const cut of choices.keys()) place(cut, new Set());
  const held: (string | undefined)[] = choices.map(() => undefined);
  for (const [machine, cut] of heldBy) held[cut] = machine;
  return held;
}
