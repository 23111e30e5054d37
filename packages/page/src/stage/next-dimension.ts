/** Dimensions whose middles are within this of each other's height are read as one row, paper mm. */
const ROW = 4;

/**
 * The dimension that a key goes to from one of them; undefined for a key that goes nowhere. Right and left go on to the next and the
 * one before, as they are read; down and up to the nearest one below and above; Home and End to the first and the last.
 */
export function nextDimension(key: string, from: SVGElement, all: readonly SVGElement[]): SVGElement | undefined {
  if (key === 'ArrowUp' || key === 'ArrowDown') return nearest(from, all, key === 'ArrowDown' ? 1 : -1);
  const dimensions = inOrder(all);
  const at = dimensions.indexOf(from);
  const to = { ArrowLeft: at - 1, ArrowRight: at + 1, Home: 0, End: -1 }[key];
  return to === undefined ? undefined : dimensions.at(to % dimensions.length);
}

/** The middle of what a finger has to hit, paper mm. */
function middleOf(dimension: SVGElement): { readonly x: number; readonly y: number } {
  const target = dimension.querySelector('.target');
  const read = (name: string) => Number(target?.getAttribute(name) ?? 0);
  return { x: read('x') + read('width') / 2, y: read('y') + read('height') / 2 };
}

/** Dimensions in rows from the top, each row from the left. */
function inOrder(dimensions: readonly SVGElement[]): SVGElement[] {
  const placed = dimensions.map((dimension) => ({ dimension, ...middleOf(dimension) })).sort((a, b) => a.y - b.y);
  let row = 0;
  const inRows = placed.map((each, i) => {
    if (i > 0 && each.y - placed[i - 1]!.y > ROW) row++;
    return { ...each, row };
  });
  return inRows.sort((a, b) => a.row - b.row || a.x - b.x).map(({ dimension }) => dimension);
}

/** The nearest dimension below (1) or above (-1), the one most nearly straight there first; undefined for none. */
function nearest(from: SVGElement, dimensions: readonly SVGElement[], way: 1 | -1): SVGElement | undefined {
  const { x, y } = middleOf(from);
  const far = (dimension: SVGElement) => {
    const to = middleOf(dimension);
    return way * (to.y - y) + 2 * Math.abs(to.x - x);
  };
  return dimensions
    .filter((dimension) => way * (middleOf(dimension).y - y) > ROW)
    .sort((one, other) => far(one) - far(other))[0];
}
