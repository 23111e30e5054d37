import type { SetUp } from '@fielded/core';

type FrameCut = NonNullable<SetUp['frame']>;
type SayLength = (mm: number) => string;

/** How a part of the frame lies on the machine for its cut, in a few words. */
export function sayFrameHold({ kind }: FrameCut, run: SetUp['run']): string {
  switch (kind) {
    case 'cope':
      return `rail ends, front ${run === 'under' ? 'down' : 'up'}, in a carrier`;
    case 'sticking':
      return `frame parts, front ${run === 'under' ? 'down' : 'up'}`;
    case 'back edge':
      return `glued-up frames, back ${run === 'under' ? 'down' : 'up'}, on a bearing`;
  }
}

/** What goes with a cut on the frame, as sentences: what is made beside it, or what it leaves in the corners. */
export function sayFrameSizes(cut: FrameCut, length: SayLength): string[] {
  switch (cut.kind) {
    case 'cope': {
      const { tenon, shoulder } = cut;
      const behind =
        shoulder.depth > 0
          ? [`Then the square shoulder behind it: ${length(shoulder.length)} long, ${length(shoulder.depth)} deep.`]
          : [];
      return [`Leaves a stub tenon ${length(tenon.length)} long, ${length(tenon.thickness)} thick.`, ...behind];
    }
    case 'sticking': {
      const { width, depth, setback } = cut.groove;
      return [`Then the groove: ${length(width)} wide, ${length(depth)} deep, ${length(setback)} below the front.`];
    }
    case 'back edge':
      return [
        `No fence stands inside a frame: a bearing of ${length(cut.bearing)} radius follows the sight edge.`,
        `Inside corners keep a radius of ${length(cut.corner)}, that of the cutter.`,
      ];
  }
}

/** What the test piece should show. */
export function sayFrameTest(cut: FrameCut, cuttingPoint: number, length: SayLength): string {
  if (cut.kind === 'cope') return `Test piece, front face to tenon: ${length(cuttingPoint)}`;
  return cut.kind === 'sticking' && cut.coped
    ? 'Test piece on the coped one: gap along the joint'
    : 'Test piece measured:';
}
