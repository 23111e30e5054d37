import { hundredths } from './blank-rules.ts';
import type { Blank, DoorPanel, DoorReport, LeftOver, PartName, Timber } from './door-report.ts';

/** What a cutting list needs of a job's report. */
export interface ListedJob {
  readonly title: string;
  readonly panel: { readonly thickness: number };
  readonly doors?: readonly DoorReport[];
  readonly blanks?: readonly Blank[];
  readonly leftOver?: readonly LeftOver[];
  readonly timber?: readonly Timber[];
}

/** Doors that equal pieces are for, and how many for each. */
export interface ForDoor {
  readonly job: string;
  readonly door: string;
  readonly quantity: number;
}

/** Equal parts of frames in one wood, mm, whichever doors they are for. */
export interface ListedPart {
  readonly part: PartName;
  readonly quantity: number;
  readonly length: number;
  readonly width: number;
  readonly thickness: number;
  /** '' where no job names one. */
  readonly wood: string;
  readonly for: readonly ForDoor[];
}

/** Equal panels, mm, whichever doors they are for. */
export interface ListedPanel extends Omit<DoorPanel, 'quantity'> {
  readonly thickness: number;
  readonly quantity: number;
  /** The door whose head shapes it: the first of those that share the panel. */
  readonly door?: DoorReport;
  readonly for: readonly ForDoor[];
}

export interface CuttingList {
  readonly jobs: readonly string[];
  /** How many doors and fronts, leaves counted. */
  readonly doors: number;
  readonly parts: readonly ListedPart[];
  readonly panels: readonly ListedPanel[];
  readonly blanks: readonly (Blank & { readonly job: string; readonly thickness: number })[];
  readonly leftOver: readonly (LeftOver & { readonly job: string })[];
  readonly timber: readonly Timber[];
}

/**
 * The cutting list of one job or of several that are made together: equal parts and equal panels counted together, the longest
 * first, timber added up by wood and thickness. Blanks stay within their job: its cuts are run on them.
 */
export function makeCuttingList(jobs: readonly ListedJob[]): CuttingList {
  const doors = jobs.flatMap(({ title, doors = [] }) => doors.map((door) => ({ job: title, door })));
  return {
    jobs: jobs.map(({ title }) => title),
    doors: doors.reduce((sum, { door }) => sum + door.quantity * door.leaves, 0),
    parts: listParts(doors),
    panels: jobs.flatMap(listPanels).sort((p, q) => q.height - p.height || q.width - p.width),
    blanks: jobs.flatMap(({ title, panel, blanks = [] }) =>
      blanks.map((blank) => ({ ...blank, job: title, thickness: panel.thickness })),
    ),
    leftOver: jobs.flatMap(({ title, leftOver = [] }) => leftOver.map((panel) => ({ ...panel, job: title }))),
    timber: addTimber(jobs.flatMap(({ timber = [] }) => timber)),
  };
}

/** Doors that pieces are for, by job: the job's name stands before its doors where the list is of several. */
export function byJob(
  { jobs }: Pick<CuttingList, 'jobs'>,
  doors: readonly ForDoor[],
): { job: string; doors: ForDoor[] }[] {
  if (jobs.length < 2) return [{ job: '', doors: [...doors] }];
  const found = new Map<string, ForDoor[]>();
  for (const door of doors) found.set(door.job, [...(found.get(door.job) ?? []), door]);
  return [...found].map(([job, own]) => ({ job, doors: own }));
}

function listParts(doors: readonly { readonly job: string; readonly door: DoorReport }[]): ListedPart[] {
  const pieces = doors.flatMap(({ job, door }) =>
    door.parts.map((part) => ({ piece: part, for: { job, door: door.name, quantity: part.quantity } })),
  );
  const key = ({ part, length, width, thickness, wood }: DoorReport['parts'][number]) =>
    [part, wood, ...[length, width, thickness].map(hundredths)].join(' ');
  return countEqual(pieces, key).sort(
    (p, q) => ORDER.indexOf(p.part) - ORDER.indexOf(q.part) || q.length - p.length || q.width - p.width,
  );
}

const ORDER: readonly PartName[] = ['stile', 'top rail', 'bottom rail', 'mid rail', 'muntin'];

function listPanels({ title, panel: { thickness }, doors = [] }: ListedJob): ListedPanel[] {
  const pieces = doors.flatMap((door) =>
    door.panels.map((panel) => ({
      piece: { ...panel, thickness, ...(panel.shaped && { door }) },
      for: { job: title, door: door.name, quantity: panel.quantity },
    })),
  );
  return countEqual(pieces, ({ width, height, grain, shaped, volume }) =>
    // Heads of different doors are told apart by the panel they leave.
    [grain, hundredths(width), hundredths(height), shaped ? volume : ''].join(' '),
  );
}

/** Equal pieces together: their number is the sum, and each door is named. */
function countEqual<P extends { readonly quantity: number }>(
  pieces: readonly { readonly piece: P; readonly for: ForDoor }[],
  keyOf: (piece: P) => string,
): (P & { readonly for: readonly ForDoor[] })[] {
  const found = new Map<string, { piece: P; quantity: number; for: ForDoor[] }>();
  for (const { piece, for: door } of pieces) {
    const key = keyOf(piece);
    const same = found.get(key);
    if (same === undefined) found.set(key, { piece, quantity: piece.quantity, for: [door] });
    else {
      same.quantity += piece.quantity;
      same.for.push(door);
    }
  }
  return [...found.values()].map(({ piece, quantity, for: doors }) => ({ ...piece, quantity, for: doors }));
}

function addTimber(all: readonly Timber[]): Timber[] {
  const found = new Map<string, Timber>();
  for (const timber of all) {
    const key = `${timber.wood} ${hundredths(timber.thickness)}`;
    const same = found.get(key);
    found.set(key, same === undefined ? timber : sumTimber(same, timber));
  }
  return [...found.values()].sort((p, q) => q.thickness - p.thickness);
}

function sumTimber(one: Timber, other: Timber): Timber {
  return {
    ...one,
    pieces: [...one.pieces, ...other.pieces],
    finished: one.finished + other.finished,
    rough: one.rough + other.rough,
    order: one.order + other.order,
    boardFeet: {
      finished: one.boardFeet.finished + other.boardFeet.finished,
      rough: one.boardFeet.rough + other.boardFeet.rough,
      order: one.boardFeet.order + other.boardFeet.order,
    },
  };
}
