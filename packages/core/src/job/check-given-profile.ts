import type { NamedProfile, Profile } from '../profile/profile.ts';
import { above, atLeast, finite, oneOf, shown } from './given-values.ts';

const SHAPES: readonly string[] = ['rebate', 'bevel', 'cove', 'ovolo', 'ogee', 'outline'];

/** A rise of this much more than the run, as a share, is still a quarter circle. */
const ROUNDING = 1e-9;

/** A profile that can be drawn. */
export function checkProfile(at: string, profile: Profile): void {
  oneOf(`${at}.shape`, profile?.shape, SHAPES);
  if (profile.shape !== 'outline') {
    above(`${at}.reach`, profile.reach);
    above(`${at}.depth`, profile.depth);
    checkNamed(at, profile);
    return;
  }
  finite(`${at}.reach`, profile.reach);
  finite(`${at}.depth`, profile.depth);
  if (profile.chain.length === 0) throw new RangeError(`${at}.chain must hold at least one line or arc, got none`);
  profile.chain.forEach((c, index) => {
    // The sum is finite only if every figure is.
    const sum = c.x0 + c.y0 + c.x1 + c.y1 + c.cx + c.cy + c.r + c.turn;
    if (!Number.isFinite(sum)) finite(`${at}.chain[${index}]`, c);
  });
}

function checkNamed(at: string, { shape, reach, depth, land, shoulder, balance }: NamedProfile): void {
  atLeast(`${at}.land`, land, 0);
  atLeast(`${at}.shoulder`, shoulder, 0);
  if (land >= reach) throw new RangeError(`${at}.land must be less than the reach of ${reach}, got ${land}`);
  if (shoulder >= depth)
    throw new RangeError(`${at}.shoulder must be less than the depth of ${depth}, got ${shoulder}`);
  if (!(balance > 0 && balance < 1))
    throw new RangeError(`${at}.balance must lie between 0 and 1, got ${shown(balance)}`);
  const curved = shape === 'cove' || shape === 'ovolo' || shape === 'ogee';
  if (curved && depth - shoulder > (reach - land) * (1 + ROUNDING))
    throw new RangeError(
      `${at}: a ${shape} cannot rise more than it runs (${reach - land}), got a rise of ${depth - shoulder}`,
    );
}
