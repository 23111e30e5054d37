import { type Curve, type Loop, loopsData } from '@fielded/geometry';
import { CAPITAL, type Item, STYLES, writeNumber } from '@fielded/render';
import { createGround, createSvg, setIfOther } from './svg-element.ts';

interface Painted {
  readonly element: SVGElement;
  readonly kind: Item['kind'] | 'upright';
  item: Item;
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
export function createPainter(into: SVGGElement): Painter {
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
      return here === undefined || here === root ? null : here.element;
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

/** What an item is painted as: an upright text stands in a group that is turned. */
function kindOf(item: Item): Painted['kind'] {
  return item.kind === 'text' && item.upright ? 'upright' : item.kind;
}

function create(item: Item): Painted {
  const kind = kindOf(item);
  const element = kind === 'upright' ? createTurned() : createSvg(kind === 'group' ? 'g' : kind);
  const painted: Painted = { element, kind, item, children: new Map() };
  if (item.kind === 'group') {
    element.setAttribute('data-key', item.key);
    paintChildren(painted, item.items);
  } else if (item.kind !== 'image') {
    // The live sheet holds no pixels.
    inkOf(painted).setAttribute('class', `role-${item.role}`);
    if (item.kind === 'path') {
      element.setAttribute('d', loopsData(item.loops, writeNumber));
    } else setText(inkOf(painted), item);
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
  painted.item = item;
  if (item.kind === 'group') paintChildren(painted, item.items);
  else if (item.kind !== 'image') {
    if (old.kind !== 'group' && old.kind !== 'image' && old.role !== item.role)
      inkOf(painted).setAttribute('class', `role-${item.role}`);
    if (item.kind === 'text') setText(inkOf(painted), item);
    else if (old.kind !== 'path' || !sameLoops(old.loops, item.loops))
      element.setAttribute('d', loopsData(item.loops, writeNumber));
  }
  markDimension(element, item, old);
}

function setText(element: SVGElement, item: Item): void {
  if (item.kind !== 'text') return;
  const [x, y] = item.upright ? [-item.y, item.x] : [item.x, item.y];
  setIfOther(element, 'x', writeNumber(x));
  setIfOther(element, 'y', writeNumber(y));
  setIfOther(element, 'font-size', writeNumber(item.height / CAPITAL));
  setIfOther(element, 'text-anchor', item.anchor);
  const words = element.firstChild;
  if (!(words instanceof Text)) element.textContent = item.text;
  else if (words.data !== item.text) words.data = item.text;
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

/** A dimension says which value it shows. */
function markDimension(element: SVGElement, item: Item, old: Item | null): void {
  if (item.kind !== 'group' || item.of === undefined) return;
  const before = old?.kind === 'group' ? old : null;
  if (before?.of !== item.of) element.setAttribute('data-of', item.of);
  if (before?.value !== item.value) element.setAttribute('data-value', String(item.value));
  if (before?.label !== item.label) element.setAttribute('data-label', item.label ?? '');
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
