import { type Document, isAlias, isMap, isScalar, isSeq, type LineCounter, type Node } from 'yaml';
import type { ToldFault } from '../problem/say-fault.ts';
import { tellTextFault } from '../problem/say-text-fault.ts';
import { DEEPEST_NESTING, MOST_FAULTS, MOST_VALUES } from './limits.ts';
import { joinPath, type Place, type TextFault } from './tree.ts';

/** What a document holds: its value, where each value and each key stands, and what is wrong with it. */
export interface Walked {
  readonly value: unknown;
  readonly places: Map<string, Place>;
  readonly keyPlaces: Map<string, Place>;
  readonly faults: TextFault[];
}

/** A walk under way: what was found, the nodes that have a name, those that the walk is inside of, and how many values it met. */
interface Walk {
  readonly lines: LineCounter;
  readonly places: Map<string, Place>;
  readonly keyPlaces: Map<string, Place>;
  readonly faults: TextFault[];
  readonly anchors: Map<string, Node>;
  readonly open: Set<Node>;
  values: number;
}

type Pair = { readonly key: Node; readonly value: Node | null };

const DECIMAL_NUMBER = /^[-+]?(?:0|[1-9]\d*|(?=\.\d)|\d+(?=\.))(?:\.\d*)?(?:[eE][-+]?\d+)?$/;
const NOT_FINITE = /^[-+]?\.(?:inf|Inf|INF|nan|NaN|NAN)$/;
const UNUSABLE_KEYS: readonly string[] = ['__proto__', 'prototype', 'constructor'];

/** The values of a document with their places: aliases followed, tags and unusable keys refused, bounded in number and depth. */
export function walkDocument(document: Document.Parsed, lines: LineCounter): Walked {
  const walk: Walk = {
    lines,
    places: new Map(),
    keyPlaces: new Map(),
    faults: [],
    anchors: new Map(),
    open: new Set(),
    values: 0,
  };
  const value = walkNode(walk, document.contents, '');
  const { places, keyPlaces, faults } = walk;
  return { value: walk.values > MOST_VALUES ? null : value, places, keyPlaces, faults };
}

function walkNode(walk: Walk, node: Node | null, at: string): unknown {
  if (node === null) return null;
  // Too many values? Said once; the rest is passed over.
  walk.values++;
  if (walk.values > MOST_VALUES) {
    if (walk.values === MOST_VALUES + 1)
      report(walk, tellTextFault('fault.yaml-too-many-values', { most: MOST_VALUES }), at, node);
    return undefined;
  }
  if (isAlias(node)) return followAlias(walk, node, at);
  if (node.tag !== undefined) return report(walk, tellTextFault('fault.yaml-tag', { tag: node.tag }), at, node);
  if ('anchor' in node && node.anchor) walk.anchors.set(node.anchor, node);
  walk.places.set(at, placeOf(walk, node));
  if (isScalar(node)) return readScalar(node.value, node.type === 'PLAIN' ? node.source : undefined);
  // A list or a group is open while its inside is walked.
  walk.open.add(node);
  const value = isSeq(node)
    ? node.items.map((item, index) => walkNode(walk, item as Node | null, joinPath(at, index)))
    : isMap(node)
      ? walkGroup(walk, node.items as Pair[], at)
      : undefined;
  walk.open.delete(node);
  return value;
}

/** What an alias repeats is walked again where the alias stands, unless it would repeat itself for ever. */
function followAlias(walk: Walk, alias: Node & { readonly source: string }, at: string): unknown {
  const target = walk.anchors.get(alias.source);
  if (target === undefined)
    return report(walk, tellTextFault('fault.yaml-alias.nothing', { alias: alias.source }), at, alias);
  if (walk.open.has(target) || walk.open.size > DEEPEST_NESTING)
    return report(walk, tellTextFault('fault.yaml-alias.itself', { alias: alias.source }), at, alias);
  return walkNode(walk, target, at);
}

function walkGroup(walk: Walk, pairs: readonly Pair[], at: string): Record<string, unknown> {
  const group: Record<string, unknown> = Object.create(null);
  for (const { key, value } of pairs) {
    const name = isScalar(key) && key.tag === undefined ? keyName(key.value, key.source) : undefined;
    if (name === undefined || UNUSABLE_KEYS.includes(name)) {
      if (walk.values <= MOST_VALUES)
        report(walk, tellTextFault('fault.yaml-key', { key: shorten(textOf(key)) }), at, key);
      continue;
    }
    // Of a key that is given twice, keep the first.
    const path = joinPath(at, name);
    if (Object.hasOwn(group, name)) {
      const { line } = walk.keyPlaces.get(path)!;
      if (walk.values <= MOST_VALUES) report(walk, tellTextFault('fault.duplicate-key', { line }), path, key);
      continue;
    }
    if (isScalar(key) && key.anchor) walk.anchors.set(key.anchor, key);
    walk.keyPlaces.set(path, placeOf(walk, key));
    group[name] = walkNode(walk, value, path);
    // An empty value has the place of its key.
    if (!walk.places.has(path)) walk.places.set(path, placeOf(walk, key));
  }
  return group;
}

function report(walk: Walk, told: ToldFault, at: string, node: Node): undefined {
  // Keep no more faults than are reported: finding their places takes longest.
  if (walk.faults.length < MOST_FAULTS) walk.faults.push({ at, ...placeOf(walk, node), ...told });
  return undefined;
}

function placeOf({ lines }: Walk, node: Node): Place {
  const { line, col } = lines.linePos(node.range?.[0] ?? 0);
  return { line, column: col, text: shorten(textOf(node)) };
}

function keyName(value: unknown, source: string | undefined): string | undefined {
  if (typeof value === 'string') return value;
  // A knife may be called 13: the name is what is written, not the number.
  return typeof value === 'number' ? source : undefined;
}

function readScalar(value: unknown, source: string | undefined): unknown {
  if (typeof value !== 'number' || source === undefined) return value;
  return DECIMAL_NUMBER.test(source) || NOT_FINITE.test(source) ? value : source;
}

function textOf(node: Node): string {
  if (isMap(node)) return '{…}';
  if (isSeq(node)) return '[…]';
  if (isAlias(node)) return `*${node.source}`;
  return isScalar(node) ? (node.source ?? '') : '';
}

function shorten(text: string): string {
  const line = text.replace(/\s+/g, ' ').trim();
  return line.length > 40 ? `${line.slice(0, 38)}…` : line;
}
