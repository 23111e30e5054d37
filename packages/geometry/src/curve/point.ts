/** A point, mm. */
export interface Point {
  readonly x: number;
  readonly y: number;
}
