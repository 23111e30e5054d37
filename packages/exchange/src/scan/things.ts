import type { GreyImage } from './grey-image.ts';

/** Every so many pixels, across and down, one is looked at to find the sample. */
const COARSE = 6;
/** A sample of 5 × 5 mm at 200 dpi has some 1500 pixels. */
const LEAST_AREA = 1500;
/** So many things in a picture, and none smaller than this part of the largest, may be the sample. */
const MOST_THINGS = 4;
const LEAST_SHARE = 0.08;

/** A thing in the picture: places of it, one at the left of each row looked at. */
export interface Thing {
  readonly starts: readonly { readonly x: number; readonly y: number }[];
  readonly area: number;
}

/** What stands out from the paper and is large enough to be the sample, the largest first. */
export function findThings(image: GreyImage, isWood: (shade: number) => boolean): Thing[] {
  const { width, height, grey } = image;
  const across = Math.ceil(width / COARSE);
  const down = Math.ceil(height / COARSE);
  const seen = new Uint8Array(across * down);
  const woodAt = (i: number) => isWood(grey[Math.floor(i / across) * COARSE * width + (i % across) * COARSE]!);
  const things: number[][] = [];
  for (let i = 0; i < seen.length; i++) {
    if (seen[i] || !woodAt(i)) continue;
    const members = [i];
    seen[i] = 1;
    // The list grows while it is walked.
    for (let k = 0; k < members.length; k++) {
      const at = members[k]!;
      const x = at % across;
      for (const next of [x > 0 ? at - 1 : -1, x < across - 1 ? at + 1 : -1, at - across, at + across]) {
        if (next < 0 || next >= seen.length || seen[next] || !woodAt(next)) continue;
        seen[next] = 1;
        members.push(next);
      }
    }
    if (members.length * COARSE * COARSE >= LEAST_AREA) things.push(members);
  }
  things.sort((one, other) => other.length - one.length);
  const least = (things[0]?.length ?? 0) * LEAST_SHARE;
  return things
    .slice(0, MOST_THINGS)
    .filter(({ length }) => length >= least)
    .map((members) => ({ starts: startsOf(members, across), area: members.length * COARSE * COARSE }));
}

/** From the middle row outwards: there a thing's left side is least likely a splinter. */
function startsOf(members: readonly number[], across: number): Thing['starts'] {
  const left = new Map<number, number>();
  for (const at of members) {
    const row = Math.floor(at / across);
    left.set(row, Math.min(left.get(row) ?? at, at));
  }
  const starts = [...left.values()].map((at) => ({ x: (at % across) * COARSE, y: Math.floor(at / across) * COARSE }));
  const middle = starts.reduce((sum, { y }) => sum + y, 0) / starts.length;
  return starts.sort((p, q) => Math.abs(p.y - middle) - Math.abs(q.y - middle));
}
