import type { Chain, Curve } from '@fielded/geometry';
import { Colors, DxfWriter, point3d, Units } from '@tarikjabiri/dxf';

/** Outlines under one name; x right, y up, mm. */
export interface DxfLayer {
  readonly name: string;
  readonly chains: readonly Chain[];
}

/** The colours layers are shown in, in turn: those every reader has. */
const LAYER_COLORS = [Colors.White, Colors.Red, Colors.Blue, Colors.Green];

/**
 * A DXF file (AutoCAD 2007 format) of lines and true arcs in their order, in millimetres.
 *
 * LINE and ARC entities, not polylines with bulges: LibreOffice Draw 7.4 draws a polyline's bulges as chords and shows no
 * drawing that has nothing else. Figures are written in full, so ends of neighbouring pieces meet to 1e-9 mm. The same
 * layers give the same text. Throws RangeError for a chain without pieces.
 */
export function writeDxf(layers: readonly DxfLayer[]): string {
  const dxf = new DxfWriter();
  dxf.setUnits(Units.Millimeters);
  layers.forEach(({ name, chains }, index) => {
    dxf.addLayer(name, LAYER_COLORS[index % LAYER_COLORS.length]!, 'Continuous');
    for (const chain of chains) {
      if (chain.length === 0) throw new RangeError(`the layer ${name} has an outline without pieces`);
      for (const c of chain) addPiece(dxf, c, name);
    }
  });
  return dxf.stringify();
}

function addPiece(dxf: DxfWriter, c: Curve, layerName: string): void {
  if (c.turn === 0) {
    dxf.addLine(point3d(plain(c.x0), plain(c.y0)), point3d(plain(c.x1), plain(c.y1)), { layerName });
    return;
  }
  // An ARC always runs anticlockwise, so one that runs clockwise is written from its end.
  const start = angleAt(c, c.x0, c.y0);
  const end = angleAt(c, c.x1, c.y1);
  const [from, to] = c.turn > 0 ? [start, end] : [end, start];
  dxf.addArc(point3d(plain(c.cx), plain(c.cy)), c.r, from, to, { layerName });
}

/** Degrees, 0 to 360. */
function angleAt(c: Curve, x: number, y: number): number {
  const degrees = (Math.atan2(y - c.cy, x - c.cx) * 180) / Math.PI;
  return plain(degrees < 0 ? degrees + 360 : degrees);
}

/** Rounding noise about 0 would be written with an exponent, which not every reader takes: it is 0. */
function plain(value: number): number {
  return Math.abs(value) < 1e-9 ? 0 : value;
}
