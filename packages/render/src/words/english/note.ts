import { createSpeaker, type Speaker } from '@fielded/core';

/** What stands at the foot of any drawing or sheet: units, bars to check a print with, errors, and which sheet it is. */
export const NOTE_WORDS = {
  'units.mm': 'millimetres',
  'units.in': 'inches, ≈ where rounded to 1/64',
  'units.both.mm': 'millimetres, inches under the line',
  'units.both.in': 'inches, millimetres under the line',
  'bar.check': '{length}: check the print with a rule',
  'foot.caption': '{view} · {scale} · {units}',
  'status.errors.one': '1 error',
  'status.errors.more': '{errors:count} errors',
  'status.none': 'no errors',
  'status.warnings.one': 'no errors, 1 warning',
  'status.warnings.more': 'no errors, {warnings:count} warnings',
  'error.line': 'Error: {message}',
  'error.left.one': 'Error: 1 of this job; fielded check lists it.',
  'error.left.more': 'Error: {left:count} of this job; fielded check lists them.',
  'error.left.one-more': 'Error: 1 more of this job; fielded check lists it.',
  'error.left.many-more': 'Error: {left:count} more of this job; fielded check lists them.',
  'page.of': '{title}, page {page:count} of {of:count}',
  // The language's tag for a page (BCP 47), which also says from which side it is read.
  'page.language': 'en',
} as const;

/** See `Speaker`. */
export const sayNote: Speaker<typeof NOTE_WORDS>['say'] = createSpeaker(NOTE_WORDS).say;
