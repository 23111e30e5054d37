import type { Rules } from '../shop/shop.ts';
import type { Job } from './job.ts';

/** What a file means where it leaves a thing out: every default of the job and the shop file. Lengths mm, angles degrees. */
export const DEFAULTS = {
  title: 'Untitled job',
  units: 'mm',
  sawn: 'flat',
  run: 'under',
  presented: 'flat',
  land: 0,
  shoulder: 0,
  /** An ogee turns from hollow to round halfway. */
  balance: 0.5,
  /** Clearances that part tight, sliding and loose: common practice for a panel that must move and not rattle. */
  fit: { target: 0.2, snug: 0.05, loose: 0.5 },
  spread: 0,
  pinned: true,
  quantity: 1,
  across: 1,
  up: 1,
  muntin: 0,
  grain: 'up',
  leaves: 1,
  hung: 'inset',
  /** Between an inset door and its carcase, and between two leaves: common practice. */
  doorGap: 2,
  between: 3,
  joint: 'cope',
  measured: 'wood',
  shear: 0,
  /** Degrees between the knife's face and its ground back. */
  wedge: 45,
  knives: 2,
  /** What a knife may stand out beyond its limiter on a hand-fed machine, EN 847-1. */
  limiterGap: 1.1,
  /** 5/16 in corrugated steel and 8 mm steel are one size in the trade. */
  knifeThickness: 8,
  feed: 'hand',
  reversing: false,
  jointed: false,
  /** A spindle that does not tilt. */
  tilt: [0, 0],
  rates: { margin: 0, validDays: 30 },
  rules: {
    leastEndGrainWidth: 300,
    kerf: 3.2,
    leastSideClearance: 3,
    leastClearance: 10,
    rimSpeed: [40, 70],
    leastEngagement: 4,
    /** 20 marks to the inch: what trade papers ask of a finished surface. */
    knifeMark: 1.27,
    /** Common practice. */
    fenceClearance: 3,
    edgeAllowance: 1,
    greatestBlankWidth: 600,
    /** Between the figures published for particleboard (32 to 38 N/mm²) and those for hardwood. */
    cuttingEnergy: 40,
    /** 1/16 in: shaper makers' manuals. */
    lastPass: 1.6,
    /** An inch each way, as for glue-ups. */
    overLength: 25,
    overWidth: 25,
    stripWidth: 100,
    yield: 0.65,
    overrun: 1,
    leastTongue: 3,
  },
} as const;

/** The rules of a job's shop, or their defaults. Without the two that are angles, which defaults give in degrees. */
export function rulesOf({ shop }: Pick<Job, 'shop'>): Omit<Rules, 'leastSideClearance' | 'leastClearance'> {
  return shop?.rules ?? DEFAULTS.rules;
}
