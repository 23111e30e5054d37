import type { Refusal } from '@fielded/core';
import { type Chain, flipCurve, loopsData, reverseCurves } from '@fielded/geometry';
import { readDxf } from './read-dxf.ts';
import { readSvgPath } from './svg-path.ts';

/**
 * The outline in a drawing file, DXF or SVG by the ending of its name, as SVG path data in millimetres: x in from the
 * panel's edge, y down from the worked face.
 *
 * A DXF is drawn with its origin where edge and face meet, x to the right, the wood below (y negative); it holds one
 * outline, drawn either way round. An SVG holds one path, in the sense of path data: y down. What is left of the drawing
 * (text, dimensions) is passed over.
 */
export function readOutlineFile(name: string, text: string): string | Refusal {
  const ending = /\.[^.]*$/.exec(name.toLowerCase())?.[0] ?? '';
  if (ending === '.svg') return readSvgPath(text);
  if (ending === '.dxf') return fromDxf(text);
  return {
    refused: 'this is neither a DXF nor an SVG drawing by its name',
    instead: 'Name a file that ends in .dxf or .svg',
  };
}

/**
 * Pieces whose ends lie this near to each other, mm, meet: programs that write four decimals of an inch leave gaps of 0.002 mm, and an outline
 * is read to 0.005 mm in any case.
 */
const ENDS_MEET = 0.005;

function fromDxf(text: string): string | Refusal {
  const { outlines, leftOut } = readDxf(text, ENDS_MEET);
  const [only, another] = outlines;
  if (only === undefined) {
    const held =
      leftOut.length === 0
        ? 'there is nothing in the drawing'
        : leftOut.join(', ').replace(/\.$/, '').replace(/^This/, 'this');
    return {
      refused: `no outline of lines and arcs was found: ${held}`,
      instead: 'Save it with one polyline, or lines and arcs that meet',
    };
  }
  if (another !== undefined) {
    return {
      refused: `the drawing holds ${outlines.length} separate outlines`,
      instead: 'Leave one in it, its pieces meeting end to end',
    };
  }
  // From y up to depth, which grows downwards; every figure in full.
  const chain = fromEdgeToFace(only.chain.map((c) => flipCurve(c, 0)));
  return loopsData([{ curves: chain, closed: false }], String);
}

/** Drawn from the face to the edge, it is run the other way: it starts at its deeper end. */
function fromEdgeToFace(chain: Chain): Chain {
  const [first, last] = [chain[0]!, chain[chain.length - 1]!];
  const runsInwards = first.y0 > last.y1 || (first.y0 === last.y1 && first.x0 <= last.x1);
  return runsInwards ? chain : reverseCurves(chain);
}
