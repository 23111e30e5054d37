import { type DoorReport, evaluate, type Job, type Report, readJob } from '@fielded/core';
import { Random } from '../support/random.ts';
import type { Finding } from './fuzz-jobs.ts';
import { judgeCase, notNumbers, refusedInWords } from './judge-case.ts';
import { jobWithDoors, randomDoors, sizeOf } from './random-doors.ts';

/** Doors of odd sizes and divisions: what is sawn adds up to the door, every panel is made once, blanks keep the shop's widths. */
export function fuzzDoors(seed: number): Finding[] {
  return judgeCase(seed, () => {
    const random = new Random(seed);
    const file = jobWithDoors(random, randomDoors(random), true);
    const shop = { fielded: 1, rules: random.unit() < 0.6 ? randomRules(random) : undefined };
    const { job, faults } = readJob(JSON.stringify(file), { loadShop: () => JSON.stringify(shop) });
    if (job === null) return refusedInWords(faults);
    const report = evaluate(job);
    const { doors = [] } = report;
    return [
      ...doors.flatMap((door) => notNumbers(door, door.name)),
      ...doors.flatMap((door) => [...sizeFaults(job, door), ...pieceFaults(job, door)]),
      ...blankFaults(job, report),
      ...timberFaults(job, report),
    ];
  });
}

function randomRules(random: Random): Record<string, number> {
  const least = random.oneOf([0, 300, sizeOf(random, 50, 500)]);
  return {
    leastEndGrainWidth: least,
    greatestBlankWidth: Math.max(1, least + sizeOf(random, 0, 500)),
    kerf: random.oneOf([0, 3.2, random.between(0, 6)]),
    edgeAllowance: random.oneOf([0, 1, random.between(0, 4)]),
    yield: random.oneOf([1, 0.65, random.between(0.01, 1)]),
    stripWidth: random.oneOf([100, random.between(20, 200)]),
  };
}

const SAME = 1e-6;
const sum = (all: readonly number[]) => all.reduce((total, each) => total + each, 0);
const isSame = (one: number, other: number) => Math.abs(one - other) <= SAME * Math.max(1, Math.abs(other));

/** The leaf out of its opening, and openings with the parts between them out of the leaf. */
function sizeFaults(job: Job, door: DoorReport): string[] {
  const faults: string[] = [];
  const { hungIn, leaves, width, height, openings } = door;
  if (hungIn !== undefined) {
    const lap = hungIn.hung === 'inset' ? -hungIn.gap : hungIn.overlay;
    if (!isSame(leaves * width + (leaves - 1) * hungIn.between, hungIn.width + 2 * lap))
      faults.push('leaves do not fill their opening');
    if (!isSame(height, hungIn.height + 2 * lap)) faults.push('a leaf is not as high as its opening asks');
  }
  const rowsOf = (row: number) => openings.filter((each) => each.row === row);
  for (let row = 0; row < door.rows.length; row++) {
    const wide = sum(rowsOf(row).map((each) => each.width)) + (door.columns.length - 1) * door.muntin;
    if (!isSame(wide + 2 * door.stile, width)) faults.push(`row ${row} is ${wide} wide in a door of ${width}`);
  }
  const tall =
    sum(openings.filter(({ column }) => column === 0).map((each) => each.height)) +
    (door.rows.length - 1) * door.midRail;
  if (!isSame(tall + door.topRail + door.bottomRail, height))
    faults.push(`rows are ${tall} high in a door of ${height}`);
  if (openings.some((each) => !(each.width > 0 && each.height > 0))) faults.push('an opening of no size');
  const { groove, swellGap } = job.frame;
  const [across, along] = [groove.depth - swellGap, groove.depth - (job.frame.endGap ?? swellGap)];
  const [right, up] = door.grain === 'up' ? [across, along] : [along, across];
  for (const opening of openings) {
    const fits = door.panels.some(
      (panel) =>
        isSame(panel.width, opening.width + 2 * right) &&
        panel.height > opening.height + 2 * up - SAME * opening.height,
    );
    if (!fits) faults.push('no panel fits an opening');
  }
  return faults;
}

