/** A small sound job to break in one place at a time. */
export const SOUND = `fielded: 1
title: Test
panel:
  thickness: 20
frame:
  thickness: 22
  groove: { width: 6.4, depth: 11, setback: 7.5 }
  swellGap: 2
cuts:
  - name: raise
    side: front
    profile: { shape: ogee, reach: 38, depth: 9, land: 11, shoulder: 1.5 }
    run: under
  - name: back relief
    side: back
    profile: { shape: cove, reach: 14, depth: 4.6, land: 9 }
    run: over
`;

/** The sound job with one text in it replaced; throws when the text is not there, so that no test tests nothing. */
export function broken(from: string, to: string, text: string = SOUND): string {
  if (!text.includes(from)) throw new Error(`no "${from}" in the job`);
  return text.replace(from, to);
}
