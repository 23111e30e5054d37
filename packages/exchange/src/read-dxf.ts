import { arc, type Curve, line, mirrorCurve } from '@fielded/geometry';
import { type DxfEntity, type DxfGroup, figureOf, numberOf, takeApart, textOf } from './dxf-groups.ts';
import { type DxfOutline, joinLoose, type LoosePiece } from './join-loose.ts';
import { MOST_STROKES } from './most-strokes.ts';

/** What a DXF file holds that can be read as outlines, and what was left out and why. */
export interface DxfReading {
  readonly outlines: readonly DxfOutline[];
  readonly leftOut: readonly string[];
}

/** Millimetres for one of the file's units, by $INSUNITS (DXF reference); 0, no unit given, is taken as millimetres. */
const UNIT_LENGTHS: Readonly<Record<number, number>> = { 0: 1, 1: 25.4, 2: 304.8, 4: 1, 5: 10, 6: 1000 };

/**
 * The outlines of a text DXF file, in millimetres: LWPOLYLINE and POLYLINE with their bulges, LINE and ARC.
 *
 * Every polyline is an outline of its own, closed ones with their closing piece; single lines and arcs are joined where
 * their ends meet within `join` mm, in the file's order. Everything else in the drawing is named in `leftOut` with how
 * many of it there are. A text that is no DXF file, holds a figure that is no number, or more than `MOST_STROKES` lines and
 * arcs, gives no outline and says so. Takes time in proportion to the text.
 */
export function readDxf(text: string, join = 1e-6): DxfReading {
  const contents = takeApart(text);
  if (contents === undefined) return { outlines: [], leftOut: ['This is not a text DXF file, or it breaks off.'] };
  const code = numberOf(contents.header.get('$INSUNITS') ?? [], 70, 0);
  const unit = UNIT_LENGTHS[code];
  if (unit === undefined)
    return { outlines: [], leftOut: [`The drawing's unit ($INSUNITS ${code}) is not a usual one.`] };
  const outlines: DxfOutline[] = [];
  const loose: LoosePiece[] = [];
  const others = new Map<string, number>();
  for (const entity of foldVertices(contents.entities)) {
    const layer = textOf(entity.groups, 8);
    if (entity.type === 'LWPOLYLINE' || entity.type === 'POLYLINE') {
      const chain = polyline(entity, unit).map(facing(entity));
      if (chain.length > 0) outlines.push({ layer, chain });
    } else if (entity.type === 'LINE' || entity.type === 'ARC') {
      const curve = single(entity, unit);
      // A line stands in the drawing's own coordinates, whichever way it faces.
      loose.push({ layer, curve: entity.type === 'ARC' ? facing(entity)(curve) : curve });
    } else others.set(entity.type, (others.get(entity.type) ?? 0) + 1);
  }
  const strokes = loose.length + outlines.reduce((sum, { chain }) => sum + chain.length, 0);
  if (strokes > MOST_STROKES)
    return {
      outlines: [],
      leftOut: [`The drawing has ${strokes} lines and arcs, and up to ${MOST_STROKES} are read.`],
    };
  const isWild = (c: Curve) => !Number.isFinite(c.x0 + c.y0 + c.x1 + c.y1 + c.r);
  if (loose.some(({ curve }) => isWild(curve)) || outlines.some(({ chain }) => chain.some(isWild)))
    return { outlines: [], leftOut: ['The drawing holds a figure that is not a number.'] };
  for (const outline of joinLoose(loose, join)) outlines.push(outline);
  return { outlines, leftOut: nameOthers(others) };
}

/** Kinds of entities that are named: what is past these only repeats. */
const MOST_KINDS = 8;

function nameOthers(others: ReadonlyMap<string, number>): string[] {
  const named = [...others]
    .slice(0, MOST_KINDS)
    .map(([type, count]) => `${count} × ${type.length > 40 ? `${type.slice(0, 38)}…` : type}`);
  return others.size > MOST_KINDS ? [...named, `and ${others.size - MOST_KINDS} more kinds`] : named;
}

/** What an entity's own coordinates are in the drawing's: one that was mirrored faces down (extrusion 0, 0, −1), its x the other way. */
function facing({ groups }: DxfEntity): (c: Curve) => Curve {
  return numberOf(groups, 230, 1) < 0 ? (c) => mirrorCurve(c, 0) : (c) => c;
}

/** Old polylines hold their vertices as entities that follow, up to SEQEND: they are made one entity. */
function foldVertices(entities: readonly DxfEntity[]): DxfEntity[] {
  const folded: { type: string; groups: DxfGroup[] }[] = [];
  let open: { type: string; groups: DxfGroup[] } | undefined;
  for (const { type, groups } of entities) {
    if (type === 'VERTEX' && open) open.groups.push(...groups.filter((g) => [10, 20, 42].includes(g.code)));
    else if (type === 'SEQEND') open = undefined;
    else {
      // A POLYLINE's own 10 and 20 are no vertex but its elevation.
      const own = type === 'POLYLINE' ? groups.filter((g) => ![10, 20].includes(g.code)) : [...groups];
      const entity = { type, groups: own };
      folded.push(entity);
      if (type === 'POLYLINE') open = entity;
    }
  }
  return folded;
}

function polyline({ groups }: DxfEntity, unit: number): Curve[] {
  const vertices: { x: number; y: number; bulge: number }[] = [];
  for (const { code, value } of groups) {
    const last = vertices.at(-1);
    if (code === 10) vertices.push({ x: figureOf(value) * unit, y: 0, bulge: 0 });
    else if (code === 20 && last) last.y = figureOf(value) * unit;
    else if (code === 42 && last) last.bulge = figureOf(value);
  }
  if ((numberOf(groups, 70, 0) & 1) === 1 && vertices[0]) vertices.push({ ...vertices[0], bulge: 0 });
  const curves: Curve[] = [];
  vertices.slice(1).forEach((to, index) => {
    const from = vertices[index]!;
    if (from.x !== to.x || from.y !== to.y) curves.push(bulged(from.x, from.y, to.x, to.y, from.bulge));
  });
  return curves;
}

/**
 * The piece between two vertices: bulge = tan(angle / 4), so the centre lies (1 − bulge²) / (4·bulge) chords to the left
 * of the chord's middle.
 */
function bulged(x0: number, y0: number, x1: number, y1: number, bulge: number): Curve {
  if (bulge === 0) return line(x0, y0, x1, y1);
  const off = (1 - bulge * bulge) / (4 * bulge);
  return arc(x0, y0, x1, y1, (x0 + x1) / 2 - off * (y1 - y0), (y0 + y1) / 2 + off * (x1 - x0), bulge > 0 ? 1 : -1);
}

function single({ type, groups }: DxfEntity, unit: number): Curve {
  const at = (code: number) => numberOf(groups, code, 0) * unit;
  if (type === 'LINE') return line(at(10), at(20), at(11), at(21));
  const [cx, cy, r] = [at(10), at(20), at(40)];
  const point = (code: number) => {
    const angle = (numberOf(groups, code, 0) * Math.PI) / 180;
    return [cx + r * Math.cos(angle), cy + r * Math.sin(angle)] as const;
  };
  return arc(...point(50), ...point(51), cx, cy, 1);
}
