import type { Job } from '../job/job.ts';
import { copeProfile } from '../joint/cope.ts';
import { backLipOf, type Frame, jointOf } from '../joint/frame.ts';
import { keptKnife } from '../knife/kept-knife.ts';
import type { Cut } from '../machining/cut.ts';
import type { Profile } from '../profile/profile.ts';
import { headNamed, type Shop } from '../shop/shop.ts';
import type { FrameCut } from './set-up-report.ts';
import { prepareWork, type Work } from './work.ts';

/**
 * The frame's own cuts that name a head, in the order they are run: the cope on the rails' ends, the sticking along all parts,
 * the back's arris after glue-up (formula U14). Each has the face it works on the table. The cope is run in the sticking's head.
 */
export function frameWorks({ frame }: Pick<Job, 'frame'>, shop: Shop): Work[] {
  const { sticking, stickingHead, backEdge, thickness } = frame;
  const cope = copeProfile(frame);
  const prepare = (bare: Cut | undefined, at: string, what: FrameCut): Work[] => {
    // A knife that the shop keeps in that head is the one that is used.
    const knife = bare && keptKnife(shop, bare.head!, bare.profile);
    const cut = bare && { ...bare, ...(knife !== undefined && { knife }) };
    const work = cut && prepareWork(shop, cut, { at, of: 'frame', thickness, frame: what });
    return work ? [work] : [];
  };
  return [
    ...prepare(cutOf('cope', 'front', cope, stickingHead), STICKING, describeCope(frame, cope?.reach ?? 0)),
    ...prepare(cutOf('sticking', 'front', sticking, stickingHead), STICKING, {
      kind: 'sticking',
      groove: frame.groove,
      coped: cope !== undefined,
    }),
    ...prepare(cutOf('back edge', 'back', backEdge?.profile, backEdge?.head), 'frame.backEdge', {
      kind: 'back edge',
      ...cornerRadii(shop, backEdge),
    }),
  ];
}

const STICKING = 'frame.sticking';

function cutOf(
  name: string,
  side: Cut['side'],
  profile: Profile | undefined,
  head: string | undefined,
): Cut | undefined {
  if (profile === undefined || head === undefined) return undefined;
  const { depth, reach } = profile;
  return { name, side, profile, depth, reach, run: 'under', tilt: 0, head };
}

/** The tenon that the cope leaves the front of, and the square shoulder that has to be made behind it. */
function describeCope(frame: Frame, long: number): FrameCut {
  const { groove } = frame;
  return {
    kind: 'cope',
    tenon: { length: jointOf(frame).length, thickness: groove.width },
    shoulder: { length: long, depth: Math.max(0, backLipOf(frame)) },
  };
}

/** On a bearing against the sight edge, R − ρ, the corners of the inside keep the radius of the cutter, R, at the back's face. */
function cornerRadii({ heads }: Shop, backEdge: Frame['backEdge']): { bearing: number; corner: number } {
  const { head, profile } = backEdge ?? {};
  const named = headNamed({ heads }, head);
  const corner = (named?.cuttingDiameter ?? 0) / 2;
  return { bearing: corner - (profile?.reach ?? 0), corner };
}
