import { ENGLISH, type Job, type Language } from '@fielded/core';
import { type Item, RENDER_ENGLISH, type Scene } from '@fielded/render';

/** Letters in rings, which no file and no code holds: what is drawn in others was never said by a language. */
export function inRings(words: string): string {
  return words.replace(/[A-Za-z]/g, (letter) =>
    String.fromCodePoint(letter.charCodeAt(0) + (letter < 'a' ? 0x24b6 - 65 : 0x24d0 - 97)),
  );
}

/** A sentence in rings, its figures left as they are; those that it has of its own with a decimal comma. */
function sentenceInRings(sentence: string): string {
  return sentence
    .replace(/\[(\w+)\]/g, '$1')
    .split(/(\{\w+(?::\w+)?\})/)
    .map((part) => (part.startsWith('{') ? part : inRings(part).replace(/(\d)\.(\d)/g, '$1,$2')))
    .join('');
}

/** A made-up language that says every sentence of core and render in ringed letters, with a decimal comma. */
export const RINGED: Language = {
  decimal: ',',
  sentences: Object.fromEntries(
    Object.entries({ ...ENGLISH, ...RENDER_ENGLISH }).map(([key, sentence]) => [key, sentenceInRings(sentence)]),
  ),
};

/** Keys of a job and its shop whose value somebody has called something. */
const NAMES = new Set(['title', 'name', 'knife', 'head', 'kept', 'stickingHead']);
/** Groups whose keys are names. */
const NAMED = new Set(['knives', 'heads', 'machines']);

/** The job with every name of it in ringed letters, so that names are not taken for words that nobody translated. */
export function namesInRings(job: Job): Job {
  const visit = (value: unknown, key: string): unknown => {
    if (typeof value === 'string') return NAMES.has(key) ? inRings(value) : value;
    if (Array.isArray(value)) return value.map((each) => visit(each, key));
    if (typeof value !== 'object' || value === null) return value;
    return Object.fromEntries(
      Object.entries(value).map(([inner, each]) => [NAMED.has(key) ? inRings(inner) : inner, visit(each, inner)]),
    );
  };
  return visit(job, '') as Job;
}

/** What is drawn in every language alike, and why. */
const ALIKE: readonly (readonly [RegExp, string])[] = [
  [/\b(mm|in)\b[²³]?/g, 'units of length (ISO 80000-3) and the inch'],
  [/(\b(m|ft))?\/min\b/g, 'units of speed'],
  [/\bR (?=[≈\d])/g, 'the sign of a radius (ISO 129-1)'],
  [/\b[A-Z]\d{0,2}\b/g, 'letters of walls, of the section line, and places of sheets'],
  [/\b(fromFace|bore|spindle|spindleLength|fenceGap|power|presented|tallFence)\.$/g, 'keys of the shop file'],
  [/(?<=: |, )[a-z]+(-[a-z]+)+(?=[,.]|$)/g, 'codes of problems, as docs/problem-codes.md lists them'],
  [/\b(black cherry|white ash|white oak)\b/gi, 'woods, as the table of species names them'],
  [/\b[a-z]+(\[\d+\])?(\.[a-zA-Z]+)+\b/g, 'places of the job file'],
];

/** Words of a text, with figures and what is alike in every language left out, that are not in ringed letters. */
export function notSaid(words: string): string[] {
  const left = ALIKE.reduce((rest, [alike]) => rest.replace(alike, ' '), words);
  return left.match(/[A-Za-z][\w'’-]*/g) ?? [];
}

/** Every text of a drawing: what is lettered, what it is called, and what it says to those who cannot see it. */
export function textsIn({ title, description, items }: Scene): string[] {
  const lettered = (list: readonly Item[]): string[] =>
    list.flatMap((item) => {
      if (item.kind === 'text') return [item.text];
      if (item.kind !== 'group') return [];
      return [...(item.label === undefined ? [] : [item.label]), ...lettered(item.items)];
    });
  return [title, description, ...lettered(items)];
}
