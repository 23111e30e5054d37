import type { Job } from '../job/job.ts';
import { copeProfile } from '../joint/cope.ts';
import { canBeGround } from '../knife/can-be-ground.ts';
import { type GroundFor, headForHand, USUAL_ROTATION } from '../knife/hand.ts';
import { keptKnife } from '../knife/kept-knife.ts';
import { makeKnife } from '../knife/knife.ts';
import type { KnifeOrder } from '../knife/knife-order.ts';
import type { KnifeReport } from '../knife/knife-report.ts';
import { AS_DRAWN } from '../knife/set-steel.ts';
import { steelReach, woodProfile } from '../knife/wood-profile.ts';
import type { Cut } from '../machining/cut.ts';
import { depthTaken } from '../machining/datum.ts';
import type { Language } from '../problem/language.ts';
import type { Problem } from '../problem/problem.ts';
import { sayProblem } from '../problem/say.ts';
import { type Head, headNamed, type Shop, type ShopKnife } from '../shop/shop.ts';
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

/** The frame's own knives, each where the job names the head it is run in: the sticking and its counter-profile, and the back's arris. */
function ordersForFrame({ frame, units, terms, language, cuts }: Job, shop: Shop): KnifeOrder[] {
  const { stickingHead, backEdge } = frame;
  const wanted = [
    { name: 'cope', headName: stickingHead, profile: copeProfile(frame), at: 'frame.sticking.head' },
    { name: 'sticking', headName: stickingHead, profile: frame.sticking, at: 'frame.sticking.head' },
    { name: 'back edge', headName: backEdge?.head, profile: backEdge?.profile, at: 'frame.backEdge.head' },
  ];
  return wanted.flatMap(({ name, headName, profile, at }) => {
    const head = headNamed(shop, headName);
    // A cut that the job calls so comes before it.
    if (headName === undefined || !head || !profile || cuts.some((cut) => cut.name === name)) return [];
    const voice = { units, ...(terms && { terms }), ...(language && { language }) };
    const kept = keptKnife(shop, headName, profile);
    const made = shared(shop, kept ?? null, kept === undefined ? undefined : shop.knives[kept]);
    return [{ ...made, ...voice, name, headName, head, profile, tilt: 0, setting: AS_DRAWN, at }];
  });
}

/**
 * Every knife of a shop that names its head, with the panel held as it was ground for, else flat; the others are left out, since without a
 * head their steel is not known. `only` asks for the one so called.
 */
export function reportShopKnives(shop: Shop, only?: string, language?: Language): Knives {
  const orders: KnifeOrder[] = [];
  const refused = new Map<string, Problem>();
  for (const [name, knife] of Object.entries(shop.knives)) {
    const head = headNamed(shop, knife.head);
    if (head === undefined || (only !== undefined && name !== only)) continue;
    const fault = steelFault(shop, name, knife, head, language);
    if (fault) {
      refused.set(name, fault);
      continue;
    }
    orders.push({
      ...shared(shop, name, knife),
      name,
      headName: knife.head!,
      head,
      profile: woodOf(knife, head, knife.presented ?? 0),
      tilt: knife.presented ?? 0,
      setting: AS_DRAWN,
      units: shop.units,
      ...(language && { language }),
      at: `knives.${name}`,
    });
  }
  const faults = [...refused.values()];
  const made = gather(orders.map(makeNamed));
  return {
    reports: made.reports,
    problems: [...faults, ...made.problems],
    refused: new Map([...refused, ...made.refused]),
  };
}

/** What is wrong with a knife that was measured off the steel, longer than its head's face is; undefined where nothing is. */
export function steelFault(
  { units }: Shop,
  name: string,
  knife: ShopKnife,
  head: Head,
  language?: Language,
): Problem | undefined {
  if (knife.measured === 'wood') return undefined;
  const { length, most } = steelReach(knife.profile, headForHand(head, hand(knife)), knife.presented ?? 0);
  if (length <= most) return undefined;
  const figures = { knife: name, length, most, head: knife.head ?? '' };
  const voice = { units, ...(language && { language }) };
  return sayProblem('steel-past-foot', `knives.${name}`, figures, voice, { about: { knife: name } });
}

/** What a shop's knife leaves in the wood: its profile, or what its steel cuts in that head. */
export function woodOf(knife: ShopKnife, head: Head, tilt: number): ShopKnife['profile'] {
  return knife.measured === 'knife' ? woodProfile(knife.profile, headForHand(head, hand(knife)), tilt) : knife.profile;
}

/** What a knife is ground for; the usual way where the shop does not say. */
function hand({ groundFor }: ShopKnife, run: GroundFor['run'] = 'under'): GroundFor {
  return groundFor ?? { run, rotation: USUAL_ROTATION };
}

function orderForCut(job: Job, cut: Cut, at: string, shop: Shop): KnifeOrder | undefined {
  const head = headNamed(shop, cut.head);
  if (head === undefined) return undefined;
  const knife = cut.knife === undefined ? undefined : shop.knives[cut.knife];
  const { profile, tilt } = cut;
  return {
    ...shared(shop, cut.knife ?? null, knife, cut.run),
    name: cut.name,
    headName: cut.head!,
    head,
    profile,
    tilt,
    setting: {
      right: cut.reach - profile.reach,
      down: cut.depth - profile.depth,
      deeper: Math.max(0, depthTaken(cut, job.panel) - cut.depth),
    },
    units: job.units,
    ...(job.terms && { terms: job.terms }),
    ...(job.language && { language: job.language }),
    at,
  };
}

function shared(shop: Shop, name: string | null, knife: ShopKnife | undefined, run: GroundFor['run'] = 'under') {
  return {
    knife: name,
    groundFor: knife === undefined ? ({ run, rotation: USUAL_ROTATION } as const) : hand(knife, run),
    assumed: knife?.groundFor === undefined,
    ...(knife?.sideRelief !== undefined && { sideRelief: knife.sideRelief }),
    ...(knife?.measured === 'knife' && { steel: knife.profile }),
    rules: shop.rules,
    machines: shop.machines,
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
