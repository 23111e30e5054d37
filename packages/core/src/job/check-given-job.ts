import { type Door, layOpenings } from '../door/door.ts';
import { type DoorHead, findHeadFault } from '../door/head.ts';
import type { Frame } from '../joint/frame.ts';
import type { Cut } from '../machining/cut.ts';
import type { NamedProfile, Profile } from '../profile/profile.ts';
import type { Moisture } from '../wood/moisture.ts';
import { MOST_MOISTURE } from '../wood/movement.ts';
import type { Job } from './job.ts';

const SHAPES: readonly string[] = ['rebate', 'bevel', 'cove', 'ovolo', 'ogee', 'outline'];

/** A rise of this much more than the run, as a share, is still a quarter circle. */
const ROUNDING = 1e-9;

/**
 * Refuses a job that no file could hold and the engine cannot compute: what a caller got wrong, not what a maker did.
 *
 * @throws RangeError that names the first such figure and its value.
 */
export function checkGivenJob({ panel, frame, cuts, fit, spread, season, doors, shop, ...rest }: Job): void {
  oneOf('units', rest.units, ['mm', 'in']);
  above('panel.thickness', panel.thickness);
  above('panel.measured', panel.measured);
  if (panel.width !== undefined) above('panel.width', panel.width);
  oneOf('panel.sawn', panel.sawn, ['flat', 'quarter']);
  checkFrame(frame);
  if (cuts.length === 0) throw new RangeError('cuts must hold at least one cut, got none');
  cuts.forEach(checkCut);
  finite('fit', fit);
  if (fit.snug > fit.loose) throw new RangeError(`fit.snug must be no more than fit.loose, got ${fit.snug}`);
  if (spread !== undefined) finite('spread', spread);
  if (season !== undefined)
    for (const state of ['made', 'driest', 'dampest'] as const) checkMoisture(`season.${state}`, season[state]);
  doors.forEach(checkDoor);
  if (shop === undefined) return;
  finite('shop.rules', shop.rules);
  finite('shop.machines', shop.machines);
  for (const { head } of cuts) {
    if (head !== undefined && Object.hasOwn(shop.heads, head)) finite(`shop.heads.${head}`, shop.heads[head]);
  }
}

function checkFrame({ thickness, groove, swellGap, sticking }: Frame): void {
  above('frame.thickness', thickness);
  above('frame.groove.width', groove?.width);
  above('frame.groove.depth', groove.depth);
  atLeast('frame.groove.setback', groove.setback, 0);
  atLeast('frame.swellGap', swellGap, 0);
  if (swellGap >= groove.depth)
    throw new RangeError(`frame.swellGap must be less than the groove's depth of ${groove.depth}, got ${swellGap}`);
  if (sticking !== undefined) checkProfile('frame.sticking', sticking);
}

function checkCut({ side, profile, depth, reach, run, tilt }: Cut, index: number): void {
  const at = `cuts[${index}]`;
  oneOf(`${at}.side`, side, ['front', 'back']);
  oneOf(`${at}.run`, run, ['under', 'over']);
  checkProfile(`${at}.profile`, profile);
  // A knife measured off the steel may leave nothing in the wood as it is held: an outline is as deep as it comes out.
  const size = profile.shape === 'outline' ? finite : above;
  size(`${at}.depth`, depth);
  size(`${at}.reach`, reach);
  if (!(tilt >= 0 && tilt <= Math.PI / 2))
    throw new RangeError(`${at}.tilt must be 0 to π/2 radians, got ${shown(tilt)}`);
}

function checkProfile(at: string, profile: Profile): void {
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
    // Any figure that is not finite shows in the sum.
    if (!Number.isFinite(c.x0 + c.y0 + c.x1 + c.y1 + c.cx + c.cy + c.r + c.turn)) finite(`${at}.chain[${index}]`, c);
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

function checkMoisture(at: string, moisture: Moisture): void {
  if (typeof moisture === 'number') {
    if (!(moisture >= 0 && moisture <= MOST_MOISTURE))
      throw new RangeError(`${at} must be 0 to ${MOST_MOISTURE} % of moisture, got ${moisture}`);
    return;
  }
  finite(at, moisture);
  if (!(moisture.humidity >= 0 && moisture.humidity <= 100))
    throw new RangeError(`${at}.humidity must be 0 to 100 %, got ${moisture.humidity}`);
}

function checkDoor(door: Door, index: number): void {
  const at = `doors[${index}]`;
  finite(at, door);
  for (const key of ['quantity', 'across', 'up'] as const) {
    const count = door[key];
    if (count !== undefined && !(Number.isInteger(count) && count > 0))
      throw new RangeError(`${at}.${key} must be a whole number above 0, got ${count}`);
  }
  if (door.head !== undefined) checkHead(`${at}.head`, door.head, door);
}

/** A head that can be drawn: radii above 0, over the one opening of the top row. */
function checkHead(at: string, head: DoorHead, door: Door): void {
  oneOf(`${at}.shape`, head.shape, ['arch', 'cathedral', 'outline']);
  above(`${at}.rise`, head.rise);
  if (head.shape === 'cathedral') {
    above(`${at}.crown`, head.crown);
    above(`${at}.ears`, head.ears);
  }
  const [opening, ...others] = layOpenings(door).filter(({ row }) => row === 0);
  if (others.length > 0 || door.grain === 'across' || opening === undefined || head.rise >= opening.height)
    throw new RangeError(`${at} needs one upright panel in the top row, higher than its rise, got ${door.name}`);
  const fault = findHeadFault(head, opening.width);
  if (fault !== null) throw new RangeError(`${at} does not fit an opening ${opening.width} wide: ${fault}`);
}

function above(at: string, value: number): void {
  if (!(Number.isFinite(value) && value > 0)) throw new RangeError(`${at} must be above 0, got ${shown(value)}`);
}

function atLeast(at: string, value: number, least: number): void {
  if (!(Number.isFinite(value) && value >= least))
    throw new RangeError(`${at} must be ${least} or more, got ${shown(value)}`);
}

function oneOf(at: string, value: string, known: readonly string[]): void {
  if (!known.includes(value)) throw new RangeError(`${at} must be one of ${known.join(', ')}, got ${shown(value)}`);
}

/** Every number in a value, however deep, is one that can be computed with. */
function finite(at: string, value: unknown): void {
  if (typeof value === 'number') {
    if (!Number.isFinite(value)) throw new RangeError(`${at} must be a finite number, got ${value}`);
    return;
  }
  if (typeof value !== 'object' || value === null) return;
  for (const key in value) {
    const inner = (value as Record<string, unknown>)[key];
    // The path is put together only where there is something to say or to look into.
    if (typeof inner === 'object' || (typeof inner === 'number' && !Number.isFinite(inner)))
      finite(Array.isArray(value) ? `${at}[${key}]` : `${at}.${key}`, inner);
  }
}

function shown(value: unknown): string {
  return typeof value === 'string' ? `"${value}"` : String(value);
}
