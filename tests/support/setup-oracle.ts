// Set-ups worked out a second time, from the definitions of docs/formulas.md (U1 to U11, U14) alone: rebates, whose areas are products.
// Nothing of the engine is used.

/** A head, a machine, a cut: only what the definitions ask for. Lengths mm, speeds rpm, feeds m/min, power kW. */
export interface OracleHead {
  readonly d: number;
  readonly body: number;
  readonly h: number;
  readonly most: number;
  readonly least?: number;
  readonly bore?: number;
  readonly mechanical?: boolean;
}
export interface OracleMachine {
  readonly speeds: readonly number[];
  readonly seat: readonly [number, number];
  readonly opening: number;
  readonly rings: readonly number[];
  readonly nut: number;
  readonly reversing: boolean;
  readonly feeds: readonly number[];
  readonly spindle?: number;
  readonly long?: number;
  readonly power?: number;
  readonly fenceGap?: number;
}
export interface OracleCut {
  readonly name: string;
  readonly what: 'panel' | 'cope' | 'sticking' | 'back edge';
  readonly T: number;
  readonly D: number;
  readonly rho: number;
  readonly u?: number;
  /** Hand of the knife: +1 under and counterclockwise, or over and clockwise. */
  readonly k: 1 | -1;
  readonly head: OracleHead;
  /** What this cut takes of the stock set to a depth, mm². */
  readonly area: (depth: number) => number;
  /** Taken off the worked face and off the other one before it, at the edge itself. */
  readonly before: { readonly same: number; readonly other: number };
}
type Run = 'under' | 'over';
type Rotation = 'counterclockwise' | 'clockwise';

const CLEAR = 3;
const RIM = [40, 70] as const;
const MARK = 1.27;
const ENERGY = 40;
const LAST = 1.6;

/** Codes of everything that stands against a way. */
export function oracleAgainst(
  cut: OracleCut,
  m: OracleMachine,
  run: Run,
  rotation: Rotation,
  opening?: number,
): string[] {
  const { head } = cut;
  const codes: string[] = [];
  const s = run === 'under' ? 1 : -1;
  const r = rotation === 'counterclockwise' ? 1 : -1;
  const seat = oracleSeat(cut, run);
  const { needed, ring } = oracleHole(cut, m, run);
  const toAxis = head.d / 2 - cut.rho;
  const inside = cut.what === 'back edge';
  if (s * r !== cut.k) codes.push('wrong-hand');
  if (rotation === 'clockwise' && !m.reversing) codes.push('not-reversing');
  if (seat !== null && seat < m.seat[0]) codes.push('seat-too-low');
  if (seat !== null && seat > m.seat[1]) codes.push('seat-too-high');
  if (needed !== null && ring === null) codes.push('hole-too-small');
  if (head.bore !== undefined && m.spindle !== undefined && head.bore !== m.spindle) codes.push('spindle-bore');
  if (m.long !== undefined && head.h > m.long) codes.push('spindle-too-short');
  if (head.body / 2 >= toAxis) codes.push('edge-meets-body');
  if (m.nut / 2 >= toAxis) codes.push('edge-meets-nut');
  if (!inside && m.fenceGap !== undefined && oracleGap(cut) > m.fenceGap) codes.push('fence-gap');
  if (inside && opening !== undefined && head.d + 2 * CLEAR > opening) codes.push('opening-too-small');
  if (oracleSpeeds(head, m).length === 0) codes.push('no-allowed-speed');
  if (head.mechanical && oracleFeeds(cut, m).length === 0) codes.push('needs-feeder');
  return codes;
}

const rim = (d: number, n: number) => (Math.PI * d * n) / 60_000;
const oracleSpeeds = (head: OracleHead, m: OracleMachine) =>
  m.speeds.filter((n) => n <= head.most && n >= (head.least ?? 0) && rim(head.d, n) <= RIM[1]);
const oracleFeeds = (cut: OracleCut, m: OracleMachine) =>
  cut.what === 'cope' || cut.what === 'back edge' ? [] : m.feeds;
const oracleGap = ({ head, rho }: OracleCut) => 2 * Math.sqrt(rho * (head.d - rho)) + 2 * CLEAR;

function oracleSeat({ u, T, D, head }: OracleCut, run: Run): number | null {
  if (u === undefined) return null;
  return run === 'under' ? D + u - head.h : T - D - u;
}

function oracleHole(cut: OracleCut, m: OracleMachine, run: Run): { needed: number | null; ring: number | null } {
  const seat = oracleSeat(cut, run);
  const needed =
    run === 'under' ? cut.head.d + 2 * CLEAR : seat !== null && seat < 0 ? cut.head.body + 2 * CLEAR : null;
  const large = [...m.rings, m.opening].filter((hole) => needed !== null && hole >= needed);
  return { needed, ring: large.length > 0 ? Math.min(...large) : null };
}

