import type { PaperName } from '@fielded/render';
import { adoptStyles } from '../style/adopt-styles.ts';
import printStyles from '../style/print-sheets.css?inline';

adoptStyles(printStyles);

/** Papers to print on, and what they are called. */
export const PAPER_NAMES: readonly (readonly [PaperName, string])[] = [
  ['a4', 'A4'],
  ['letter', 'Letter'],
  ['a3', 'A3'],
  ['tabloid', 'Tabloid'],
];

const PAGE_SIZES: Readonly<Record<PaperName, string>> = {
  a4: '210mm 297mm',
  letter: '215.9mm 279.4mm',
  a3: '297mm 420mm',
  tabloid: '279.4mm 431.8mm',
};

/** Prints sheets, each an SVG in millimetres on a page of its own, so that 100 mm print as 100 mm; they are on the page only while they are printed. */
export function printPages(pages: readonly string[], paper: PaperName): void {
  const sheets = document.createElement('div');
  sheets.className = 'print-sheets';
  sheets.setAttribute('aria-hidden', 'true');
  for (const svg of pages) {
    const sheet = document.createElement('div');
    sheet.className = 'print-sheet';
    // Parse it as a drawing, not as a page, so that nothing in it is run.
    sheet.append(new DOMParser().parseFromString(svg, 'image/svg+xml').documentElement);
    sheets.append(sheet);
  }
  const size = new CSSStyleSheet();
  size.replaceSync(`@page { size: ${PAGE_SIZES[paper]}; margin: 0 }`);
  // Some browsers never say that printing has ended: remove what an earlier print left.
  for (const earlier of document.querySelectorAll('.print-sheets')) earlier.remove();
  document.body.append(sheets);
  document.adoptedStyleSheets = [...document.adoptedStyleSheets, size];
  const done = () => {
    sheets.remove();
    document.adoptedStyleSheets = document.adoptedStyleSheets.filter((sheet) => sheet !== size);
  };
  addEventListener('afterprint', done, { once: true });
  requestAnimationFrame(() => print());
}
