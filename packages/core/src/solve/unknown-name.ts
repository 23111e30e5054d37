import { findNearest } from '../reading/nearest.ts';

/** A figure or a size that the job does not have, with the one most likely meant. */
export class UnknownName extends RangeError {
  readonly kind: 'figure' | 'size';
  /** The name as it was asked for. */
  readonly asked: string;
  /** The name most likely meant; undefined where none is near. */
  readonly near: string | undefined;
  readonly known: readonly string[];

  constructor(kind: UnknownName['kind'], asked: string, known: readonly string[]) {
    const near = nearestOfKind(asked, known);
    const hint = near === undefined ? `it knows ${known.join(', ')}` : `did you mean ${near}?`;
    super(`${asked} is not ${kind === 'figure' ? 'a figure' : 'a size to set'} of this job: ${hint}`);
    this.kind = kind;
    this.asked = asked;
    this.near = near;
    this.known = known;
  }
}

/**
 * The known name that was most likely meant. Of names in parts, such as `back relief.depth`, the last part is kept where it
 * is known: `relief.depth` is the depth of the cut whose name holds that word, not of one spelt a little like it.
 */
function nearestOfKind(name: string, known: readonly string[]): string | undefined {
  const [head, tail] = partsOf(name);
  const tails = [...new Set(known.map((each) => partsOf(each)[1]))];
  const meant = tails.includes(tail) ? tail : findNearest(tail, tails);
  const alike = known.filter((each) => partsOf(each)[1] === meant);
  if (head === '' && alike.length > 0) return alike[0];
  const words = wordsOf(head);
  const holding = alike.find(
    (each) => words.length > 0 && words.every((word) => wordsOf(partsOf(each)[0]).includes(word)),
  );
  if (holding !== undefined) return holding;
  const heads = alike.map((each) => partsOf(each)[0]);
  const near = findNearest(head, heads);
  return near === undefined ? findNearest(name, known) : alike[heads.indexOf(near)];
}

function partsOf(name: string): [head: string, tail: string] {
  const dot = name.lastIndexOf('.');
  return dot < 0 ? ['', name] : [name.slice(0, dot), name.slice(dot + 1)];
}

function wordsOf(text: string): string[] {
  return text.toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? [];
}
