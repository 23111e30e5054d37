/** Why a drawing gives no outline, and what to do: sentences without their full stops. */
export interface OutlineRefusal {
  readonly refused: string;
  readonly instead: string;
}

/** Lines and arcs of an outline: the engine takes no more, so no more are joined. */
export const MOST_STROKES = 6000;
