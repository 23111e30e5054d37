import type { Job } from '../job/job.ts';
import { copeProfile } from '../joint/cope.ts';
import { type GroundFor, headForHand, USUAL_ROTATION } from '../knife/hand.ts';
import { keptKnife } from '../knife/kept-knife.ts';
import type { KnifeOrder } from '../knife/knife-order.ts';
import { AS_DRAWN } from '../knife/set-steel.ts';
import { steelReach, woodProfile } from '../knife/wood-profile.ts';
import type { Cut } from '../machining/cut.ts';
import { depthTaken } from '../machining/datum.ts';
import type { Language } from '../problem/language.ts';
import type { Problem } from '../problem/problem.ts';
import { sayProblem } from '../problem/say.ts';
import { type Head, headNamed, type Shop, type ShopKnife } from '../shop/shop.ts';

/** The order for the knife of a cut; undefined where the shop has no head of the name that the cut gives. */
export function orderForCut(job: Job, cut: Cut, at: string, shop: Shop): KnifeOrder | undefined {
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

/** The frame's own knives, each where the job names the head it is run in: the sticking and its counter-profile, and the back's arris. */
export function ordersForFrame({ frame, units, terms, language, cuts }: Job, shop: Shop): KnifeOrder[] {
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

/** The order for a knife of a shop, or why it cannot be made. */
type ShopOrder = { readonly order: KnifeOrder } | { readonly name: string; readonly fault: Problem };

/** The orders for the knives of a shop that name their head, each with the panel held as it was ground for; or why one cannot be made. */
export function ordersOfShop(shop: Shop, only?: string, language?: Language): ShopOrder[] {
  return Object.entries(shop.knives).flatMap(([name, knife]): ShopOrder[] => {
    const head = headNamed(shop, knife.head);
    if (head === undefined || (only !== undefined && name !== only)) return [];
    const fault = steelFault(shop, name, knife, head, language);
    if (fault) return [{ name, fault }];
    const order = {
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
    };
    return [{ order }];
  });
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

/** What the orders have in common: the knife as the shop has it, and what it is ground for. */
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
