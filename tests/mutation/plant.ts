import { relative } from 'node:path';
import { type Plugin, parseSync } from 'vite';
import type { SmallFault } from './faults.ts';

/** A part of a syntax tree: what parts it has does not matter here. */
interface Part {
  readonly type: string;
  readonly start: number;
  readonly end: number;
  readonly left?: Part;
  readonly right?: Part;
}

/** An expression in which faults are made: those of the same expression stand side by side. */
interface Site {
  readonly start: number;
  readonly end: number;
  readonly faults: { readonly number: number; readonly fault: SmallFault }[];
}

/** The function that says, for a number, whether that fault is made now: `globalThis` has it where faults are tried. */
export const ASKED = '__isFaulty';

/** Plants faults into the sources as they are built, each at its expression: made only when its number is asked for. */
export function plantFaults(root: string, faults: readonly SmallFault[]): Plugin {
  return {
    name: 'fielded-small-faults',
    enforce: 'pre',
    transform(code, id) {
      const file = relative(root, id);
      const here = faults.flatMap((fault, number) => (fault.file === file ? [{ number, fault }] : []));
      return here.length === 0 ? null : { code: plantInto(code, here), map: null };
    },
  };
}

/** Whether a fault stands in an expression of its file, and not in a text. */
export function isInCode(code: string, faults: readonly SmallFault[]): boolean[] {
  const parts = partsOf(code);
  return faults.map((fault) => siteOf(parts, fault) !== null);
}

function plantInto(code: string, here: Site['faults']): string {
  const parts = partsOf(code);
  const sites: Site[] = [];
  for (const each of here) {
    const part = siteOf(parts, each.fault);
    if (part === null) continue;
    const known = sites.find(({ start, end }) => start === part.start && end === part.end);
    if (known) known.faults.push(each);
    else sites.push({ start: part.start, end: part.end, faults: [each] });
  }
  return withSites(code, 0, code.length, sites);
}

/** Code from one place to another, with each site in it as a choice: the expression with one of its faults, or as it was written. */
function withSites(code: string, from: number, to: number, sites: readonly Site[]): string {
  const inside = sites.filter(({ start, end }) => start >= from && end <= to);
  const outermost = inside.filter(
    (site) => !inside.some((other) => other !== site && other.start <= site.start && other.end >= site.end),
  );
  let text = '';
  let at = from;
  for (const site of outermost.sort((one, other) => one.start - other.start)) {
    const { start, end, faults } = site;
    const choices = faults.map(({ number, fault }) => {
      const becomes = code.slice(start, fault.at) + fault.to + code.slice(fault.at + fault.from.length, end);
      return `globalThis.${ASKED}?.(${number}) ? (${becomes}) : `;
    });
    const within = inside.filter((other) => other !== site);
    text += `${code.slice(at, start)}(${choices.join('')}(${withSites(code, start, end, within)}))`;
    at = end;
  }
  return text + code.slice(at, to);
}

/** The expression that a fault changes: a call, or the whole of a chain of operators, since a slip can bind otherwise than before. */
function siteOf(parts: readonly { part: Part; above: Part | null }[], { at, from }: SmallFault): Part | null {
  if (from.endsWith('('))
    return parts.find(({ part }) => part.type === 'CallExpression' && part.start === at)?.part ?? null;
  const operator = at + 1;
  let found = parts.find(
    ({ part: { left, right } }) => left && right && left.end <= operator && operator < right.start,
  );
  if (found === undefined || !isChain(found.part)) return null;
  for (let above = found; isChain(above.part); ) {
    found = above;
    const next = parts.find(({ part }) => part === above.above);
    if (next === undefined) break;
    above = next;
  }
  return found.part;
}

function isChain({ type }: Part): boolean {
  return type === 'BinaryExpression' || type === 'LogicalExpression';
}

function partsOf(code: string): { part: Part; above: Part | null }[] {
  const parts: { part: Part; above: Part | null }[] = [];
  const walk = (value: unknown, above: Part | null): void => {
    if (Array.isArray(value)) for (const each of value) walk(each, above);
    else if (typeof value === 'object' && value !== null) {
      const isPart = 'type' in value && typeof value.type === 'string' && 'start' in value;
      if (isPart) parts.push({ part: value as Part, above });
      for (const each of Object.values(value)) walk(each, isPart ? (value as Part) : above);
    }
  };
  walk(parseSync('code.ts', code).program, null);
  return parts;
}
