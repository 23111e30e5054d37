// Reads and traces pictures of samples in a worker, so that the page stays responsive.
import { readScan, type ScanImage, type Traced, tracedSvg, traceScan } from '@fielded/exchange';
import { traceByThickness } from './trace-by-thickness.ts';
import type { TraceAnswer, TraceRequest } from './trace-picture.ts';

let scan: ScanImage | null = null;

addEventListener('message', (event: MessageEvent<TraceRequest>) => {
  postMessage(answer(event.data) satisfies TraceAnswer);
});

function answer({ bytes, scale }: TraceRequest): TraceAnswer {
  if (bytes !== undefined) {
    scan = null;
    const read = readScan(new Uint8Array(bytes));
    if ('refused' in read) return { kind: 'refused', ...read };
    scan = read;
  }
  if (scan === null) return { kind: 'refused', refused: 'there is no picture', instead: 'Choose one' };
  if (scale === undefined && scan.dpi === null) return { kind: 'asks-scale' };
  const traced =
    scale !== undefined && 'thickness' in scale
      ? traceByThickness(scan, scale.thickness)
      : traceScan(scan, scale === undefined ? scan.dpi! : [scale.dpi, scale.dpi]);
  return 'refused' in traced ? { kind: 'refused', ...traced } : { kind: 'traced', ...told(traced, scan) };
}

/** The part of a trace that the page shows: without the points, which the drawing has. */
function told(traced: Traced, image: ScanImage): Omit<Extract<TraceAnswer, { kind: 'traced' }>, 'kind'> {
  const { dpi, thickness, turned } = traced;
  const side = ({ path, reach, depth, deviation, arcs }: Traced['front']) => ({ path, reach, depth, deviation, arcs });
  return {
    dpi,
    thickness,
    turned,
    front: side(traced.front),
    back: traced.back && side(traced.back),
    svg: tracedSvg(image, traced, { bare: true }),
  };
}
