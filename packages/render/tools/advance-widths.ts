/**
 * Writes src/text/advance-widths.ts from the fonts themselves.
 *
 *   npx tsx packages/render/tools/advance-widths.ts [folder with DejaVuSans.ttf]
 */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { openSync } from 'fontkit';

const here = import.meta.dirname;
const dejavuFolder = process.argv[2] ?? '/usr/share/fonts/truetype/dejavu';
const fonts = [join(here, '../fonts/IBMPlexSans-Regular.ttf'), join(dejavuFolder, 'DejaVuSans.ttf')].map((path) => {
  const font = openSync(path);
  if (!('unitsPerEm' in font)) throw new Error(`${path} is a collection of fonts, not one`);
  return font;
});

/** Latin, Greek, Cyrillic, punctuation, fractions, arrows and the signs of arithmetic. */
const ranges: [number, number][] = [
  [0x20, 0x7e],
  [0xa0, 0x17f],
  [0x370, 0x3ff],
  [0x400, 0x45f],
  [0x2010, 0x2044],
  [0x2070, 0x208e],
  [0x20ac, 0x20ac],
  [0x2150, 0x215e],
  [0x2190, 0x2193],
  [0x2200, 0x2265],
];

/** The wider of the two advances in thousandths of an em, rounded up; null where neither font has the glyph. */
function widest(code: number): number | null {
  const widths = fonts
    .filter((font) => font.hasGlyphForCodePoint(code))
    .map((font) => (font.glyphForCodePoint(code).advanceWidth * 1000) / font.unitsPerEm);
  return widths.length ? Math.ceil(Math.max(...widths)) : null;
}

const lines: string[] = [];
for (const [from, to] of ranges) {
  let run: number[] = [];
  let start = from;
  for (let code = from; code <= to + 1; code += 1) {
    const width = code <= to ? widest(code) : null;
    if (width !== null) {
      if (!run.length) start = code;
      run.push(width);
    } else if (run.length) {
      lines.push(`  [0x${start.toString(16)}, '${run.join(' ')}'],`);
      run = [];
    }
  }
}

writeFileSync(
  join(here, '../src/text/advance-widths.ts'),
  `// Written by tools/advance-widths.ts; do not edit by hand.
// Source: the advance widths of IBM Plex Sans Regular (SIL Open Font License 1.1) and DejaVu Sans (Bitstream Vera
// licence, with public-domain additions), glyph by glyph the wider of the two, so that a text never turns out wider
// than measured whichever of them a machine has. Widths are facts about the fonts; no outline is copied here.

/** Runs of neighbouring code points: the first of them, then their widths in thousandths of an em. */
export const ADVANCE_WIDTHS: readonly (readonly [number, string])[] = [
${lines.join('\n')}
];
`,
);
