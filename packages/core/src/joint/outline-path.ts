import { type Chain, depthPath, pathData } from '@fielded/geometry';
import type { Cut } from '../machining/cut.ts';
import { cutEdge } from './edge.ts';
import { traceOutline } from './outline.ts';
import type { Panel } from './panel.ts';
import { cutSection, type Section } from './section.ts';
import type { ClearedRegion } from './strip-reader.ts';

/** A section's outline as SVG path data: x in from the edge, y down from the front face, true arcs. */
export function outlinePath(section: Section): string {
  return traceOutline(section)
    .map((loop) => pathData(loop, section.thickness, true))
    .join(' ');
}

/** A cut's chain, from cut coordinates, as path data in stock of that thickness: y down from the front face. */
export function edgePath(chain: Chain, side: Cut['side'], thickness: number): string {
  return side === 'front' ? depthPath(chain) : pathData(chain, thickness, false);
}

/**
 * The outline of stock `width` × `thickness` less what some cuts clear, as SVG path data: what stands after each cut.
 *
 * @example cutOutline(20, 50, []) // 'M 0 0 …': the stock itself
 */
export function cutOutline(thickness: number, width: number, regions: readonly ClearedRegion[]): string {
  return outlinePath(cutSection(thickness, width, regions));
}

/**
 * The outline of a panel's edge with every cut made, as SVG path data: what a report says as `section.outline`, for a drawing
 * that asks nothing else of the joint. Does not fail on cuts that were read without faults.
 */
export function edgeOutline(panel: Panel, cuts: readonly Cut[]): string {
  return outlinePath(cutEdge(panel, cuts));
}
