import { type Thread, threadChain, threadHeight } from '@fielded/geometry';
import type { Cut } from '../machining/cut.ts';
import { type Sweep, sweepCut } from '../machining/sweep.ts';
import { type Head, headNamed, type Shop, type ShopKnife } from '../shop/shop.ts';
import { type Hand, handOf } from './hand.ts';
import type { FrameCut, Run } from './set-up-report.ts';

/** A cut that a head is named for, with what is known of its tool: on the panel, or on a part of the frame. */
export interface Work {
  readonly cut: Cut;
  /** Its place in the job file. */
  readonly at: string;
  readonly of: 'panel' | 'frame';
  /** What it is for on the frame; left out on the panel. */
  readonly frame?: FrameCut;
  /** Nominal thickness of what is cut, mm. */
  readonly thickness: number;
  readonly headName: string;
  readonly head: Head;
  readonly knife: ShopKnife | undefined;
  readonly hand: Hand;
  readonly groundRun: Run;
  readonly assumed: boolean;
  /** What it clears from stock of nominal thickness. */
  readonly sweep: Sweep;
  /** How deep it goes at the edge itself, mm. */
  readonly atEdge: number;
}

/** A cut with its tool; undefined where it names no head that the shop describes. */
export function prepareWork(
  shop: Shop,
  cut: Cut,
  place: Pick<Work, 'at' | 'of' | 'frame' | 'thickness'>,
): Work | undefined {
  const head = headNamed(shop, cut.head);
  if (cut.head === undefined || head === undefined) return undefined;
  const knife = cut.knife !== undefined && Object.hasOwn(shop.knives, cut.knife) ? shop.knives[cut.knife] : undefined;
  const ground = knife?.groundFor ?? { run: cut.run, rotation: 'counterclockwise' as const };
  const sweep = sweepCut(cut, cut.depth);
  return {
    ...place,
    cut,
    headName: cut.head,
    head,
    knife,
    hand: handOf(ground.run, ground.rotation),
    groundRun: ground.run,
    assumed: knife?.groundFor === undefined,
    sweep,
    atEdge: depthAtEdge(sweep),
  };
}

/** A chain may step at the edge itself: what lies further in than this, mm, counts. */
const JUST_INSIDE = 1e-6;

/** Greatest depth that a sweep takes just inside the edge, mm; 0 where it takes none there. */
function depthAtEdge({ swept }: Sweep): number {
  const threads: Thread[] = [];
  threadChain(swept, 0, threads);
  const there = threads.filter(({ x0, x1 }) => x0 <= JUST_INSIDE && x1 > JUST_INSIDE);
  return Math.max(0, ...there.map((thread) => threadHeight(thread, Math.max(0, thread.x0))));
}
