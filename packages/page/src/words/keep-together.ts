/** A sentence whose lengths are not broken between two lines: figure, unit and the decimal beside it stay together. */
export function keepTogether(words: string): string {
  return words.replace(/([\d/]) (mm|in)\b/g, '$1\u00A0$2').replace(/(mm|in) \(/g, '$1\u00A0(');
}
