import { arcAngle, type Chain } from '@fielded/core';
import { Colors, DxfWriter, LWPolylineFlags, type LWPolylineVertex, point2d, Units } from '@tarikjabiri/dxf';

/** Outlines under one name; x right, y up, mm. */
export interface DxfLayer {
  readonly name: string;
  readonly chains: readonly Chain[];
}

/** The colours layers are shown in, in turn: those every reader has. */
const LAYER_COLORS = [Colors.White, Colors.Red, Colors.Blue, Colors.Green];

/**
 * A DXF file (AutoCAD 2007 format) of open polylines with true arcs, in millimetres.
 *
 * Each chain is one LWPOLYLINE; an arc is its vertex's bulge, tan(angle / 4), positive anticlockwise (DXF reference, group
 * code 42). Coordinates are written to 1e-9 mm. The same layers give the same text. Throws RangeError for a chain without
 * pieces.
 */
export function writeDxf(layers: readonly DxfLayer[]): string {
  const dxf = new DxfWriter();
  dxf.setUnits(Units.Millimeters);
  layers.forEach(({ name, chains }, index) => {
    dxf.addLayer(name, LAYER_COLORS[index % LAYER_COLORS.length]!, 'Continuous');
    for (const chain of chains) {
      dxf.addLWPolyline(vertices(chain, name), { flags: LWPolylineFlags.None, layerName: name });
    }
  });
  return dxf.stringify();
}

function vertices(chain: Chain, name: string): LWPolylineVertex[] {
  const last = chain.at(-1);
  if (last === undefined) throw new RangeError(`the layer ${name} has an outline without pieces`);
  const starts = chain.map((c) => ({ ...vertex(c.x0, c.y0), bulge: c.turn * Math.tan(arcAngle(c) / 4) + 0 }));
  return [...starts, vertex(last.x1, last.y1)];
}

function vertex(x: number, y: number): LWPolylineVertex {
  return { point: point2d(picometres(x), picometres(y)) };
}

/** Rounded to 1e-9 mm; never -0, and never so small that it would be written with an exponent. */
function picometres(mm: number): number {
  const rounded = Number(mm.toFixed(9));
  return Math.abs(rounded) < 1e-6 ? 0 : rounded;
}
