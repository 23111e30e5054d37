import type { Door } from '../door/door.ts';
import type { FitLimits, Frame } from '../joint/frame.ts';
import type { Panel } from '../joint/panel.ts';
import type { Cut } from '../machining/cut.ts';
import { toRadians } from '../measure/angle.ts';
import type { NamedProfile, OutlineProfile } from '../profile/profile.ts';
import type { Rules, Shop } from '../shop/shop.ts';
import type { Season, SpreadLimits } from '../spread/limits.ts';
import { checkGivenJob } from './check-given-job.ts';
import { DEFAULTS } from './defaults.ts';
import { fillOpenings } from './fill-openings.ts';
import { groupAt, listAt } from './given-values.ts';
import type { Job } from './job.ts';

/** All of `Needed` must be given, the rest of `T` may be. */
type Needs<T, Needed extends keyof T> = Pick<T, Needed> & Partial<T>;

/** A profile made by hand: land and shoulder are 0 and an ogee turns halfway unless it says otherwise. */
export type GivenProfile = Needs<NamedProfile, 'shape' | 'reach' | 'depth'> | OutlineProfile;

/** A cut made by hand: set to its profile's own depth and reach, under the stock, flat on the table, unless it says otherwise. */
export type GivenCut = Needs<Omit<Cut, 'profile'>, 'side'> & { readonly profile: GivenProfile };

/** A job made by hand: it needs what a job file needs. Lengths mm, angles radians. */
export interface GivenJob
  extends Partial<Omit<Job, 'panel' | 'frame' | 'cuts' | 'fit' | 'spread' | 'season' | 'doors' | 'shop'>> {
  readonly panel: Needs<Panel, 'thickness'>;
  readonly frame: Omit<Frame, 'sticking'> & { readonly sticking?: GivenProfile };
  readonly cuts: readonly GivenCut[];
  readonly fit?: Partial<FitLimits>;
  readonly spread?: Partial<SpreadLimits>;
  readonly season?: Needs<Season, 'made' | 'driest' | 'dampest'>;
  readonly doors?: readonly Needs<Door, 'width' | 'height' | 'stile' | 'rail'>[];
  readonly shop?: Partial<Shop>;
}

/**
 * A job ready to evaluate from one that was made by hand: checked, and filled in as a file is.
 *
 * A job from `readJob` comes back as it was. Everything else of the engine may then rely on its figures.
 *
 * @throws RangeError for a job without cuts, a figure that is not finite, or one outside what a file may hold: the message
 * names the figure and the value.
 * @example acceptJob({ panel: { thickness: 20 }, frame, cuts: [{ side: 'front', profile }] }).cuts[0].name // 'cut 1'
 */
export function acceptJob(given: GivenJob): Job {
  const job = fillIn(given);
  checkGivenJob(job);
  return job;
}

function fillIn(given: GivenJob): Job {
  const { panel, frame, cuts, fit, spread, season, doors, shop } = given;
  const { sticking } = frame ?? {};
  return {
    ...(given as Job),
    title: given.title ?? DEFAULTS.title,
    units: given.units ?? DEFAULTS.units,
    panel: { ...panel, measured: panel?.measured ?? panel?.thickness, sawn: panel?.sawn ?? DEFAULTS.sawn },
    frame: { ...frame, ...(sticking && { sticking: fillProfile(sticking) }) } as Frame,
    cuts: listAt('cuts', cuts).map(fillCut),
    fit: { ...DEFAULTS.fit, ...fit },
    ...(spread && { spread: { ...NO_SPREAD, ...spread } }),
    ...(season && { season: { ...season, pinned: season.pinned ?? DEFAULTS.pinned } }),
    doors: listAt('doors', doors).map(fillDoor),
    ...(shop !== undefined && { shop: fillShop(shop) }),
  };
}

const NO_SPREAD: SpreadLimits = { thickness: 0, height: 0, fence: 0, grooveWidth: 0, film: 0 };

function fillCut(given: GivenCut, index: number): Cut {
  const profile = groupAt(`cuts[${index}].profile`, groupAt(`cuts[${index}]`, given).profile);
  return {
    ...given,
    profile: fillProfile(profile),
    name: given.name ?? `cut ${index + 1}`,
    depth: given.depth ?? profile.depth,
    reach: given.reach ?? profile.reach,
    run: given.run ?? DEFAULTS.run,
    tilt: given.tilt ?? 0,
  };
}

function fillProfile(given: GivenProfile): Cut['profile'] {
  if (given.shape === 'outline') return given;
  const { land = DEFAULTS.land, shoulder = DEFAULTS.shoulder, balance = DEFAULTS.balance } = given;
  return { ...given, land, shoulder, balance };
}

const RULES: Rules = {
  ...DEFAULTS.rules,
  leastSideClearance: toRadians(DEFAULTS.rules.leastSideClearance),
  leastClearance: toRadians(DEFAULTS.rules.leastClearance),
};

/** A shop made by hand may hold as little as a file: nothing but a head, say. One that lacks nothing stays the same object. */
function fillShop(given: Partial<Shop>): Shop {
  const { units, knives, heads, machines, rules } = groupAt('shop', given);
  if (units && knives && heads && machines && rules) return given as Shop;
  const left = (Object.keys(RULES) as (keyof Rules)[]).filter((rule) => rules?.[rule] === undefined);
  return {
    units: 'mm',
    knives: {},
    heads: {},
    machines: {},
    ...given,
    rules: { ...RULES, ...rules },
    ...(left.length > 0 && { assumedRules: left }),
  };
}

function fillDoor(given: NonNullable<GivenJob['doors']>[number], index: number): Door {
  return { ...given, ...fillOpenings(given), name: given.name ?? `door ${index + 1}` };
}
