// Laws of reading: a file with every key it may hold gives the job written beside it, and without one of them that job less that
// figure, or with its default; without a key that must be there, one fault at that key.
import { describe, expect, it } from 'vitest';
import { readJob } from '../../packages/core/src/reading/read.ts';

const DEGREE = Math.PI / 180;
const OAK = { name: 'bog oak', tangential: 0.0035, radial: 0.002, density: 800 };

const RULES = {
  leastEndGrainWidth: 290,
  kerf: 3,
  rimSpeed: [41, 69],
  leastEngagement: 4.5,
  knifeMark: 1.3,
  fenceClearance: 3.5,
  edgeAllowance: 1.5,
  greatestBlankWidth: 610,
  cuttingEnergy: 42,
  lastPass: 1.7,
  overLength: 26,
  overWidth: 27,
  stripWidth: 110,
  yield: 0.7,
  overrun: 1.2,
  leastTongue: 3.1,
};
const RATES = {
  currency: 'EUR',
  hour: 60,
  wood: { oak: 2000 },
  setUp: 0.5,
  metresPerHour: 90,
  door: 1.5,
  finish: 30,
  knife: 120,
  margin: 10,
  tax: { name: 'VAT', rate: 20 },
  validDays: 20,
  deposit: 40,
  terms: ['Paid on delivery.'],
};
const MACHINE = {
  speeds: [3000, 4500],
  seat: [-70, 90],
  opening: 220,
  nutDiameter: 48,
  reversing: true,
  feeds: [4, 8],
  rings: [120, 220],
  spindle: 30,
  spindleLength: 130,
  power: 4,
  fenceGap: 240,
  bearings: [100],
  ringFences: [150],
  tallFence: true,
};
const HEAD = {
  cuttingDiameter: 160,
  bodyDiameter: 70,
  height: 40,
  knives: 4,
  limiterGap: 1,
  maxSpeed: 8000,
  knifeThickness: 7,
  feed: 'mechanical',
  bore: 30,
  minSpeed: 3000,
  jointed: true,
  slots: ['under'],
};
const KNIFE = {
  head: 'small',
  groundFor: { run: 'over', rotation: 'clockwise' },
  fromFace: 2,
  kept: 'on nail 4',
  measured: 'wood',
};

/** Shop and job as files hold them. Angles in degrees. */
const shopFile = () => ({
  fielded: 1,
  units: 'mm',
  name: 'Example Joinery',
  address: ['1 Example Lane'],
  logo: 'logo.png',
  knives: {
    cove: { shape: 'cove', reach: 14, depth: 4.6, land: 9, shoulder: 0.5, ...KNIFE, presented: 10, sideRelief: 4 },
  },
  heads: { small: { ...HEAD, rake: 18, shear: 5, wedge: 40 } },
  machines: { main: { ...MACHINE, tilt: [-5, 45] } },
  rules: { ...RULES, leastSideClearance: 4, leastClearance: 11 },
  woods: { 'Bog Oak': { tangential: 0.0035, radial: 0.002, density: 800 } },
  rates: RATES,
});
const jobFile = () => ({
  fielded: 1,
  title: 'All keys',
  units: 'mm',
  terms: 'american',
  shop: './shop.yaml',
  spares: true,
  panel: { thickness: 20, measured: 19.8, species: 'bog oak', sawn: 'quarter', film: 0.1 },
  frame: {
    thickness: 22,
    groove: { width: 6.4, depth: 11, setback: 7.5 },
    swellGap: 2,
    endGap: 1,
    joint: { kind: 'tenon', length: 30 },
    species: OAK,
    sawn: 'quarter',
    sticking: { shape: 'ovolo', reach: 5, depth: 5, head: 'small' },
    backEdge: { shape: 'bevel', reach: 3, depth: 3, head: 'small' },
  },
  cuts: [
    {
      name: 'raise',
      side: 'front',
      depth: 9.1,
      reach: 38.1,
      run: 'over',
      presented: 5,
      head: 'small',
      profile: { shape: 'ogee', reach: 38, depth: 9, land: 11, shoulder: 1.5, balance: 0.4 },
    },
    {
      name: 'relief',
      side: 'back',
      knife: 'cove',
      run: 'under',
      depth: 4.5,
      reach: 14.1,
      presented: 10,
      head: 'small',
    },
  ],
  fit: { target: 0.3, snug: 0.1, loose: 0.6 },
  spread: {
    thickness: 0.1,
    height: 0.2,
    fence: 0.3,
    setback: 0.01,
    grooveWidth: 0.02,
    grooveDepth: 0.03,
    film: 0.04,
    panelSize: 0.05,
    moisture: 1,
    square: 0.5,
  },
  season: { made: 8, driest: 6, dampest: 11, pinned: 'edge' },
  doors: [
    {
      name: 'sink',
      width: 600,
      height: 720,
      stile: 60,
      rail: 61,
      topRail: 62,
      bottomRail: 63,
      midRail: 64,
      muntin: 65,
      quantity: 2,
      grain: 'across',
      columns: [200, 'rest'],
      rows: ['rest', 150, 'rest'],
    },
    {
      name: 'pair',
      opening: { width: 1200, height: 800 },
      hung: 'overlay',
      overlay: 12,
      between: 4,
      leaves: 2,
      stile: 60,
      rail: 60,
      head: { shape: 'cathedral', rise: 60, crown: 200, ears: 80 },
    },
  ],
});

