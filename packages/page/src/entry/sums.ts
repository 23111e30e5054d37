import { parseLength, type Units } from '@fielded/core';
import { create, parseDependencies } from 'mathjs/number';
import { sayMisread } from '../words/say-misread.ts';

interface Value {
  readonly value: number;
  /** 1 for a length in mm, 0 for a bare figure. */
  readonly power: 0 | 1;
}

interface Node {
  readonly type: string;
  readonly op?: string;
  readonly value?: unknown;
  readonly name?: string;
  readonly args?: readonly Node[];
  readonly content?: Node;
}

/** A length as a maker writes it within a sum: figure, perhaps a fraction, perhaps its unit. */
const LENGTH =
  /(?:\d+[- ]\d+\/\d+|\d+\/\d+|\d*[.,]?\d+)\s*(?:mm|cm|m|inches|inch|in|feet|foot|ft|["″”'′’])(?![a-z])|\d+[- ]\d+\/\d+|\d+\/\d+/gi;
/** The longest sum, characters. */
const LONGEST = 120;

const { parse } = create(parseDependencies);

/**
 * Works out a sum of lengths, mm: `20 mm - 1/32 in`, `(19 - 6.4) / 2`, `3 × 1-1/4"`.
 *
 * Lengths are read by the same rules as anywhere else, the signs between them by mathjs' parser. Of its tree only figures,
 * + − × ÷ and brackets are followed; everything else is refused, and no text is evaluated. A bare figure is a length in
 * `shown` where a length is added to it, and a plain number where it multiplies or divides.
 */
export function workOutSum(text: string, shown: Units): { readonly mm: number } | { readonly message: string } {
  const refused = {
    message: `${text.trim()} cannot be worked out. Write a sum such as 20 mm - 1/32 in, with + − × ÷ and brackets.`,
  };
  if (text.length > LONGEST) return { message: 'That sum is too long.' };
  const lengths: number[] = [];
  let unread: string | null = null;
  // Write lengths as names, L0_, L1_ and so on, and signs as mathjs knows them.
  const plain = text
    .replace(/[×·]/g, '*')
    .replace(/÷/g, '/')
    .replace(/[−–—]/g, '-')
    .replace(LENGTH, (word) => {
      const read = parseLength(word, shown);
      if ('mm' in read) lengths.push(read.mm);
      else unread ??= sayMisread(word, read);
      return ` L${lengths.length - 1}_ `;
    })
    .replace(/(\d),(\d)/g, '$1.$2');
  if (unread !== null) return { message: unread };
  if (!/^[\d\s.L_+\-*/()]*$/.test(plain)) return refused;
  try {
    const result = follow(parse(plain) as unknown as Node, lengths, shown === 'mm' ? 1 : 25.4);
    if (result === null) return refused;
    const mm = result.power === 1 ? result.value : result.value * (shown === 'mm' ? 1 : 25.4);
    return Number.isFinite(mm) ? { mm } : { message: `${text.trim()} divides by nothing.` };
  } catch {
    return refused;
  }
}

/** The value of a tree of a sum; null where it holds anything but lengths, figures, + − × ÷ and brackets. */
function follow(node: Node, lengths: readonly number[], unit: number): Value | null {
  const inner = (child: Node | undefined) => (child === undefined ? null : follow(child, lengths, unit));
  if (node.type === 'ConstantNode') return typeof node.value === 'number' ? { value: node.value, power: 0 } : null;
  if (node.type === 'ParenthesisNode') return inner(node.content);
  if (node.type === 'SymbolNode') {
    const mm = lengths[Number(/^L(\d+)_$/.exec(node.name ?? '')?.[1] ?? Number.NaN)];
    return mm === undefined ? null : { value: mm, power: 1 };
  }
  if (node.type !== 'OperatorNode') return null;
  const [first, second] = (node.args ?? []).map(inner);
  if (!first) return null;
  if (node.args?.length === 1)
    return node.op === '-' ? { ...first, value: -first.value } : node.op === '+' ? first : null;
  return second ? combine(node.op ?? '', first, second, unit) : null;
}

/** One step of a sum; null where a length is multiplied by a length, or a figure is divided by one. `unit` is a bare figure's as a length, mm. */
function combine(op: string, a: Value, b: Value, unit: number): Value | null {
  if (op === '+' || op === '-') {
    const power = a.power || b.power ? 1 : 0;
    const [x, y] = [a, b].map((v) => (v.power === power ? v.value : v.value * unit)) as [number, number];
    return { value: op === '+' ? x + y : x - y, power };
  }
  if (op === '*' && !(a.power && b.power)) return { value: a.value * b.value, power: a.power || b.power ? 1 : 0 };
  if (op === '/' && !(b.power && !a.power)) return { value: a.value / b.value, power: a.power && !b.power ? 1 : 0 };
  return null;
}
