import { Random } from '../support/random.ts';

/** A job file as data, every key that the schema has by chance there or not, sizes in any notation, lined up where it can be. */
export function randomFile(seed: number): Record<string, unknown> {
  const random = new Random(seed);
  const inches = random.unit() < 0.3;
  const thickness = random.between(12, 32);
  const length = (mm: number) => written(random, mm, inches);
  const perhaps = <T>(share: number, value: () => T) => (random.unit() < share ? value() : undefined);
  const cuts = Array.from({ length: 1 + Math.floor(random.unit() * 3.3) }, (_, i) =>
    randomCut(random, i, thickness, length, inches),
  );
  if (cuts.length > 1 && random.unit() < 0.5) lineUp(random, cuts);
  return {
    fielded: 1,
    title: perhaps(0.5, () => 'odd'),
    units: inches ? 'in' : perhaps(0.5, () => 'mm'),
    panel: {
      thickness: length(thickness),
      measured: perhaps(0.3, () => length(thickness + random.between(-0.5, 0.5))),
      species: perhaps(0.2, () => random.oneOf(['black cherry', 'sugar maple', 'no such wood'])),
      sawn: perhaps(0.3, () => random.oneOf(['flat', 'quarter'])),
      width: perhaps(0.4, () => length(random.between(80, 600))),
    },
    frame: {
      thickness: length(thickness + random.between(0, 8)),
      groove: {
        width: length(random.between(3, 9)),
        depth: length(random.between(5, 14)),
        setback: length(random.between(0, 9)),
      },
      swellGap: length(random.oneOf([0, random.between(0, 4)])),
      sticking: perhaps(0.2, () => randomNamed(random, 6, length)),
    },
    cuts,
    fit: perhaps(0.2, () => ({ target: length(0.2), snug: length(0.05), loose: length(0.5) })),
    season: perhaps(0.15, () => ({
      made: 8,
      driest: random.between(4, 8),
      dampest: { temperature: 20, humidity: random.between(20, 95) },
      pinned: random.unit() < 0.5,
    })),
    doors: perhaps(0.2, () => [
      { name: 'A', quantity: 2, width: length(400), height: length(700), stile: length(60), rail: length(70) },
    ]),
  };
}

type Length = (mm: number) => number | string;

function written(random: Random, mm: number, inches: boolean): number | string {
  const way = random.unit();
  if (way < 0.6) return inches ? mm / 25.4 : mm;
  if (way < 0.75) return `${mm} mm`;
  if (way < 0.9) return `${mm / 25.4} in`;
  return `${Math.max(1, Math.round((mm / 25.4) * 64))}/64"`;
}

function randomCut(
  random: Random,
  i: number,
  thickness: number,
  length: Length,
  inches: boolean,
): Record<string, unknown> {
  const side = i === 0 ? 'front' : random.oneOf(['front', 'back']);
  const deepest = thickness * (side === 'front' ? 0.6 : 0.3);
  const outline = random.unit() < 0.3;
  const presented = random.oneOf(['flat', 'flat', 'on-edge', random.between(0, 90)]);
  return {
    name: `cut ${i}`,
    side,
    profile: outline
      ? { shape: 'outline', path: randomPath(random, deepest, inches) }
      : randomNamed(random, deepest, length),
    depth: random.unit() < 0.2 ? length(random.between(1, deepest)) : undefined,
    reach: random.unit() < 0.2 ? length(random.between(4, 45)) : undefined,
    run: presented === 'on-edge' ? undefined : random.oneOf(['under', 'over', undefined]),
    presented,
  };
}

function randomNamed(random: Random, deepest: number, length: Length): Record<string, unknown> {
  const shape = random.oneOf(['rebate', 'bevel', 'cove', 'ovolo', 'ogee']);
  const depth = random.between(1, deepest);
  const shoulder = random.unit() < 0.4 ? 0 : random.between(0, depth * 0.6);
  const land = random.unit() < 0.4 ? 0 : random.between(0, 12);
  const quarter = random.unit() < 0.15;
  const reach = land + (depth - shoulder) + (quarter ? 0 : random.between(0, 25));
  return {
    shape,
    reach: length(reach),
    depth: length(depth),
    land: length(land),
    shoulder: length(shoulder),
    balance: random.unit() < 0.3 ? random.between(0.05, 0.95) : undefined,
  };
}

/** Lines and arcs from edge to face that climb, dip, lean back over themselves and at times cross, to a millimetre's grid at times. */
function randomPath(random: Random, deepest: number, inches: boolean): string {
  const snap = random.unit() < 0.5;
  const u = (mm: number) => String((snap ? Math.round(mm) : mm) / (inches ? 25.4 : 1));
  let a = 0;
  let path = `M 0 ${u(Math.max(1, deepest))}`;
  const steps = 2 + Math.floor(random.unit() * 6);
  for (let i = 0; i < steps; i++) {
    const b = random.between(1, Math.max(1.5, deepest));
    a += random.between(-1.5, 7);
    const r = random.between(4, 30);
    path +=
      random.unit() < 0.4 ? ` A ${u(r)} ${u(r)} 0 0 ${random.oneOf([0, 1])} ${u(a)} ${u(b)}` : ` L ${u(a)} ${u(b)}`;
  }
  return `${path} L ${u(Math.max(a, 2) + 1)} ${u(1)} V 0`;
}

/** Makes the second cut the first again, on the same face or the other, exactly or a hair off. */
function lineUp(random: Random, cuts: Record<string, unknown>[]): void {
  const [first, second] = cuts as [Record<string, unknown>, Record<string, unknown>];
  const { depth } = first.profile as { depth?: number | string };
  const hair =
    typeof depth === 'number' && random.unit() < 0.5
      ? depth + random.oneOf([-1, 1]) * 10 ** random.between(-9, -5)
      : undefined;
  cuts[1] = { ...first, name: 'again', side: random.oneOf([first.side, second.side]), depth: hair ?? first.depth };
}
