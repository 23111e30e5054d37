import type { Report } from '@fielded/core';
import type { JSX } from 'preact';
import { useMemo } from 'preact/hooks';
import { type Doc, readDoc } from '../desk/doc.ts';
import { reportJoint } from '../job/answer-joint.ts';
import { adoptStyles } from '../style/adopt-styles.ts';
import thumbStyles from '../style/thumb.css?inline';

adoptStyles(thumbStyles);

/** How much of the frame is shown behind the groove, and the margin round the picture, mm. */
const BESIDE = 14;
const MARGIN = 1.5;

/** The joint of a job as a small picture; nothing where it cannot be read. */
export function JointThumb({ doc }: { doc: Pick<Doc, 'data' | 'shop'> }): JSX.Element | null {
  const report = useMemo(() => readJoint(doc), [doc]);
  if (report === null) return <span class="thumb" />;
  const { frame, section, tongue, fit } = report;
  const { groove, thickness } = frame;
  const sight = tongue.insertion;
  // The frame's front face, below the panel's where that stands proud.
  const face = fit.frontFace?.most ?? 0;
  const [floor, outside] = [sight - groove.depth, sight - groove.depth - BESIDE];
  const [top, left] = [Math.min(0, face) - MARGIN, outside - MARGIN];
  const width = section.width + MARGIN - left;
  const height = Math.max(section.thickness, face + thickness) + MARGIN - top;
  const wall = face + groove.setback;
  return (
    <svg class="thumb" viewBox={`${left} ${top} ${width} ${height}`} aria-hidden="true">
      <path
        class="thumb-frame"
        d={`M${outside} ${face}H${sight}V${wall}H${floor}v${groove.width}H${sight}V${face + thickness}H${outside}Z`}
      />
      <path class="thumb-panel" d={section.outline} />
    </svg>
  );
}

function readJoint(doc: Pick<Doc, 'data' | 'shop'>): Report | null {
  try {
    const { job } = readDoc(doc);
    return job && reportJoint(job);
  } catch {
    return null;
  }
}