/** The job that they are. */
const NAMED = { land: 0, shoulder: 0, balance: 0.5 };
const COVE = { shape: 'cove', reach: 14, depth: 4.6, land: 9, shoulder: 0.5, balance: 0.5 };
const WOOD = { name: 'Bog Oak', tangential: 0.0035, radial: 0.002, density: 800 };
const job = () => ({
  title: 'All keys',
  units: 'mm',
  terms: 'american',
  spares: true,
  panel: { thickness: 20, measured: 19.8, species: 'bog oak', wood: WOOD, sawn: 'quarter', film: 0.1 },
  frame: {
    thickness: 22,
    groove: { width: 6.4, depth: 11, setback: 7.5 },
    swellGap: 2,
    endGap: 1,
    joint: { kind: 'tenon', length: 30 },
    species: 'bog oak',
    wood: OAK,
    sawn: 'quarter',
    sticking: { shape: 'ovolo', reach: 5, depth: 5, ...NAMED },
    stickingHead: 'small',
    backEdge: { profile: { shape: 'bevel', reach: 3, depth: 3, ...NAMED }, head: 'small' },
  },
  cuts: [
    {
      name: 'raise',
      side: 'front',
      depth: 9.1,
      reach: 38.1,
      run: 'over',
      tilt: 5 * DEGREE,
      head: 'small',
      profile: { shape: 'ogee', reach: 38, depth: 9, land: 11, shoulder: 1.5, balance: 0.4 },
    },
    {
      name: 'relief',
      side: 'back',
      profile: COVE,
      depth: 4.5,
      reach: 14.1,
      run: 'under',
      tilt: 10 * DEGREE,
      head: 'small',
      knife: 'cove',
    },
  ],
  fit: { target: 0.3, snug: 0.1, loose: 0.6 },
  spread: { ...jobFile().spread, square: 0.5 * DEGREE },
  season: { made: 8, driest: 6, dampest: 11, pinned: 'edge' },
  doors: [
    {
      name: 'sink',
      width: 600,
      height: 720,
      stile: 60,
      rail: 61,
      topRail: 62,
      bottomRail: 63,
      midRail: 64,
      muntin: 65,
      quantity: 2,
      grain: 'across',
      columns: [200, 'rest'],
      rows: ['rest', 150, 'rest'],
      across: 2,
      up: 3,
      leaves: 1,
    },
    {
      name: 'pair',
      width: (1200 + 24 - 4) / 2,
      height: 824,
      stile: 60,
      rail: 60,
      topRail: 60,
      bottomRail: 60,
      midRail: 0,
      muntin: 0,
      quantity: 1,
      grain: 'up',
      columns: ['rest'],
      rows: ['rest'],
      across: 1,
      up: 1,
      leaves: 2,
      hungIn: { width: 1200, height: 800, hung: 'overlay', gap: 2, overlay: 12, between: 4 },
      head: { shape: 'cathedral', rise: 60, crown: 200, ears: 80 },
    },
  ],
  shop: {
    units: 'mm',
    knives: { cove: { profile: COVE, ...KNIFE, presented: 10 * DEGREE, sideRelief: 4 * DEGREE } },
    heads: { small: { ...HEAD, rake: 18 * DEGREE, shear: 5 * DEGREE, wedge: 40 * DEGREE } },
    machines: { main: { ...MACHINE, tilt: [-5 * DEGREE, 45 * DEGREE] } },
    rules: { ...RULES, leastSideClearance: 4 * DEGREE, leastClearance: 11 * DEGREE },
    woods: { 'Bog Oak': WOOD },
    rates: RATES,
    maker: { name: 'Example Joinery', address: ['1 Example Lane'], logo: 'logo.png' },
  },
});

type Data = Record<string, unknown>;

