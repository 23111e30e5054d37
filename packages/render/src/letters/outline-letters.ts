import type { Letters } from '../svg.ts';
import { writeNumber } from '../write-number.ts';
import { shapeText } from './shape-text.ts';
import type { Typefaces } from './typefaces.ts';

const SVG_COMMANDS = { moveTo: 'M', lineTo: 'L', quadraticCurveTo: 'Q', bezierCurveTo: 'C', closePath: 'Z' } as const;

/** Writes texts as outlines of fonts, for programs that would put another one in their place. */
export function outlineLetters(typefaces: Typefaces): Letters {
  return (text, size) => {
    const { runs, width } = shapeText(text, typefaces);
    let data = '';
    for (const run of runs) {
      const { typeface } = run;
      const scale = size / typeface.unitsPerEm;
      const { glyphs, positions } = typeface.layOut(run.text);
      let x = run.x * typeface.unitsPerEm;
      glyphs.forEach((glyph, i) => {
        const { xAdvance, xOffset, yOffset } = positions[i]!;
        for (const { command, args } of glyph.path.commands) {
          // The font's y runs up.
          const numbers = args.map((n, k) =>
            writeNumber(k % 2 === 0 ? (x + xOffset + n) * scale : -(yOffset + n) * scale),
          );
          data += SVG_COMMANDS[command] + numbers.join(' ');
        }
        x += xAdvance;
      });
    }
    return { data, width: width * size };
  };
}