/** Every figure of a set-up in a way, as `setups[i]` names them. */
export function oracleFigures(cut: OracleCut, m: OracleMachine, run: Run) {
  const { head, rho, D, T } = cut;
  const allowed = oracleSpeeds(head, m);
  const speed = Math.max(...allowed);
  const pitchAt = (v: number) => (1000 * v) / speed;
  const feeds = oracleFeeds(cut, m);
  const fine = feeds.filter((v) => pitchAt(v) <= MARK + 1e-9);
  const feedRate =
    feeds.length === 0 ? (MARK * speed) / 1000 : fine.length > 0 ? Math.max(...fine) : Math.min(...feeds);
  const inner = head.d / 2 - rho;
  const pitch = pitchAt(feedRate);
  const passes = oraclePasses(cut, m.power, feedRate);
  const likely = (ENERGY * Math.max(...passes.map(({ area }) => area)) * feedRate) / 60;
  const [low, high] = [Math.max(D, cut.before.same), cut.before.other];
  const [from, top] = run === 'under' ? [low, high] : [high, low];
  return {
    cuttingPoint: run === 'under' ? D : T - D,
    seat: oracleSeat(cut, run),
    hole: oracleHole(cut, m, run),
    toAxis: inner,
    standsOut: rho,
    gap: oracleGap(cut),
    bar: cut.what === 'back edge' || T - top <= from ? null : { from, to: T - top },
    speed,
    rim: rim(head.d, speed),
    feedRate,
    pitch,
    wave: inner - Math.sqrt(inner * inner - (pitch * pitch) / 4),
    passes,
    power: { least: likely / 2, likely, most: 2 * likely },
  };
}

/** One pass where the motor has 0.8 of its power for it on end grain; else the last 1.6 mm, and the rest in the fewest equal areas. */
function oraclePasses(cut: OracleCut, power: number | undefined, feed: number): { depth: number; area: number }[] {
  const { D, area } = cut;
  const whole = area(D);
  if (power === undefined) return [{ depth: D, area: whole }];
  const most = (0.8 * power * 1000 * 60) / (2 * ENERGY * feed);
  if (whole <= most) return [{ depth: D, area: whole }];
  const last = Math.min(whole - area(Math.max(0, D - LAST)), most);
  const rest = whole - last;
  const count = Math.max(1, Math.ceil(rest / most - 1e-9));
  const depths = [...Array.from({ length: count }, (_, i) => depthOf((rest * (i + 1)) / count, D, area)), D];
  return depths.map((depth, i) => ({ depth, area: area(depth) - (i === 0 ? 0 : area(depths[i - 1]!)) }));
}

function depthOf(wanted: number, most: number, area: (depth: number) => number): number {
  let [low, high] = [0, most];
  for (let i = 0; i < 60; i++)
    [low, high] = area((low + high) / 2) < wanted ? [(low + high) / 2, high] : [low, (low + high) / 2];
  return low;
}

/** Codes against both heads at once on a machine, the lower cut under the stock, the upper over it; spacer and speed where there are any. */
export function oracleStack(lower: OracleCut, upper: OracleCut, m: OracleMachine) {
  const rotation = lower.k === 1 ? 'counterclockwise' : 'clockwise';
  const codes = new Set<string>();
  const t = lower.T - lower.D - upper.D;
  const spacer = lower.u === undefined || upper.u === undefined ? null : t - lower.u - upper.u;
  if (spacer !== null && spacer < 0) codes.add('stack-spacer');
  if (Math.abs(lower.head.d / 2 - lower.rho - (upper.head.d / 2 - upper.rho)) > 0.01) codes.add('stack-fence');
  if (lower.k === upper.k) codes.add('stack-hands');
  if (m.long !== undefined && lower.head.h + upper.head.h + Math.max(0, spacer ?? 0) > m.long)
    codes.add('stack-spindle');
  const speeds = oracleSpeeds(lower.head, m).filter(
    (n) => oracleSpeeds(upper.head, m).includes(n) && rim(lower.head.d, n) >= RIM[0] && rim(upper.head.d, n) >= RIM[0],
  );
  if (speeds.length === 0) codes.add('stack-speed');
  // Hands are judged together, speeds too, and the upper head stands on the spacer.
  for (const [cut, run] of [
    [lower, 'under'],
    [upper, 'over'],
  ] as const)
    for (const code of oracleAgainst(cut, m, run, rotation))
      if (!['wrong-hand', 'no-allowed-speed'].includes(code) && !(cut === upper && code.startsWith('seat')))
        codes.add(code);
  return { codes, spacer, speed: speeds.length > 0 ? Math.max(...speeds) : null };
}
