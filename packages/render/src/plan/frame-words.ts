import type { SetUp } from '@fielded/core';
import { sayPlan } from '../words/english/plan.ts';
import type { InVoice } from '../words/lengths.ts';

type FrameCut = NonNullable<SetUp['frame']>;

/** What a set-up's cut is called: by its name, or by its kind for a cut on the frame. */
export function nameCut({ cut, frame }: SetUp, voice: InVoice): string {
  return frame === undefined ? cut : sayPlan(`frame-cut.${frame.kind}`, {}, voice);
}

/** What goes with a cut on the frame, as sentences: what is made beside it, or what it leaves in the corners. */
export function sayFrameSizes(cut: FrameCut, voice: InVoice): string[] {
  switch (cut.kind) {
    case 'cope': {
      const { tenon, shoulder } = cut;
      const behind = shoulder.depth > 0 ? [sayPlan('set.shoulder', shoulder, voice)] : [];
      return [sayPlan('set.tenon', tenon, voice), ...behind];
    }
    case 'sticking':
      return [sayPlan('set.groove', cut.groove, voice)];
    case 'back edge':
      return [
        sayPlan('set.bearing', { bearing: cut.bearing }, voice),
        sayPlan('set.corner', { corner: cut.corner }, voice),
      ];
  }
}

/** What the test piece of a cut on the frame should show. */
export function sayFrameTest(cut: FrameCut, cuttingPoint: number, voice: InVoice): string {
  if (cut.kind === 'cope') return sayPlan('test.cope', { mm: cuttingPoint }, voice);
  return sayPlan(cut.kind === 'sticking' && cut.coped ? 'test.coped' : 'test.measured', {}, voice);
}
