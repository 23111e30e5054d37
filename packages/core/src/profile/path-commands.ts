/// <reference path="./path-parse.d.ts" />
import parsePath from 'svgpath/lib/path_parse.js';

/** A command of a path: its letter, a capital one, and its numbers, in the path's own unit from its own origin. */
export type Command = readonly [letter: string, ...numbers: number[]];

/** Path data as the library's parser takes it apart: its commands as they are written, and what it says of what is none. */
export function takeApart(path: string): { readonly segments: readonly Command[]; readonly err: string } {
  return parsePath(path) as { segments: readonly Command[]; err: string };
}

/** The same commands from the origin instead of from where the path stands, and S and T as the C and Q they stand for (SVG 2, 9.3). */
export function writeOut(segments: readonly Command[]): Command[] {
  const out: Command[] = [];
  // Where the path stands, where it started, and the last control point: short forms go on from its mirror image.
  let [x, y, startX, startY] = [0, 0, 0, 0];
  let control: { readonly of: string; readonly x: number; readonly y: number } | null = null;
  for (const [written, ...given] of segments) {
    const letter = written.toUpperCase();
    const numbers = letter === written ? given : shift(letter, given, x, y);
    const whole = SHORT[letter];
    // Without a curve of its own kind before it, a short form starts where the path stands.
    const mirrored =
      whole === undefined ? [] : control?.of === whole ? [x - (control.x - x), y - (control.y - y)] : [x, y];
    const command: Command = [whole ?? letter, ...mirrored, ...numbers];
    out.push(command);
    const of = command[0];
    control = of === 'C' || of === 'Q' ? { of, x: command.at(-4) as number, y: command.at(-3) as number } : null;
    if (letter === 'Z') [x, y] = [startX, startY];
    else {
      if (letter !== 'V') x = letter === 'H' ? numbers[0]! : numbers.at(-2)!;
      if (letter !== 'H') y = numbers.at(-1)!;
      if (letter === 'M') [startX, startY] = [x, y];
    }
  }
  return out;
}

const SHORT: Readonly<Record<string, string>> = { S: 'C', T: 'Q' };

/** Numbers of a command that counts from where the path stands, counted from the origin. */
function shift(letter: string, numbers: readonly number[], x: number, y: number): number[] {
  if (letter === 'V') return numbers.map((down) => y + down);
  // Of an arc only its end is a place.
  const first = letter === 'A' ? 5 : 0;
  return numbers.map((value, i) => (i < first ? value : (i - first) % 2 === 0 ? x + value : y + value));
}
