/** Words that makers use, each with the key or word that the files use. */
const OTHER_NAMES: Readonly<Record<string, string>> = {
  rabbet: 'rebate',
  chamfer: 'bevel',
  hollow: 'cove',
  scotia: 'cove',
  round: 'ovolo',
  'quarter-round': 'ovolo',
  roundover: 'ovolo',
  cyma: 'ogee',
  path: 'outline',
  horizontal: 'flat',
  vertical: 'on-edge',
  edge: 'on-edge',
  above: 'over',
  below: 'under',
  face: 'front',
  rear: 'back',
  inch: 'in',
  inches: 'in',
  millimetres: 'mm',
  millimeters: 'mm',
  quartered: 'quarter',
  plain: 'flat',
  ccw: 'counterclockwise',
  anticlockwise: 'counterclockwise',
  cw: 'clockwise',
  count: 'quantity',
  wood: 'species',
};

/**
 * The one of `known` that `word` was most likely meant to be: another name for it, or at most a third of its letters
 * (two of a word of five letters, one of a shorter one) put in, left out, changed or swapped; undefined when none is near.
 *
 * @example findNearest('thicknes', ['thickness', 'measured']) // 'thickness'
 */
export function findNearest(word: string, known: readonly string[]): string | undefined {
  const plain = word.toLowerCase();
  const other = Object.hasOwn(OTHER_NAMES, plain) ? OTHER_NAMES[plain] : undefined;
  if (other !== undefined && known.includes(other)) return other;
  // In a short word one wrong letter is a slip, two make another word: size is not stile.
  const room = word.length < 5 ? 1 : Math.max(2, Math.floor(word.length / 3));
  let best: string | undefined;
  let least = room + 1;
  for (const name of known) {
    if (Math.abs(name.length - word.length) >= least) continue;
    const away = name.toLowerCase() === plain ? 0 : countEdits(plain, name.toLowerCase());
    // Some of the letters have to stay, or it is another word altogether.
    if (away < least && away < Math.min(name.length, word.length)) {
      best = name;
      least = away;
    }
  }
  return best;
}

/** Letters put in, left out, changed or swapped with their neighbour (Damerau's distance, each letter touched once). */
function countEdits(from: string, to: string): number {
  let before: number[] = [];
  let last = Array.from({ length: to.length + 1 }, (_, i) => i);
  for (let i = 1; i <= from.length; i++) {
    const row = [i];
    for (let j = 1; j <= to.length; j++) {
      const same = from[i - 1] === to[j - 1] ? 0 : 1;
      let edits = Math.min(last[j]! + 1, row[j - 1]! + 1, last[j - 1]! + same);
      if (i > 1 && j > 1 && from[i - 1] === to[j - 2] && from[i - 2] === to[j - 1])
        edits = Math.min(edits, before[j - 2]! + 1);
      row.push(edits);
    }
    before = last;
    last = row;
  }
  return last[to.length]!;
}
