const SVG = 'http://www.w3.org/2000/svg';

/** A new element of a drawing, with its attributes. */
export function createSvg<K extends keyof SVGElementTagNameMap>(
  kind: K,
  attributes: Readonly<Record<string, string>> = {},
): SVGElementTagNameMap[K] {
  const element = document.createElementNS(SVG, kind);
  for (const [name, value] of Object.entries(attributes)) element.setAttribute(name, value);
  return element;
}

/** Further from the middle than anything on a sheet, paper mm. */
const FAR = 5000;

/**
 * Ground that shows nothing and is as large as any sheet. A browser sorts a drawing into layers anew whenever the bounds of
 * what it paints in one go change; on such a ground they stay, whatever moves.
 */
export function createGround(): SVGRectElement {
  const [from, size] = [String(-FAR), String(2 * FAR)];
  return createSvg('rect', { class: 'ground', x: from, y: from, width: size, height: size });
}

/** Sets an attribute that has another value: setting the same again would have the browser lay the drawing out anew. */
export function setIfOther(element: Element, name: string, value: string): void {
  if (element.getAttribute(name) !== value) element.setAttribute(name, value);
}
