import { type Curve, type Loop, paperData } from '@fielded/geometry';
import { CAPITAL, type Item, STYLES, writeNumber } from '@fielded/render';
import { createGround, createSvg } from './svg-element.ts';

interface Painted {
  readonly element: SVGElement;
  readonly kind: Item['kind'] | 'upright';
  item: Item;
  readonly children: Map<string, Painted>;
  /** The keys of its children, in the order they lie in. */
  order: readonly string[];
}

/** A scene kept painted in a group of a live drawing. */
export interface Painter {
  /** Paints these items: elements stay by their keys, and only what differs is touched. */
  paint(items: readonly Item[]): void;
  /** The element of a key path, such as `dimensions/cuts[0].depth`. */
  find(...keys: readonly string[]): SVGElement | null;
}

/** Paints scenes into `into`, for a screen: each role is a class, so that light and dark are the style sheet's affair. */
export function createPainter(into: SVGGElement): Painter {
  const root: Painted = {
    element: into,
    kind: 'group',
    item: { kind: 'group', key: '', items: [] },
    children: new Map(),
    order: [],
  };
  return {
    paint: (items) => paintChildren(root, items),
    find(...keys) {
      let here: Painted | undefined = root;
      for (const key of keys) here = here?.children.get(key);
      return here === undefined || here === root ? null : here.element;
    },
  };
}

function paintChildren(parent: Painted, items: readonly Item[]): void {
  // A drawing that is moved by hand has the same items in the same order from frame to frame.
  if (hasTheseChildren(parent, items)) {
    for (const item of items) update(parent.children.get(item.key)!, item);
    return;
  }
  const wanted = new Set(items.map(({ key }) => key));
  for (const [key, child] of parent.children) {
    if (wanted.has(key)) continue;
    child.element.remove();
    parent.children.delete(key);
  }
  parent.order = items.map(({ key }) => key);
  let before: Node | null = null;
  for (const item of items) {
    let child = parent.children.get(item.key);
    if (child !== undefined && child.kind !== kindOf(item)) {
      child.element.remove();
      child = undefined;
    }
    if (child === undefined) {
      child = create(item);
      parent.children.set(item.key, child);
    } else update(child, item);
    const after: Node | null = before === null ? parent.element.firstChild : before.nextSibling;
    if (after !== child.element) parent.element.insertBefore(child.element, after);
    before = child.element;
  }
}

function hasTheseChildren({ order, children }: Painted, items: readonly Item[]): boolean {
  return (
    order.length === items.length &&
    items.every((item, i) => order[i] === item.key && children.get(item.key)!.kind === kindOf(item))
  );
}

/** What an item is painted as: an upright text stands in a group that is turned. */
function kindOf(item: Item): Painted['kind'] {
  return item.kind === 'text' && item.upright ? 'upright' : item.kind;
}

function create(item: Item): Painted {
  const kind = kindOf(item);
  const element = kind === 'upright' ? createTurned() : createSvg(kind === 'group' ? 'g' : kind);
  const painted: Painted = { element, kind, item, children: new Map(), order: [] };
  if (item.kind === 'group') {
    element.setAttribute('data-key', item.key);
    paintChildren(painted, item.items);
  } else if (item.kind !== 'image') {
    // The live sheet holds no pixels.
    inkOf(painted).setAttribute('class', `role-${item.role}`);
    if (item.kind === 'path') {
      element.setAttribute('d', paperData(item.loops));
    } else setText(inkOf(painted), item, null);
  }
  markDimension(element, item, null);
  return painted;
}

/** The same turn for every upright text: one that moved with it would have the browser take all its layers apart. */
function createTurned(): SVGGElement {
  const turned = createSvg('g', { transform: 'rotate(-90)' });
  turned.append(createGround(), createSvg('text'));
  return turned;
}

/** The element that has the ink of an item. */
function inkOf({ element, kind }: Painted): SVGElement {
  return kind === 'upright' ? (element.lastElementChild as SVGElement) : element;
}

function update(painted: Painted, item: Item): void {
  const { element, item: old } = painted;
  if (item === old) return;
  painted.item = item;
  if (item.kind === 'group') paintChildren(painted, item.items);
  else if (item.kind !== 'image') {
    if (old.kind !== 'group' && old.kind !== 'image' && old.role !== item.role)
      inkOf(painted).setAttribute('class', `role-${item.role}`);
    if (item.kind === 'text') setText(inkOf(painted), item, old);
    else if (old.kind !== 'path' || !sameLoops(old.loops, item.loops)) element.setAttribute('d', paperData(item.loops));
  }
  markDimension(element, item, old);
}

/** Writes what differs from the text before: asking the element for it would take as long as writing. */
function setText(element: SVGElement, item: Item, old: Item | null): void {
  if (item.kind !== 'text') return;
  const before = old?.kind === 'text' ? old : null;
  const set = (name: string, value: string, known: string | undefined) => {
    if (value !== known) element.setAttribute(name, value);
  };
  const places = ({ upright, x, y }: Pick<typeof item, 'upright' | 'x' | 'y'>) =>
    (upright ? [-y, x] : [x, y]).map(writeNumber);
  const [x, y] = places(item);
  const [oldX, oldY] = before === null ? [] : places(before);
  set('x', x!, oldX);
  set('y', y!, oldY);
  if (item.height !== before?.height) element.setAttribute('font-size', writeNumber(item.height / CAPITAL));
  if (item.anchor !== before?.anchor) element.setAttribute('text-anchor', item.anchor);
  const words = element.firstChild;
  if (!(words instanceof Text)) element.textContent = item.text;
  else if (item.text !== before?.text) words.data = item.text;
}

/** Nearer than this, paper mm, two places are written alike. */
const ALIKE = 1e-6;

/** Whether two outlines would be written alike: told far quicker by their figures than by writing both. */
function sameLoops(before: readonly Loop[], after: readonly Loop[]): boolean {
  return (
    before.length === after.length &&
    before.every((loop, i) => {
      const other = after[i]!;
      return (
        loop.closed === other.closed &&
        loop.curves.length === other.curves.length &&
        loop.curves.every((curve, k) => sameCurve(curve, other.curves[k]!))
      );
    })
  );
}

function sameCurve(a: Curve, b: Curve): boolean {
  if (a.turn !== b.turn || Math.abs(a.r - b.r) > ALIKE) return false;
  const ends = Math.abs(a.x0 - b.x0) + Math.abs(a.y0 - b.y0) + Math.abs(a.x1 - b.x1) + Math.abs(a.y1 - b.y1);
  return ends <= ALIKE;
}

/** A dimension says which size it shows. */
function markDimension(element: SVGElement, item: Item, old: Item | null): void {
  if (item.kind !== 'group' || item.of === undefined) return;
  const before = old?.kind === 'group' ? old : null;
  if (before?.of !== item.of) element.setAttribute('data-of', item.of);
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
