import type { Box } from '../curve/box.ts';

/** The most boxes in a node. */
const WIDTH = 8;

/**
 * An R-tree, which finds the boxes near a place without looking at all of them: the boxes are sorted into tiles and packed eight to a
 * node, the nodes eight to a node above, and so on (Leutenegger, Lopez and Edgington 1997, *STR: a simple and efficient algorithm
 * for R-tree packing*). Building takes n log n; a search looks at a few nodes for each box that it finds.
 */
export class BoxTree {
  /** Levels from the boxes themselves (in the order of `ids`) up to one node; four numbers a box. */
  private readonly levels: Float64Array[] = [];
  private readonly ids: Uint32Array;

  constructor(boxes: readonly Box[]) {
    this.ids = inTiles(boxes);
    let level = new Float64Array(4 * boxes.length);
    this.ids.forEach((id, k) => {
      const { x0, y0, x1, y1 } = boxes[id]!;
      level.set([x0, y0, x1, y1], 4 * k);
    });
    this.levels.push(level);
    while (level.length > 4) {
      level = nodesAbove(level);
      this.levels.push(level);
    }
  }

  /** Calls `visit` with the number of every box that meets the given one, edges included, until it returns true; returns whether it did. */
  search(box: Box, visit: (id: number) => unknown): boolean {
    return this.ids.length > 0 && this.searchNode(this.levels.length - 1, 0, box, visit);
  }

  private searchNode(depth: number, node: number, box: Box, visit: (id: number) => unknown): boolean {
    const level = this.levels[depth]!;
    const at = 4 * node;
    if (level[at]! > box.x1 || level[at + 2]! < box.x0 || level[at + 1]! > box.y1 || level[at + 3]! < box.y0)
      return false;
    if (depth === 0) return visit(this.ids[node]!) === true;
    const end = Math.min((node + 1) * WIDTH, this.levels[depth - 1]!.length / 4);
    for (let child = node * WIDTH; child < end; child++) {
      if (this.searchNode(depth - 1, child, box, visit)) return true;
    }
    return false;
  }
}

/** The numbers of the boxes in tiles: sorted by their middles into upright stripes, and in each stripe from the lowest up. */
function inTiles(boxes: readonly Box[]): Uint32Array {
  const across = boxes.map(({ x0, x1 }) => x0 + x1);
  const up = boxes.map(({ y0, y1 }) => y0 + y1);
  const ids = Uint32Array.from(boxes.keys()).sort((a, b) => across[a]! - across[b]!);
  const stripe = WIDTH * Math.ceil(Math.sqrt(boxes.length / WIDTH));
  for (let from = 0; from < ids.length; from += stripe)
    ids.subarray(from, from + stripe).sort((a, b) => up[a]! - up[b]!);
  return ids;
}

function nodesAbove(level: Float64Array): Float64Array<ArrayBuffer> {
  const count = level.length / 4;
  const above = new Float64Array(4 * Math.ceil(count / WIDTH));
  for (let node = 0; 4 * node < above.length; node++) {
    const box = [Infinity, Infinity, -Infinity, -Infinity];
    for (let k = node * WIDTH; k < Math.min((node + 1) * WIDTH, count); k++) {
      box[0] = Math.min(box[0]!, level[4 * k]!);
      box[1] = Math.min(box[1]!, level[4 * k + 1]!);
      box[2] = Math.max(box[2]!, level[4 * k + 2]!);
      box[3] = Math.max(box[3]!, level[4 * k + 3]!);
    }
    above.set(box, 4 * node);
  }
  return above;
}
