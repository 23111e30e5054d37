import { type Loop, polygon } from '@fielded/geometry';
import type { Role } from '../scene.ts';
import type { SurfacePoint } from './front-surface.ts';

/** Depth is drawn up and to the right, at this share of its length each way (cabinet projection, ISO 5456-3: 45°, half length). */
const RECEDING = 0.5 * Math.SQRT1_2;

/** A point of the door: x right, y up, d behind the frame's front face, wood mm. */
export type Place = readonly [x: number, y: number, d: number];

/** Where the light comes from: over the left shoulder. */
const LIGHT = normalise([-1, 1, 1.6]);

/** Puts a place of the door on the paper. */
export type Put = (place: Place) => readonly [number, number];

/** Cabinet projection on to the paper, y down. */
export function placer(scale: number): Put {
  return ([x, y, d]) => [scale * (x + RECEDING * d), -scale * (y + RECEDING * d)];
}

/** The normal of a facet along stile or rail; z towards the eye is −d. */
export function facetNormal(from: SurfacePoint, to: SurfacePoint, along: 'stile' | 'rail'): Place {
  const [da, dd] = [to.a - from.a, to.d - from.d];
  return normalise(along === 'stile' ? [dd, 0, da] : [0, dd, da]);
}

/** The tone of a face by how squarely the light meets it (Lambert): 1 in full light, 8 turned away. */
export function toneOf(normal: Place): Role {
  const light = normal[0] * LIGHT[0] + normal[1] * LIGHT[1] + normal[2] * LIGHT[2];
  const step = Math.min(8, Math.max(1, Math.round(1 + (0.95 - light) * 7.5)));
  return `tone-${step}` as Role;
}

/** A line through places of the door, on the paper. */
export function line3(put: Put, places: readonly Place[]): Loop {
  return polygon(places.map(put), false);
}

function normalise([x, y, z]: Place): Place {
  const size = Math.hypot(x, y, z);
  return [x / size, y / size, z / size];
}
