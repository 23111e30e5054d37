/**
 * What a file means where it leaves a thing out: every default of the job and the shop file, in the notation of the
 * files. Lengths carry their unit, so that they are the same in a file of inches.
 */
export const DEFAULTS = {
  title: 'Untitled job',
  units: 'mm',
  sawn: 'flat',
  run: 'under',
  presented: 'flat',
  land: '0 mm',
  shoulder: '0 mm',
  /** An ogee turns from hollow to round halfway. */
  balance: 0.5,
  /** Clearances that part tight, sliding and loose: common practice for a panel that must move and not rattle. */
  fit: { target: '0.2 mm', snug: '0.05 mm', loose: '0.5 mm' },
  spread: '0 mm',
  pinned: true,
  quantity: 1,
  across: 1,
  up: 1,
  muntin: '0 mm',
  measured: 'wood',
  shear: 0,
  /** Degrees between the knife's face and its ground back. */
  wedge: 45,
  knives: 2,
  /** What a knife may stand out beyond its limiter on a hand-fed machine, EN 847-1. */
  limiterGap: '1.1 mm',
  /** 5/16 in corrugated steel and 8 mm steel are one size in the trade. */
  knifeThickness: '8 mm',
  feed: 'hand',
  reversing: false,
  rates: { margin: 0, validDays: 30 },
  rules: {
    leastEndGrainWidth: '300 mm',
    kerf: '3.2 mm',
    leastSideClearance: 3,
    leastClearance: 10,
    rimSpeed: [40, 70],
    leastEngagement: '4 mm',
    leastTongue: '3 mm',
  },
} as const;
