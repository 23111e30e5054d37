import { type GroupItem, type Item, textWidth } from '@fielded/render';
import { aloud } from '../words/aloud.ts';
import type { Painter } from './painter.ts';
import { createSvg, setIfOther } from './svg-element.ts';

interface Marking {
  readonly open: (item: GroupItem) => void;
  readonly isFixed: (of: string) => boolean;
  /** Screen pixels of a paper mm. */
  readonly perMm: number;
  /** Whether a hand holds a size: what is a button already follows when it lets go. */
  readonly held: boolean;
}

/** The least size of what a finger has to hit, pixels. */
const FINGER = 44;

/** Makes every dimension a button the size of a finger round its figure. */
export function markDimensions(painter: Painter, items: readonly Item[], marking: Marking): void {
  for (const item of dimensionsIn(items)) {
    const element = painter.find('dimensions', item.key);
    if (element === null || (marking.held && element.hasAttribute('role'))) continue;
    const of = item.of!;
    const fixed = marking.isFixed(of);
    if (!element.hasAttribute('tabindex')) element.setAttribute('tabindex', '-1');
    setIfOther(element, 'role', 'button');
    setIfOther(element, 'aria-label', `${aloud(item.label ?? of)}. ${fixed ? 'Worked out' : 'Change'}`);
    setIfOther(element, 'class', fixed ? 'dimension fixed' : 'dimension');
    placeTarget(element, item, marking);
  }
}

/** The dimensions among items, however deep. */
export function dimensionsIn(items: readonly Item[]): GroupItem[] {
  return items.flatMap((item) => {
    if (item.kind !== 'group') return [];
    return item.of === undefined ? dimensionsIn(item.items) : [item];
  });
}

function placeTarget(element: SVGElement, item: GroupItem, { perMm, open }: Marking): void {
  let target = element.querySelector<SVGRectElement>('.target');
  if (target === null) {
    target = createSvg('rect', { class: 'target' });
    element.append(target);
    listen(element);
  }
  openers.set(element, () => open(item));
  const box = textsBox(item);
  if (box === null) return;
  const least = FINGER / perMm;
  const width = Math.max(box.x1 - box.x0, least);
  const height = Math.max(box.y1 - box.y0, least);
  const set = (name: string, value: number) => setIfOther(target, name, value.toFixed(2));
  set('x', (box.x0 + box.x1 - width) / 2);
  set('y', (box.y0 + box.y1 - height) / 2);
  set('width', width);
  set('height', height);
}

/** Opens the dimension of an element. */
export function openDimensionOf(element: Element): void {
  openers.get(element)?.();
}

/** What a press opens, by element: replaced at every paint, so that each element keeps one listener. */
const openers = new WeakMap<Element, () => void>();

function listen(element: SVGElement): void {
  element.addEventListener('keydown', (event) => {
    if (event.key !== 'Enter' && event.key !== ' ') return;
    event.preventDefault();
    openers.get(element)?.();
  });
}

/** The box round the texts of a dimension, paper mm; null where it has none. */
export function textsBox(item: GroupItem): { x0: number; y0: number; x1: number; y1: number } | null {
  let box: { x0: number; y0: number; x1: number; y1: number } | null = null;
  for (const text of item.items) {
    if (text.kind !== 'text') continue;
    const width = textWidth(text.text, text.height);
    const before = text.anchor === 'start' ? 0 : text.anchor === 'middle' ? width / 2 : width;
    const [x0, x1] = text.upright ? [text.x - text.height, text.x] : [text.x - before, text.x - before + width];
    const [y0, y1] = text.upright ? [text.y - width + before, text.y + before] : [text.y - text.height, text.y];
    box = box
      ? { x0: Math.min(box.x0, x0), y0: Math.min(box.y0, y0), x1: Math.max(box.x1, x1), y1: Math.max(box.y1, y1) }
      : { x0, y0, x1, y1 };
  }
  return box;
}
