import { reachAt } from '../machining/reach-at.ts';
import { sweepProfile } from '../machining/sweep.ts';
import type { Profile } from '../profile/profile.ts';
import type { Shop } from '../shop/shop.ts';

/** A kept knife whose profile is off by no more than this, mm, is taken for the one wanted. */
const SAME_KNIFE = 0.02;

/**
 * The shop's knife that is kept in a head, was ground for work held flat, and leaves a profile to within 0.02 mm; undefined where
 * there is none. Knives whose outline was measured on the steel are not considered.
 */
export function keptKnife({ knives }: Shop, head: string, profile: Profile): string | undefined {
  const near = (a: number, b: number) => Math.abs(a - b) <= SAME_KNIFE;
  const found = Object.entries(knives).find(
    ([, knife]) =>
      knife.head === head &&
      knife.measured === 'wood' &&
      !knife.presented &&
      near(knife.profile.reach, profile.reach) &&
      near(knife.profile.depth, profile.depth) &&
      leavesSame(knife.profile, profile),
  );
  return found?.[0];
}

/** Depths at which two profiles are compared. */
const DEPTHS = 64;

/** Compared by how far in they reach at each depth: a cope is undercut, and its depth at each distance from the edge says little. */
function leavesSame(one: Profile, other: Profile): boolean {
  if (JSON.stringify(one) === JSON.stringify(other)) return true;
  const [a, b] = [sweepProfile(one), sweepProfile(other)];
  const deepest = Math.min(one.depth, other.depth);
  for (let i = 0; i < DEPTHS; i++) {
    const depth = ((i + 0.5) * deepest) / DEPTHS;
    if (Math.abs(reachAt(a, depth) - reachAt(b, depth)) > SAME_KNIFE) return false;
  }
  return true;
}
