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

/** Sets an attribute that has another value: setting the same again would have the browser lay the drawing out anew. */
export function setIfOther(element: Element, name: string, value: string): void {
  if (element.getAttribute(name) !== value) element.setAttribute(name, value);
}
