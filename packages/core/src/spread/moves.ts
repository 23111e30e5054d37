/** What can be off in a joint, by its place in a list of moves: four for the whole joint, then two for each cut. */
export const MOVE: {
  readonly thickness: 0;
  readonly grooveWidth: 1;
  readonly film: 2;
  readonly moisture: 3;
} = { thickness: 0, grooveWidth: 1, film: 2, moisture: 3 };

/** Place in a list of moves of a cut's spindle height; its fence follows. */
export function movePlace(cut: number): number {
  return 4 + 2 * cut;
}

/**
 * How far in from the edge a cut moves, mm, when spindle and fence do. The spindle moves it along its axis, which leans from
 * the depth (tilt 0) to the reach (π/2), the fence square to that; spindle moves count towards deeper, or towards the edge.
 */
export function alongReach(tilt: number, height: number, fence: number): number {
  return fence * cosine(tilt) - height * Math.sin(tilt);
}

/** How much deeper a cut goes, mm, when spindle and fence move. */
export function alongDepth(tilt: number, height: number, fence: number): number {
  return height * cosine(tilt) + fence * Math.sin(tilt);
}

function cosine(tilt: number): number {
  return tilt === Math.PI / 2 ? 0 : Math.cos(tilt);
}
