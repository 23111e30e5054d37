import type { Job } from '../job/job.ts';
import { canBeGround } from '../knife/can-be-ground.ts';
import { makeKnife } from '../knife/knife.ts';
import type { KnifeOrder } from '../knife/knife-order.ts';
import type { KnifeReport } from '../knife/knife-report.ts';
import type { Cut } from '../machining/cut.ts';
import type { Language } from '../problem/language.ts';
import type { Problem } from '../problem/problem.ts';
import type { Shop } from '../shop/shop.ts';
import { orderForCut, ordersForFrame, ordersOfShop } from './knife-orders.ts';
import type { PreparedJob } from './prepared-job.ts';
import { runToEnd } from './steps.ts';

/** The knives of a job or a shop, and what is wrong with them. */
export interface Knives {
  readonly reports: readonly KnifeReport[];
  readonly problems: readonly Problem[];
  /** Why a knife could not be computed, by the name of its cut or its own. */
  readonly refused: ReadonlyMap<string, Problem>;
}

/** What was made of a knife's order. */
type Made = ReturnType<typeof makeKnife>;

/** Knives that were made for cuts of one panel and shop, by the cut, so that a job tried with some of the same cuts makes only the others. */
export type MadeForCuts = Map<Cut, Made>;

/**
 * The knife for each cut that names a head, in running order; undefined where none does. `name` asks for one alone: of the
 * cut so called, or the shop's knife so called.
 */
export function answerKnives(
  { job }: Pick<PreparedJob, 'job'>,
  name?: string,
  known?: MadeForCuts,
): Knives | undefined {
  return runToEnd(answerKnivesInSteps({ job }, name, known));
}

/** The same, each knife a step. Those that are in `known` are not made again, and those that are not are added. */
export function* answerKnivesInSteps(
  { job }: Pick<PreparedJob, 'job'>,
  name?: string,
  known: MadeForCuts = new Map(),
): Generator<void, Knives | undefined> {
  if (job.shop === undefined) return undefined;
  const made: NamedKnife[] = [];
  for (const [index, cut] of job.cuts.entries()) {
    if (name !== undefined && cut.name !== name && cut.knife !== name) continue;
    const order = orderForCut(job, cut, `cuts[${index}].head`, job.shop);
    if (order === undefined) continue;
    const knife = known.get(cut) ?? makeKnife(order);
    known.set(cut, knife);
    made.push({ name: cut.name, ...knife });
    yield;
  }
  const forFrame = ordersForFrame(job, job.shop).filter((order) => name === undefined || order.name === name);
  made.push(...forFrame.map(makeNamed));
  return made.length === 0 ? undefined : gather(made);
}

/** Whether a knife for a cut can be ground for the head it names: whether the knife made for it alone would have no error. */
export function canGrindFor(job: Job, cut: Cut): boolean {
  const order = job.shop && orderForCut(job, cut, 'cuts[0].head', job.shop);
  return order !== undefined && canBeGround(order);
}

/**
 * Every knife of a shop that names its head, with the panel held as it was ground for, else flat; the others are left out, since without a
 * head their steel is not known. `only` asks for the one so called.
 */
export function reportShopKnives(shop: Shop, only?: string, language?: Language): Knives {
  const orders = ordersOfShop(shop, only, language);
  const made = gather(orders.flatMap((each) => ('order' in each ? [makeNamed(each.order)] : [])));
  const faults = orders.flatMap((each) => ('fault' in each ? [[each.name, each.fault] as const] : []));
  return {
    reports: made.reports,
    problems: [...faults.map(([, fault]) => fault), ...made.problems],
    refused: new Map([...faults, ...made.refused]),
  };
}

interface NamedKnife extends Made {
  readonly name: string;
}

function makeNamed(order: KnifeOrder): NamedKnife {
  return { name: order.name, ...makeKnife(order) };
}

function gather(made: readonly NamedKnife[]): Knives {
  return {
    reports: made.flatMap(({ knife }) => (knife ? [knife] : [])),
    problems: made.flatMap(({ problems }) => problems),
    // The last problem is the one that keeps the knife from being computed.
    refused: new Map(made.flatMap(({ name, knife, problems }) => (knife ? [] : [[name, problems.at(-1)!]]))),
  };
}
