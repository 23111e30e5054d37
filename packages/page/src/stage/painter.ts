import { loopsData } from '@fielded/geometry';
import { CAPITAL, type Item, STYLES, writeNumber } from '@fielded/render';
import { type Container, create as createNode, Element, G } from '@svgdotjs/svg.js';

interface Painted {
  readonly element: Element;
  readonly kind: Item['kind'];
  item: Item;
  /** The path data as last painted. */
  d?: string;
  readonly children: Map<string, Painted>;
}

/** A scene kept painted in a group of a live drawing. */
export interface Painter {
  /** Paints these items: elements stay by their keys, and only what differs is touched. */
  paint(items: readonly Item[]): void;
  /** The element of a key path, such as `dimensions/cuts[0].depth`. */
  find(...keys: readonly string[]): SVGElement | null;
}

/** Paints scenes into `into`, for a screen: each role is a class, so that light and dark are the style sheet's affair. */
export function createPainter(into: Container): Painter {
  const root: Painted = {
    element: into,
    kind: 'group',
    item: { kind: 'group', key: '', items: [] },
    children: new Map(),
  };
  return {
    paint: (items) => paintChildren(root, items),
    find(...keys) {
      let here: Painted | undefined = root;
      for (const key of keys) here = here?.children.get(key);
      return here === undefined || here === root ? null : (here.element.node as SVGElement);
    },
  };
}

function paintChildren(parent: Painted, items: readonly Item[]): void {
  const wanted = new Set(items.map(({ key }) => key));
  for (const [key, child] of parent.children) {
    if (wanted.has(key)) continue;
    child.element.remove();
    parent.children.delete(key);
  }
  let before: Node | null = null;
  for (const item of items) {
    let child = parent.children.get(item.key);
    if (child !== undefined && child.kind !== item.kind) {
      child.element.remove();
      child = undefined;
    }
    if (child === undefined) {
      child = create(item);
      parent.children.set(item.key, child);
    } else update(child, item);
    const { node } = child.element;
    const after: Node | null = before === null ? parent.element.node.firstChild : before.nextSibling;
    if (after !== node) parent.element.node.insertBefore(node, after);
    before = node;
  }
}

/** Plain elements: svg.js' own paths and texts parse and measure themselves anew at every change. */
function create(item: Item): Painted {
  const element = item.kind === 'group' ? new G() : new Element(createNode(item.kind));
  const painted: Painted = { element, kind: item.kind, item, children: new Map() };
  if (item.kind === 'group') {
    element.attr('data-key', item.key);
    paintChildren(painted, item.items);
  } else if (item.kind !== 'image') {
    // The live sheet holds no pixels.
    element.attr('class', `role-${item.role}`);
    if (item.kind === 'path') {
      painted.d = loopsData(item.loops, writeNumber);
      element.attr('d', painted.d);
    } else setText(element, item);
  }
  markDimension(element, item, null);
  return painted;
}

function update(painted: Painted, item: Item): void {
  const { element, item: old } = painted;
  painted.item = item;
  if (item.kind === 'group') paintChildren(painted, item.items);
  else if (item.kind !== 'image') {
    if (old.kind !== 'group' && old.kind !== 'image' && old.role !== item.role)
      element.attr('class', `role-${item.role}`);
    if (item.kind === 'path') {
      const d = loopsData(item.loops, writeNumber);
      if (painted.d !== d) element.attr('d', d);
      painted.d = d;
    } else if (JSON.stringify(old) !== JSON.stringify(item)) setText(element, item);
  }
  markDimension(element, item, old);
}

function setText(element: Element, item: Item): void {
  if (item.kind !== 'text') return;
  const [x, y] = [writeNumber(item.x), writeNumber(item.y)];
  element.attr({
    x,
    y,
    'font-size': writeNumber(item.height / CAPITAL),
    'text-anchor': item.anchor,
    transform: item.upright ? `rotate(-90 ${x} ${y})` : null,
  });
  if (element.node.textContent !== item.text) element.node.textContent = item.text;
}

/** A dimension says which value it shows. */
function markDimension(element: Element, item: Item, old: Item | null): void {
  if (item.kind !== 'group' || item.of === undefined) return;
  const before = old?.kind === 'group' ? old : null;
  if (before?.of !== item.of) element.attr('data-of', item.of);
  if (before?.value !== item.value) element.attr('data-value', String(item.value));
  if (before?.label !== item.label) element.attr('data-label', item.label ?? '');
}

/** The style sheet of the roles: line widths and dashes in paper mm, colours by custom properties. */
export function roleStyles(): string {
  return Object.entries(STYLES)
    .map(([role, { fill, stroke, width, dash, cap }]) => {
      const rules = [`fill:${fill ? `var(--${fill})` : 'none'}`];
      if (stroke) rules.push(`stroke:var(--${stroke})`, `stroke-width:${width}`);
      if (dash) rules.push(`stroke-dasharray:${dash.join(' ')}`);
      if (cap === 'round') rules.push('stroke-linecap:round');
      return `.role-${role}{${rules.join(';')}}`;
    })
    .join('\n');
}
