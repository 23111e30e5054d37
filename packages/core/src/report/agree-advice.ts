import type { Advice, Problem } from '../problem/problem.ts';

/** A problem and what was found to put it right, the best first; null where nothing was looked for. */
export interface Found {
  readonly problem: Problem;
  readonly advice: readonly Advice[] | null;
  /** What was found asks for another value of a size that an earlier problem's advice sets: that one comes first. */
  readonly waits?: true;
}

/**
 * The same, so that no two problems ask for two values of one size. Where one piece of their advice serves all of them, all get that one;
 * else the earlier problem keeps its advice and the later one waits. Each piece that is tried is a step.
 */
export function* agreeInSteps(
  found: readonly Found[],
  serves: (advice: Advice, problem: Problem) => boolean,
): Generator<void, Found[]> {
  const agreed = [...found];
  for (const [i, { problem, advice }] of found.entries()) {
    const [first] = advice ?? [];
    if (first === undefined) continue;
    const against = agreed.slice(0, i).flatMap((each, j) => (clash(each, first) ? [j] : []));
    if (against.length === 0) continue;
    const others = agreed.slice(0, i).filter((_, j) => !against.includes(j));
    const both = [first, ...against.map((j) => agreed[j]!.advice![0]!)];
    const all = [problem, ...against.map((j) => agreed[j]!.problem)];
    let common: Advice | undefined;
    for (const each of both) {
      yield;
      if (others.some((other) => clash(other, each)) || !all.every((one) => serves(each, one))) continue;
      common = each;
      break;
    }
    if (common === undefined) {
      const left = advice!.filter((each) => !agreed.slice(0, i).some((other) => clash(other, each)));
      agreed[i] = { problem, advice: left, ...(left.length === 0 && { waits: true }) };
    } else for (const j of [...against, i]) agreed[j] = { problem: agreed[j]!.problem, advice: [common] };
  }
  return agreed;
}

/** Whether the first advice of a problem sets a size that other advice sets otherwise. */
function clash({ advice }: Found, other: Advice): boolean {
  const [first] = advice ?? [];
  return (first?.writes ?? []).some((one) =>
    other.writes.some((set) => `${set.path}` === `${one.path}` && JSON.stringify(set) !== JSON.stringify(one)),
  );
}
