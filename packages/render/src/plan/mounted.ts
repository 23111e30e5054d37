import type { Correction, Plan, SetUp } from '@fielded/core';

/** One set-up as its sheet shows it: one head, or two on the same spindle. */
export interface Mounted {
  /** The head that stands alone or below; what both share, such as power and what was not checked, is joined in it. */
  readonly setUp: SetUp;
  /** The head above it, with the spacer between them, mm. */
  readonly upper?: SetUp;
  readonly spacer?: number;
  readonly correction: readonly Correction[];
  /** The place of its last set-up in the plan: when it is done, the cuts up to there are made. */
  readonly last: number;
}

/** The plan's set-ups as they stand on their machines: where both heads run at once, the panel's two set-ups are one. */
export function mountAll({ setups, stack, correction }: Plan): Mounted[] {
  const both = stack?.works ? [stack.lower, stack.upper].map((cut) => findCut(setups, cut)) : [];
  const [below, above] = both as [number | undefined, number | undefined];
  return setups.flatMap((setUp, place): Mounted[] => {
    if (below === undefined || above === undefined || (place !== below && place !== above))
      return [{ setUp, correction: correction[place] ?? [], last: place }];
    if (place !== Math.min(below, above)) return [];
    const [lower, upper] = [setups[below]!, setups[above]!];
    return [
      {
        setUp: joinHeads(lower, upper),
        upper,
        spacer: stack!.spacer!,
        correction: correction[place] ?? [],
        last: Math.max(below, above),
      },
    ];
  });
}

function findCut(setups: readonly SetUp[], name: string | null): number {
  return setups.findIndex(({ cut, of }) => of === 'panel' && cut === name);
}

/** The lower head's set-up with what holds for both: powers are added, the wider gap counts, and what was not checked of either stays so. */
function joinHeads(lower: SetUp, upper: SetUp): SetUp {
  const sum = (one: SetUp['power'], other: SetUp['power']) => ({
    least: one.least + other.least,
    likely: one.likely + other.likely,
    most: one.most + other.most,
  });
  return {
    ...lower,
    assumed: lower.assumed || upper.assumed,
    rim: Math.max(lower.rim, upper.rim),
    fence: { ...lower.fence, gap: Math.max(lower.fence.gap, upper.fence.gap) },
    power: sum(lower.power, upper.power),
    powerEnd: sum(lower.powerEnd, upper.powerEnd),
    testPiece: upper.testPiece ?? lower.testPiece,
    notChecked: [...new Set([...lower.notChecked, ...upper.notChecked])],
    problems: [...lower.problems, ...upper.problems],
  };
}