/** Takes the value at a path away, or puts another one there. */
function change(data: object, path: string, value?: unknown): void {
  const keys = path.split('/');
  const holder = keys.slice(0, -1).reduce<Data>((at, key) => at[key] as Data, data as Data);
  if (value === undefined) delete holder[keys.at(-1)!];
  else holder[keys.at(-1)!] = value;
}

function read(without?: { readonly file: 'job' | 'shop'; readonly path: string }) {
  const [ofJob, ofShop] = [jobFile(), shopFile()];
  if (without) change(without.file === 'job' ? ofJob : ofShop, without.path);
  return readJob(JSON.stringify(ofJob), { loadShop: () => JSON.stringify(ofShop) });
}

/** What a job has in place of a key that its file leaves out: a value, or nothing at the key’s own place or at another. */
const LEFT_OUT: readonly (readonly [path: string, place: string, value?: unknown])[] = [
  ['title', 'title', 'Untitled job'],
  ['units', 'units', 'mm'],
  ['terms', 'terms'],
  ['spares', 'spares'],
  ['spread', 'spread'],
  ['season', 'season'],
  ['doors', 'doors', []],
  ['panel/measured', 'panel/measured', 20],
  ['panel/sawn', 'panel/sawn', 'flat'],
  ['panel/film', 'panel/film'],
  ['frame/endGap', 'frame/endGap'],
  ['frame/joint', 'frame/joint'],
  ['frame/joint/length', 'frame/joint/length', 11],
  ['frame/sawn', 'frame/sawn'],
  ['frame/sticking/head', 'frame/stickingHead'],
  ['frame/backEdge', 'frame/backEdge'],
  ['frame/backEdge/head', 'frame/backEdge/head'],
  ['cuts/0/name', 'cuts/0/name', 'cut 1'],
  ['cuts/0/depth', 'cuts/0/depth', 9],
  ['cuts/0/reach', 'cuts/0/reach', 38],
  ['cuts/0/run', 'cuts/0/run', 'under'],
  ['cuts/0/presented', 'cuts/0/tilt', 0],
  ['cuts/0/head', 'cuts/0/head'],
  // The head that its knife is kept in.
  ['cuts/1/head', 'cuts/1/head', 'small'],
  ['cuts/0/profile/land', 'cuts/0/profile/land', 0],
  ['cuts/0/profile/shoulder', 'cuts/0/profile/shoulder', 0],
  ['cuts/0/profile/balance', 'cuts/0/profile/balance', 0.5],
  ['fit', 'fit', { target: 0.2, snug: 0.05, loose: 0.5 }],
  ['season/pinned', 'season/pinned', true],
  ['doors/0/name', 'doors/0/name', 'door 1'],
  ['doors/0/topRail', 'doors/0/topRail', 61],
  ['doors/0/bottomRail', 'doors/0/bottomRail', 61],
  ['doors/0/midRail', 'doors/0/midRail', 65],
  ['doors/0/quantity', 'doors/0/quantity', 1],
  ['doors/0/grain', 'doors/0/grain', 'up'],
  ['doors/1/head', 'doors/1/head'],
  ...['thickness', 'height', 'fence', 'grooveWidth', 'film'].map(
    (key) => [`spread/${key}`, `spread/${key}`, 0] as const,
  ),
];

const LEFT_OUT_OF_SHOP: typeof LEFT_OUT = [
  ['logo', 'maker/logo'],
  ['address', 'maker/address', []],
  ['rates', 'rates'],
  ['rates/margin', 'rates/margin', 0],
  ['rates/validDays', 'rates/validDays', 30],
  ['rates/terms', 'rates/terms', []],
  ['rates/wood', 'rates/wood', {}],
  ...['currency', 'hour', 'setUp', 'metresPerHour', 'door', 'finish', 'knife', 'tax', 'deposit'].map(
    (key) => [`rates/${key}`, `rates/${key}`] as const,
  ),
  ...['groundFor', 'presented', 'fromFace', 'sideRelief', 'kept'].map(
    (key) => [`knives/cove/${key}`, `knives/cove/${key}`] as const,
  ),
  ['knives/cove/measured', 'knives/cove/measured', 'wood'],
  ['heads/small/shear', 'heads/small/shear', 0],
  ['heads/small/wedge', 'heads/small/wedge', Math.PI / 4],
  ['heads/small/knives', 'heads/small/knives', 2],
  ['heads/small/limiterGap', 'heads/small/limiterGap', 1.1],
  ['heads/small/knifeThickness', 'heads/small/knifeThickness', 8],
  ['heads/small/feed', 'heads/small/feed', 'hand'],
  ['heads/small/jointed', 'heads/small/jointed', false],
  ...['bore', 'minSpeed', 'slots'].map((key) => [`heads/small/${key}`, `heads/small/${key}`] as const),
  // A table without rings has its bare opening.
  ['machines/main/rings', 'machines/main/rings', [220]],
  ['machines/main/tilt', 'machines/main/tilt', [0, 0]],
  ['machines/main/reversing', 'machines/main/reversing', false],
  ...['spindle', 'spindleLength', 'power', 'fenceGap', 'bearings', 'ringFences', 'tallFence'].map(
    (key) => [`machines/main/${key}`, `machines/main/${key}`] as const,
  ),
];

