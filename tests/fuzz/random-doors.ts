import type { Random } from '../support/random.ts';

/** Doors as a file has them: openings with leaves or sizes, rows and columns that share or are given, heads, odd but mostly possible sizes. */
export function randomDoors(random: Random, most = 4): Record<string, unknown>[] {
  return Array.from({ length: 1 + Math.floor(random.unit() * most) }, (_, i) => randomDoor(random, i));
}

function perhaps<T>(random: Random, share: number, value: () => T): T | undefined {
  return random.unit() < share ? value() : undefined;
}

/** Whole millimetres at times, so that sizes line up; any figure else. */
export function sizeOf(random: Random, least: number, most: number): number {
  const size = random.between(least, most);
  return random.unit() < 0.6 ? Math.round(size) : size;
}

function randomDoor(random: Random, i: number): Record<string, unknown> {
  const shaped = random.unit() < 0.25;
  const stile = sizeOf(random, 14, 90);
  const opening = random.unit() < 0.3;
  const [width, height] = [sizeOf(random, 120, 1100), sizeOf(random, 120, 2300)];
  return {
    name: perhaps(random, 0.7, () => `door ${i}`),
    quantity: perhaps(random, 0.6, () => random.oneOf([1, 2, 12, Math.ceil(random.between(1, 400))])),
    ...(opening ? hungIn(random, width, height) : { width, height }),
    stile,
    rail: sizeOf(random, 14, 120),
    topRail: perhaps(random, 0.2, () => sizeOf(random, 14, 120)),
    bottomRail: perhaps(random, 0.3, () => sizeOf(random, 14, 160)),
    ...(shaped ? {} : dividedIn(random, width, height)),
    grain: perhaps(random, 0.4, () => random.oneOf(['up', 'across'])),
    head: shaped ? randomHead(random, width - 2 * stile) : undefined,
  };
}

function hungIn(random: Random, width: number, height: number): Record<string, unknown> {
  const overlay = random.unit() < 0.4;
  const leaves = random.unit() < 0.5 ? undefined : random.oneOf([1, 2, 3]);
  return {
    opening: { width, height },
    hung: overlay ? 'overlay' : undefined,
    ...(overlay ? { overlay: sizeOf(random, 0, 20) } : { gap: perhaps(random, 0.5, () => sizeOf(random, 0, 5)) }),
    leaves,
    between: leaves !== undefined && leaves > 1 ? perhaps(random, 0.5, () => sizeOf(random, 0, 6)) : undefined,
  };
}

function dividedIn(random: Random, width: number, height: number): Record<string, unknown> {
  const listed = random.unit() < 0.3;
  const across = random.oneOf([1, 1, 2, 3]);
  const up = random.oneOf([1, 1, 2, 5]);
  const list = (count: number, room: number) =>
    Array.from({ length: count }, (_, k) =>
      k === 0 || random.unit() < 0.6 ? 'rest' : sizeOf(random, 20, room / count),
    );
  return {
    ...(listed ? { columns: list(across, width), rows: list(up, height) } : { across, up }),
    muntin: across > 1 || up > 1 ? sizeOf(random, 26, 70) : undefined,
    midRail: up > 1 ? perhaps(random, 0.4, () => sizeOf(random, 26, 120)) : undefined,
  };
}

/** Flat and full arches, cathedrals whose flats all but vanish, outlines of two lines, three arcs or one. */
export function randomHead(random: Random, opening: number): Record<string, unknown> {
  const c = Math.max(30, opening);
  const way = random.unit();
  if (way < 0.4) return { shape: 'arch', rise: c * random.oneOf([0.5, random.between(0.001, 0.5), 0.002]) };
  if (way < 0.8) {
    const rise = sizeOf(random, 4, c / 3);
    const [crown, ears] = [sizeOf(random, rise / 2, c / 2), sizeOf(random, rise / 2, c / 2)];
    return { shape: 'cathedral', rise, crown, ears };
  }
  const rise = random.between(2, c / 3);
  const path = random.oneOf([
    `M 0 ${rise} L ${c / 2} 0 L ${c} ${rise}`,
    `M 0 ${rise} A ${c} ${c} 0 0 1 ${c} ${rise}`,
    `M 0 ${rise} Q ${c / 4} 0 ${c / 2} 0 T ${c} ${rise}`,
    `M 0 ${rise} L ${c} 0`,
    `M 0 0 L ${c / 2} ${rise} L ${c} 0`,
    `M 0 ${rise} H ${c / 3} L ${c / 2} 0 L ${(2 * c) / 3} ${rise} H ${c}`,
  ]);
  return { shape: 'outline', path };
}

/** A job that has these doors: a raise in front, at times a cove behind, odd rules at times, all as a file has it. */
export function jobWithDoors(random: Random, doors: unknown, shop: boolean): Record<string, unknown> {
  const thickness = random.oneOf([18, 20, 22, sizeOf(random, 12, 32)]);
  const reach = sizeOf(random, 8, 60);
  const raise = {
    shape: random.oneOf(['bevel', 'cove', 'ovolo', 'ogee']),
    reach,
    depth: Math.min(thickness * 0.55, reach) * random.between(0.3, 1),
  };
  return {
    fielded: 1,
    ...(shop && { shop: './shop.yaml' }),
    panel: {
      thickness,
      species: perhaps(random, 0.7, () => random.oneOf(['black cherry', 'sugar maple', 'eastern white pine'])),
    },
    frame: {
      thickness: thickness + random.oneOf([0, 2, 4]),
      groove: { width: random.between(4, 8), depth: sizeOf(random, 6, 14), setback: random.between(3, 8) },
      swellGap: random.oneOf([0, 1, 2, 3]),
      endGap: perhaps(random, 0.3, () => random.oneOf([0, 1, 2.5])),
      joint: perhaps(random, 0.4, () => ({
        kind: random.oneOf(['cope', 'tenon', 'mitre']),
        length: perhaps(random, 0.5, () => sizeOf(random, 0, 60)),
      })),
    },
    cuts: [
      { name: 'raise', side: 'front', profile: raise },
      ...(random.unit() < 0.4
        ? [
            {
              name: 'back',
              side: 'back',
              profile: { shape: 'rebate', reach: sizeOf(random, 5, 20), depth: random.between(1, thickness * 0.3) },
            },
          ]
        : []),
    ],
    doors,
    spares: perhaps(random, 0.4, () => random.unit() < 0.5),
  };
}
