import type { PaperName } from '@fielded/render';
import { type Signal, signal } from '@preact/signals';
import type { JSX } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { useDesk } from '../desk/context.ts';

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

/** What is being printed on which paper; null when nothing is. */
export function createPrinting(): Signal<PaperName | null> {
  return signal<PaperName | null>(null);
}

/** The sheets for the bench, there only while they are printed: one to a page, in millimetres, so that 100 mm print as 100 mm. */
export function PrintSheets({ printing }: { printing: Signal<PaperName | null> }): JSX.Element | null {
  const desk = useDesk();
  const paper = printing.value;
  const [pages, setPages] = useState<readonly string[]>([]);
  useEffect(() => {
    if (paper === null) return setPages([]);
    void import('./drawings.ts').then(({ benchSheets }) => setPages(benchSheets(desk.report.peek(), paper)));
  }, [paper, desk]);
  useEffect(() => {
    if (paper === null || pages.length === 0) return;
    const page = new CSSStyleSheet();
    page.replaceSync(`@page { size: ${PAGE_SIZES[paper]}; margin: 0 }`);
    document.adoptedStyleSheets = [...document.adoptedStyleSheets, page];
    const done = () => {
      printing.value = null;
    };
    addEventListener('afterprint', done, { once: true });
    requestAnimationFrame(() => print());
    return () => {
      removeEventListener('afterprint', done);
      document.adoptedStyleSheets = document.adoptedStyleSheets.filter((sheet) => sheet !== page);
    };
  }, [pages, printing]);
  if (paper === null) return null;
  return (
    <div class="print-sheets" aria-hidden="true">
      {pages.map((svg) => (
        <div class="print-sheet" key={svg} ref={(element) => element?.replaceChildren(drawingOf(svg))} />
      ))}
    </div>
  );
}

/** Read as a drawing, not as a page: nothing in it is run. */
function drawingOf(svg: string): Element {
  return new DOMParser().parseFromString(svg, 'image/svg+xml').documentElement;
}