describe('a file', () => {
  it('with every key gives the job with every figure', () => {
    const given = read();
    expect(given.faults).toEqual([]);
    expect(given.job).toEqual(job());
  });

  it.each([
    ...LEFT_OUT.map(([path, place, value]) => ({ file: 'job' as const, path, place, value })),
    ...LEFT_OUT_OF_SHOP.map(([path, place, value]) => ({ file: 'shop' as const, path, place: `shop/${place}`, value })),
  ])('of a $file without $path gives the same job but for $place', ({ file, path, place, value }) => {
    const given = read({ file, path });
    expect(given.faults).toEqual([]);
    const expected = job();
    change(expected, place, value);
    expect(given.job).toEqual(expected);
  });

  it('of a shop without a rule has its default, and says that it is assumed', () => {
    for (const rule of [...Object.keys(RULES), 'leastSideClearance', 'leastClearance'])
      expect(read({ file: 'shop', path: `rules/${rule}` }).job?.shop?.assumedRules).toEqual([rule]);
  });

  it.each([
    ...[
      'panel',
      'panel/thickness',
      'frame',
      'frame/thickness',
      'frame/groove/width',
      'frame/groove/depth',
      'frame/groove/setback',
    ],
    ...[
      'frame/swellGap',
      'cuts/0/side',
      'cuts/0/profile/reach',
      'cuts/0/profile/depth',
      'season/made',
      'season/driest',
    ],
    ...['season/dampest', 'doors/0/width', 'doors/0/height', 'doors/0/stile', 'doors/0/rail', 'doors/1/overlay'],
    ...[
      'doors/1/opening/width',
      'doors/1/opening/height',
      'doors/1/head/rise',
      'doors/1/head/crown',
      'doors/1/head/ears',
    ],
  ])('without %s says so, and nothing else', (path) => {
    const given = read({ file: 'job', path });
    const at = path.replaceAll(/\/(\d+)/g, '[$1]').replaceAll('/', '.');
    expect(given.faults.map((fault) => fault.at)).toEqual([at]);
    expect(given.job).toBeNull();
  });

  it.each([
    ['job', { 'cuts/0/profile': { shape: 'rebate', reach: 38, depth: 9, land: 2 } }, ['cuts[0].profile.land']],
    ['job', { 'cuts/0/profile': { shape: 'rebate', reach: 38, depth: 9, shoulder: 1 } }, ['cuts[0].profile.shoulder']],
    ['job', { 'cuts/0/profile': { shape: 'rebate', reach: 38, depth: 9, land: 0, shoulder: 0 } }, []],
    ['job', { 'doors/1/gap': 2 }, ['doors[1].gap']],
    ['job', { 'doors/1/hung': 'inset' }, ['doors[1].overlay']],
    ['job', { 'doors/1/leaves': 1 }, ['doors[1].between']],
    ['job', { 'doors/0/leaves': 2 }, ['doors[0].leaves']],
    ['job', { 'doors/1/width': 600 }, ['doors[1].width']],
    ['job', { 'doors/1/head/path': 'M 0 0 H 9' }, ['doors[1].head.path']],
    ['job', { 'doors/0/across': 3, 'doors/0/up': 3 }, ['doors[0].across']],
    ['shop', { name: undefined }, ['address']],
    ['shop', { name: undefined, address: undefined }, ['logo']],
    ['shop', { name: undefined, address: [] }, ['logo']],
    ['shop', { name: undefined, address: [], logo: undefined }, []],
  ] as const)('of a %s with %j is refused at what has no use there: %j', (file, changes, at) => {
    const [ofJob, ofShop] = [jobFile(), shopFile()];
    for (const [path, value] of Object.entries(changes)) change(file === 'job' ? ofJob : ofShop, path, value);
    const { faults } = readJob(JSON.stringify(ofJob), { loadShop: () => JSON.stringify(ofShop) });
    expect(faults.map((fault) => fault.at)).toEqual(at);
  });
});
