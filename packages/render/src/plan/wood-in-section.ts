import { cutOutline, type Report, type SetUp } from '@fielded/core';
import { type Curve, type Loop, poseLoops, posePoint, readLoops } from '@fielded/geometry';
import { poseCut } from '../views/cut-pose.ts';
import { regionOf } from '../views/cut-sketch.ts';
import { shortenTo, splitBreaks } from '../views/panel-part.ts';
import type { Mounted } from './mounted.ts';

/** Stock as it lies in a set-up, paper mm: its loops, the edges drawn and the breaks, the edges that the cut and the one above it sweep, and the y of the table's top. */
interface PosedWood {
  readonly loops: Loop[];
  readonly edges: ReturnType<typeof splitBreaks>['edges'];
  readonly breaks: ReturnType<typeof splitBreaks>['breaks'];
  readonly swept: Curve[];
  readonly sweptAbove: Curve[];
  readonly table: number;
}

/** The stock as it lies after this cut, the cut's own edge, and where the table's top is. */
export function poseWood(
  report: Report,
  setUps: readonly SetUp[],
  { setUp, upper, last }: Mounted,
  scale: number,
): PosedWood {
  const { cut, made, thickness, width } =
    setUp.of === 'frame' ? frameStock(report, setUp) : panelStock(report, setUps, setUp, last);
  const { pose, against } = poseCut({ ...cut, run: setUp.run }, thickness, scale);
  const shown = shortenTo(width, width - FIELD + BEYOND, scale);
  const outline = cutOutline(
    thickness,
    width,
    made.map((each) => regionOf(each, thickness)),
  );
  const loops = poseLoops(pose, readLoops(outline).map(shown.shorten));
  const { edges, breaks } = splitBreaks(loops, posePoint(pose, shown.to, 0), against === 'fence');
  const sweptOf = (path: string) => poseLoops(pose, readLoops(path)).flatMap(({ curves }) => curves);
  const other = report.section.cuts.find(({ name }) => name === upper?.cut);
  const [swept, sweptAbove] = [sweptOf(cut.swept), other ? sweptOf(other.swept) : []];
  return { loops, edges, breaks, swept, sweptAbove, table: against === 'fence' ? 0 : thickness * scale };
}

/** Field that a report's section shows beyond its greatest reach, mm. */
const FIELD = 20;

/** The panel after this cut and those set up before it. */
function panelStock(report: Report, setUps: readonly SetUp[], setUp: SetUp, last: number) {
  const { cuts, thickness, width } = report.section;
  const cut = cuts.find(({ name }) => name === setUp.cut) ?? cuts[0]!;
  const panel = setUps.slice(0, last + 1).filter(({ of }) => of === 'panel');
  const made = panel.flatMap((each) => cuts.filter(({ name }) => name === each.cut));
  return { cut, made, thickness, width };
}

/** A part of the frame with its own cut alone. */
function frameStock(report: Report, { cut: name, side, swept, fence }: SetUp) {
  const reach = fence.standsOut;
  const cut = { ...report.section.cuts[0]!, name, side, swept, reach, faceEnd: reach, presented: 0 };
  return { cut, made: [cut], thickness: report.frame.thickness, width: reach + FIELD };
}

/** Wood that is shown beyond the cut, paper mm. */
const BEYOND = 6;
