const VULGAR: Readonly<Record<string, string>> = {
  '½': '1/2',
  '⅓': '1/3',
  '⅔': '2/3',
  '¼': '1/4',
  '¾': '3/4',
  '⅕': '1/5',
  '⅖': '2/5',
  '⅗': '3/5',
  '⅘': '4/5',
  '⅙': '1/6',
  '⅚': '5/6',
  '⅐': '1/7',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
  '⅑': '1/9',
  '⅒': '1/10',
};

/**
 * One plain spelling for the many ways a keyboard, a word processor or a drawing office writes a measure.
 *
 * Typographic quotes and primes become ' and ", a fraction slash /, every dash and minus -, every space one blank;
 * a made-up fraction such as ¾ becomes 3/4, set off from a whole number before it. Letters become small.
 *
 * @example plainNotation('1¼”') // '1 1/4"'
 */
export function plainNotation(text: string): string {
  return text
    .replace(/[\u00A0\u2000-\u200A\u202F\u205F\u3000\t\r\n]/g, ' ')
    .replace(/(\d?) *([½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅐⅛⅜⅝⅞⅑⅒])/g, (_, digit: string, sign: string) =>
      digit === '' ? VULGAR[sign]! : `${digit} ${VULGAR[sign]!}`,
    )
    .replace(/[\u2044\u2215]/g, '/')
    .replace(/[\u2010-\u2015\u2212]/g, '-')
    .replace(/[\u2033\u201C-\u201F\u02BA]/g, '"')
    .replace(/[\u2032\u2018-\u201B\u02B9\u00B4]/g, "'")
    .replace(/''/g, '"')
    .replace(/ +/g, ' ')
    .trim()
    .toLowerCase();
}
