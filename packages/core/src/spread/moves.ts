/** What can be off in a joint, by its place in a list of moves: seven for the whole joint, then three for each cut. */
export const MOVE: {
  readonly thickness: 0;
  readonly grooveWidth: 1;
  readonly film: 2;
  readonly moisture: 3;
  readonly setback: 4;
  readonly grooveDepth: 5;
  readonly panelSize: 6;
} = { thickness: 0, grooveWidth: 1, film: 2, moisture: 3, setback: 4, grooveDepth: 5, panelSize: 6 };

/** Place in a list of moves of a cut's spindle height, mm; its fence, mm, follows, then how far fence and table are out of square, degrees. */
export function movePlace(cut: number): number {
  return 7 + 3 * cut;
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

/**
 * How much less deep a cut goes for each mm in from the edge where fence and table are `degrees` out of square (formula S6); no
 * less for 0.
 */
export function outOfSquare(degrees: number): number {
  return degrees === 0 ? 0 : Math.tan((degrees * Math.PI) / 180);
}

function cosine(tilt: number): number {
  return tilt === Math.PI / 2 ? 0 : Math.cos(tilt);
}