/** Every part and panel is counted as often as there are doors. */
function pieceFaults(job: Job, door: DoorReport): string[] {
  const faults: string[] = [];
  const { parts, panels, columns, rows } = door;
  const doors = door.quantity * door.leaves;
  const count = (name: string) => sum(parts.filter(({ part }) => part === name).map(({ quantity }) => quantity));
  const wanted = {
    stile: 2,
    'top rail': 1,
    'bottom rail': 1,
    'mid rail': rows.length - 1,
    muntin: rows.length * (columns.length - 1),
  };
  for (const [name, each] of Object.entries(wanted))
    if (count(name) !== each * doors) faults.push(`${count(name)} × ${name} for ${doors} doors`);
  if (sum(panels.map(({ quantity }) => quantity)) !== rows.length * columns.length * doors)
    faults.push('panels miscounted');
  for (const { width, height, volume, weight, field } of panels) {
    if (!(volume > 0 && volume <= width * height * job.panel.thickness * (1 + 1e-12)))
      faults.push(`a panel of ${volume} mm³`);
    if (weight !== null && !(weight > 0)) faults.push(`a panel of ${weight} kg`);
    if (field !== null && !(field.width > 0 && field.width < width && field.height < height))
      faults.push('a field larger than its panel');
  }
  return faults;
}

/** Narrow panels: each once, in a blank of the shop's widths or left over by name. */
function blankFaults(job: Job, { doors = [], blanks = [], leftOver = [] }: Report): string[] {
  const faults: string[] = [];
  const { leastEndGrainWidth: least, greatestBlankWidth: most, kerf, edgeAllowance } = job.shop!.rules;
  const cut = kerf + 2 * edgeAllowance;
  const where = (door: string, width: number) => `${door} ${width.toFixed(4)}`;
  const made = new Map<string, number>();
  const count = (key: string, quantity: number) => made.set(key, (made.get(key) ?? 0) + quantity);
  for (const { width, panels, rips, quantity, length } of blanks) {
    const wide = sum(panels.map((panel) => panel.width)) + (panels.length - 1) * cut;
    if (!isSame(width, wide)) faults.push(`a blank of ${width} holds ${wide}`);
    const spared = panels.some(({ door }) => door === 'spare');
    if (width < least - SAME || (width > most + SAME && !spared))
      faults.push(`a blank of ${width}, shop's ${least} to ${most}`);
    if (rips.length !== panels.length - 1 || rips.some((at, k) => !(at > (rips[k - 1] ?? 0) && at < width)))
      faults.push('rips out of order');
    if (!(length > 0 && quantity >= 1)) faults.push('a blank of no length');
    for (const panel of panels) if (panel.door !== 'spare') count(where(panel.door, panel.width), quantity);
  }
  for (const { door, width, quantity } of leftOver) count(where(door, width), quantity);
  const needed = new Map<string, { quantity: number; narrow: boolean }>();
  for (const door of doors)
    for (const panel of door.panels) {
      const across = panel.grain === 'up' ? panel.width : panel.height;
      const key = where(door.name, across);
      needed.set(key, { quantity: (needed.get(key)?.quantity ?? 0) + panel.quantity, narrow: across < least });
    }
  for (const [key, quantity] of made)
    if (quantity > (needed.get(key)?.quantity ?? 0)) faults.push(`${key} is made ${quantity} times`);
  for (const [key, { quantity, narrow }] of needed)
    if (narrow && made.get(key) !== quantity)
      faults.push(`${key} is narrow and made ${made.get(key)} times of ${quantity}`);
  return faults;
}

/** What is bought holds what is made: parts, panels by themselves, blanks. */
function timberFaults(job: Job, { doors = [], blanks = [], timber = [] }: Report): string[] {
  const faults: string[] = [];
  const panelWood = sum(
    doors.flatMap(({ panels }) => panels.map(({ width, height, quantity }) => width * height * quantity)),
  );
  const riding = sum(
    blanks.flatMap(({ panels, length, quantity }) =>
      panels.map(({ door, width }) => (door === 'spare' ? 0 : width * length * quantity)),
    ),
  );
  const inBlanks = sum(blanks.map(({ width, length, quantity }) => width * length * quantity));
  const frames =
    sum(doors.flatMap(({ parts }) => parts.map(({ length, width, quantity }) => length * width * quantity))) *
    job.frame.thickness;
  const wanted = (frames + (panelWood - riding + inBlanks) * job.panel.thickness) / 1e9;
  const finished = sum(timber.map((each) => each.finished));
  // Panels of a length are joined to a hundredth of a millimetre.
  if (doors.length > 0 && Math.abs(finished - wanted) > 1e-4 * wanted)
    faults.push(`timber of ${finished} m³ for ${wanted}`);
  for (const { finished: net, rough, order } of timber)
    if (!(net <= rough && isSame(order * job.shop!.rules.yield, rough)))
      faults.push('rough timber and order do not go together');
  return faults;
}
