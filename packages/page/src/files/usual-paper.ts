import type { OfficePaper } from '@fielded/render';

/** Regions whose offices print on Letter: paperSize in the measurement data of Unicode CLDR. */
const ON_LETTER = 'BZ CA CL CO CR GT MX NI PA PH PR SV US VE';

/** What is printed on where the reader's browser is set up for, until another paper is chosen. */
export function usualPaper(): OfficePaper {
  const [, region] = /-([A-Z]{2})\b/.exec(navigator.language) ?? [];
  return region !== undefined && ON_LETTER.includes(region) ? 'letter' : 'a4';
}
