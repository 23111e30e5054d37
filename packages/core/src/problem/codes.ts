/** Every code of a problem that `sayProblem` gives, with how bad it is. docs/problem-codes.md explains each. */
export const SEVERITIES = {
  // The section and the fit
  'no-tongue': 'error',
  'split-edge': 'error',
  'taken-from-drawing': 'error',
  'will-not-enter': 'error',
  'stops-short': 'error',
  tight: 'warning',
  loose: 'warning',
  'sticking-in-groove': 'error',
  'no-swell-gap': 'warning',
  'raise-hidden': 'warning',
  'spread-too-large': 'warning',
  'another-unit': 'warning',
  'cut-misses': 'error',
  'feather-edge': 'warning',
  'no-lip': 'error',
  'thin-lip': 'warning',
  'raises-meet': 'error',
  // Knives
  'steel-past-foot': 'error',
  'face-never-reaches': 'error',
  'edge-meets-body': 'error',
  'edge-meets-nut': 'warning',
  'knife-wider-than-head': 'error',
  'limiter-gap': 'error',
  'limiter-never-reaches': 'warning',
  'back-rubs': 'error',
  'heel-rubs': 'warning',
  'little-clearance': 'warning',
  'no-side-clearance': 'warning',
  // Wood and seasons
  'species-missing': 'warning',
  'unknown-species': 'error',
  'width-missing': 'warning',
  'moisture-out-of-range': 'error',
  'temperature-out-of-range': 'error',
  'bottoms-out': 'warning',
  'leaves-groove': 'warning',
  'little-engagement': 'warning',
  'swells-tight': 'warning',
  'outside-coefficients': 'caution',
  'finish-before-glue-up': 'caution',
} as const;

export type ProblemCode = keyof typeof SEVERITIES;

/** Every code of a fault in a file that cannot be read: always an error. */
export const FAULT_CODES = [
  // The file itself
  'file-empty',
  'file-not-text',
  'file-too-large',
  'yaml-syntax',
  'yaml-several-documents',
  'yaml-version',
  'yaml-tag',
  'yaml-alias',
  'yaml-key',
  'yaml-too-deep',
  'yaml-too-many-values',
  'duplicate-key',
  'shop-unreadable',
  // Keys and values
  'unknown-key',
  'missing-key',
  'unknown-version',
  'empty-value',
  'wrong-type',
  'unknown-choice',
  'not-a-length',
  'not-an-angle',
  'not-a-number',
  'out-of-range',
  'out-of-order',
  'too-many',
  // Things that do not go together
  'no-cuts',
  'duplicate-cut-name',
  'profile-or-knife',
  'unknown-head',
  'unknown-knife',
  'steel-without-head',
  'steel-past-foot',
  'land-past-reach',
  'shoulder-past-depth',
  'past-quarter-circle',
  'takes-whole-edge',
  'over-on-edge',
  'groove-behind-frame',
  'groove-deeper-than-frame',
  'swell-gap-fills-groove',
  'groove-through-part',
  'door-too-small',
  'muntin-missing',
  'head-body',
  'head-rake',
  'head-shear',
  'head-wedge',
  // Outlines
  'outline-file',
  'outline-unreadable',
  'outline-empty',
  'outline-several',
  'outline-reversed',
  'outline-outside',
  'outline-crosses-itself',
  'outline-tangled',
] as const;

export type FaultCode = (typeof FAULT_CODES)[number];

export type Code = ProblemCode | FaultCode;

/** The problems that say the tongue does not go into its groove as wanted; every other error stands against the making. */
export const FIT_CODES: readonly ProblemCode[] = ['no-tongue', 'will-not-enter', 'stops-short', 'tight', 'loose'];
