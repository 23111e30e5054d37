/// <reference path="./untyped-libraries.d.ts" />
import type { Letters } from '@fielded/render';
import { writeNumber } from '@fielded/render';
import { openSync } from 'fontkit';
import { FONT_FILE } from './font-file.ts';

const SVG_COMMANDS = { moveTo: 'M', lineTo: 'L', quadraticCurveTo: 'Q', bezierCurveTo: 'C', closePath: 'Z' } as const;

/** Writes texts as outlines of the shipped font, for programs that would put another one in its place. */
export function openLetters(): Letters {
  const font = openSync(FONT_FILE);
  return (text, size) => {
    const scale = size / font.unitsPerEm;
    const { glyphs, positions } = font.layout(text);
    let x = 0;
    let data = '';
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
    return { data, width: x * scale };
  };
}
