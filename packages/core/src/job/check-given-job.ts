import { type Door, layOpenings } from '../door/door.ts';
import { findShapedHeadFault, type ShapedHead } from '../door/shaped-head.ts';
import type { Cut } from '../machining/cut.ts';
import type { Language } from '../problem/language.ts';
import type { Moisture } from '../wood/moisture.ts';
import { MOST_MOISTURE } from '../wood/movement.ts';
import { checkFrame } from './check-given-frame.ts';
import { checkProfile } from './check-given-profile.ts';
import { checkShop } from './check-given-shop.ts';
import { above, atLeast, finite, groupAt, oneOf, shown, textAt } from './given-values.ts';
import type { Job } from './job.ts';

/**
 * Refuses a job that no file could hold and the engine cannot compute: what a caller got wrong, not what a maker did.
 *
 * @throws RangeError that names the first such figure and its value.
 */
export function checkGivenJob({ panel, frame, cuts, fit, spread, season, doors, shop, ...rest }: Job): void {
  textAt('title', rest.title);
  oneOf('units', rest.units, ['mm', 'in']);
  if (rest.terms !== undefined) oneOf('terms', rest.terms, ['british', 'american']);
  if (rest.language !== undefined) checkLanguage(rest.language);
  above('panel.thickness', panel.thickness);
  above('panel.measured', panel.measured);
  if (panel.width !== undefined) above('panel.width', panel.width);
  if (panel.species !== undefined) textAt('panel.species', panel.species);
  if (panel.film !== undefined) atLeast('panel.film', panel.film, 0);
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
  if (shop !== undefined) checkShop(shop);
}

function checkLanguage({ decimal, sentences }: Language): void {
  oneOf('language.decimal', decimal, ['.', ',']);
  groupAt('language.sentences', sentences);
}

function checkCut({ name, side, profile, depth, reach, run, tilt }: Cut, index: number): void {
  const at = `cuts[${index}]`;
  textAt(`${at}.name`, name);
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

function checkMoisture(at: string, given: Moisture | undefined): void {
  if (typeof given === 'number') {
    if (!(given >= 0 && given <= MOST_MOISTURE))
      throw new RangeError(`${at} must be 0 to ${MOST_MOISTURE} % of moisture, got ${given}`);
    return;
  }
  const moisture = groupAt(at, given);
  finite(at, moisture);
  if (moisture.temperature === undefined) throw new RangeError(`${at}.temperature must be a number, got undefined`);
  if (!(moisture.humidity >= 0 && moisture.humidity <= 100))
    throw new RangeError(`${at}.humidity must be 0 to 100 %, got ${moisture.humidity}`);
}

function checkDoor(door: Door, index: number): void {
  const at = `doors[${index}]`;
  finite(at, door);
  textAt(`${at}.name`, door.name);
  for (const key of ['width', 'height', 'stile', 'rail'] as const) above(`${at}.${key}`, door[key]);
  for (const key of ['quantity', 'across', 'up'] as const) {
    const count = door[key];
    if (count !== undefined && !(Number.isInteger(count) && count > 0))
      throw new RangeError(`${at}.${key} must be a whole number above 0, got ${count}`);
  }
  if (door.head !== undefined) checkShapedHead(`${at}.head`, door.head, door);
}

/** A shaped head that can be drawn: radii above 0, over the one opening of the top row. */
function checkShapedHead(at: string, shaped: ShapedHead, door: Door): void {
  oneOf(`${at}.shape`, shaped.shape, ['arch', 'cathedral', 'outline']);
  above(`${at}.rise`, shaped.rise);
  if (shaped.shape === 'cathedral') {
    above(`${at}.crown`, shaped.crown);
    above(`${at}.ears`, shaped.ears);
  }
  const [opening, ...others] = layOpenings(door).filter(({ row }) => row === 0);
  if (others.length > 0 || door.grain === 'across' || opening === undefined || shaped.rise >= opening.height)
    throw new RangeError(`${at} needs one upright panel in the top row, higher than its rise, got ${door.name}`);
  const fault = findShapedHeadFault(shaped, opening.width);
  if (fault !== null) throw new RangeError(`${at} does not fit an opening ${opening.width} wide: ${fault}`);
}
