/** How far a finger's middle may be from its target, pixels: half of the least size of one. */
export const FINGER = 22;
/** Nearer than this to a grip, pixels, the grip is meant, whatever figure stands there. */
const PRECISE = 10;

/** What a press means: the nearest target that is near enough. Targets overlap, so that the one on top need not be the one meant. */
export type Pressed =
  | { readonly kind: 'grip'; readonly element: Element }
  | { readonly kind: 'dimension'; readonly element: Element };

/** The grip or the dimension of a drawing that a press is nearest to; null where neither is near. */
export function findPressed(drawing: Element, x: number, y: number): Pressed | null {
  const grip = nearest([...drawing.querySelectorAll('.grip')], x, y, (element) =>
    middleAway(element.querySelector('.ring')!.getBoundingClientRect(), x, y),
  );
  const figure = nearest([...drawing.querySelectorAll('.ink .dimension')], x, y, (element) =>
    Math.min(...[...element.querySelectorAll('text')].map((text) => boxAway(text.getBoundingClientRect(), x, y))),
  );
  if (grip !== null && (grip.away <= PRECISE || figure === null || grip.away < figure.away))
    return { kind: 'grip', element: grip.element };
  return figure === null ? null : { kind: 'dimension', element: figure.element };
}

function nearest(
  elements: readonly Element[],
  x: number,
  y: number,
  away: (element: Element, x: number, y: number) => number,
): { readonly element: Element; readonly away: number } | null {
  let best: { element: Element; away: number } | null = null;
  for (const element of elements) {
    const distance = away(element, x, y);
    if (distance <= FINGER && (best === null || distance < best.away)) best = { element, away: distance };
  }
  return best;
}

function middleAway(box: DOMRect, x: number, y: number): number {
  return Math.hypot(x - box.x - box.width / 2, y - box.y - box.height / 2);
}

function boxAway(box: DOMRect, x: number, y: number): number {
  return Math.hypot(Math.max(box.left - x, 0, x - box.right), Math.max(box.top - y, 0, y - box.bottom));
}
