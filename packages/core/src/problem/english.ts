/**
 * What each problem says, in English: one entry a sentence, or a few that belong together. A key is a problem's code, or
 * a code and a variant (`code.variant`). `{name}` stands for a word, `{name:length}`, `{name:degrees}`, `{name:number}` and
 * `{name:percent}` for a figure of that kind; `[term]` for a term of terms.ts that is British or American.
 */
export const ENGLISH = {
  'no-tongue': 'The cuts meet: no wood is left from {where} in from the edge. Take one of them less deep.',
  'split-edge':
    'The cuts leave the wood in separate layers from {where} in from the edge. Change the profile or how it is run.',
} as const;
