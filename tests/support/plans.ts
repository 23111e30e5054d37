import { answerPlan, type Job, type Planned, prepareJob, readJob } from '@fielded/core';

/** What of the worked example may differ. */
export interface ShopChanges {
  readonly run?: 'under' | 'over';
  readonly reversing?: boolean;
  readonly power?: number;
  readonly seat?: string;
  readonly machines?: string;
  readonly raiser?: string;
  readonly small?: string;
  readonly ogee?: string;
  readonly cove?: string;
  readonly rules?: string;
  readonly doors?: string;
  readonly cuts?: string;
  readonly panel?: string;
}

const GROUND = 'groundFor: { run: under, rotation: counterclockwise }';

/** The worked example: T 20, raise 38 × 9 with a land of 11, cove 14 × 4.8 behind, a head of 160 mm, a seat from −70 to 90. */
export function shopJob(changes: ShopChanges = {}): Job {
  const {
    run = 'under',
    reversing = false,
    power,
    seat = '[-70, 90]',
    rules = 'kerf: 3.2',
    panel = 'thickness: 20',
  } = changes;
  const machine = `{ speeds: [3000, 4500, 6000], seat: ${seat}, opening: 220, rings: [140, 170, 220], nutDiameter: 48, reversing: ${reversing}, feeds: [4, 6, 8]${power === undefined ? '' : `, power: ${power}`} }`;
  const shop = `fielded: 1
knives:
  ogee: { shape: ogee, reach: 38, depth: 9, land: 11, shoulder: 1.5, head: raiser, ${changes.ogee ?? `fromFace: 1.5, ${GROUND}`} }
  cove: { shape: cove, reach: 14, depth: 4.8, land: 9, head: small, ${changes.cove ?? `fromFace: 1.2, ${GROUND}`} }
heads:
  raiser: { cuttingDiameter: 160, bodyDiameter: 70, height: 40, rake: 15, maxSpeed: 7000 ${changes.raiser ?? ''} }
  small: { cuttingDiameter: 120, bodyDiameter: 64, height: 40, rake: 15, maxSpeed: 9000 ${changes.small ?? ''} }
machines: ${changes.machines ?? `{ main: ${machine} }`}
rules: { ${rules} }
`;
  const job = `fielded: 1
shop: shop.yaml
panel: { ${panel} }
frame: { thickness: 22, groove: { width: 6.4, depth: 11, setback: 7.5 }, swellGap: 2 }
cuts: ${changes.cuts ?? `[{ name: raise, side: front, knife: ogee }, { name: cove, side: back, knife: cove, run: ${run} }]`}
${changes.doors === undefined ? '' : `doors: ${changes.doors}`}
`;
  const read = readJob(job, { loadShop: () => shop });
  if (read.job === null) throw new Error(read.faults.map(({ message }) => message).join('\n'));
  return read.job;
}

/** The plan of a job that has a shop. */
export function planned(job: Job): Planned {
  const answer = answerPlan(prepareJob(job));
  if (answer === undefined) throw new Error('nothing to plan');
  return answer;
}

/**
 * Four cuts in a shop of ten heads and four machines: as large as a joiner's shop is. Each can be made in its own head; with
 * `one` given, one of them cannot, and every other head is tried for it.
 */
export function largeShopJob(one: 'can' | 'cannot' = 'can'): Job {
  const job = shopJob();
  const shop = job.shop!;
  const copies = <T>(count: number, of: T): Record<string, T> =>
    Object.fromEntries(Array.from({ length: count }, (_, k) => [`n${k}`, of]));
  const cuts = [3, 4, 5, 6].map((depth, k) => {
    const { knife: _, ...cut } = job.cuts[k % 2]!;
    return { ...cut, name: `c${k}`, head: `n${k}`, depth };
  });
  const heads = { ...copies(10, shop.heads.raiser!), ...(one === 'cannot' && { n2: shop.heads.small! }) };
  return { ...job, cuts, shop: { ...shop, heads, machines: copies(4, shop.machines.main!) } };
}
