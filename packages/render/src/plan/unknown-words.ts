/** What a set-up could not check, in a few words for its sheet; how to have it checked stands with the order of work. */
const WORDS: Readonly<Record<string, string>> = {
  fromFace: 'height of the head (measure fromFace)',
  knife: 'height of the head (knife to be ground)',
  knives: 'height of the head (no knife of the shop has this profile)',
  presented: 'how work is held for the knife',
  bore: 'bore of the head',
  spindle: 'thickness of the spindle',
  spindleLength: 'length of the spindle',
  fenceGap: 'opening of the fence',
  power: 'power of the motor',
  tallFence: 'tall fence',
  rings: 'table opening',
  bearings: 'bearings and ring fences for the shaped heads',
};

/**
 * The few words for a place in a file.
 *
 * @example nameUnknown('machines.main.power') // 'power of the motor'
 */
export function nameUnknown(path: string): string {
  return WORDS[path.slice(path.lastIndexOf('.') + 1)] ?? path;
}
