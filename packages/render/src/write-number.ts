/**
 * A length as written in a drawing: to 0.001 mm, no trailing noughts, never -0. Every number in an SVG goes through here.
 *
 * @example writeNumber(-0.0001) // '0'
 */
export function writeNumber(value: number): string {
  const rounded = Math.round(value * 1000) / 1000;
  return String(rounded === 0 ? 0 : rounded);
}
