/** Lines and arcs of an outline: the engine takes no more, so no more are joined. */
export const MOST_STROKES = 6000;
