/** Sheets of paper, mm, upright: ISO 216 and the North American sizes. */
export const PAPERS: Readonly<Record<PaperName, { readonly width: number; readonly height: number }>> = {
  a4: { width: 210, height: 297 },
  a3: { width: 297, height: 420 },
  letter: { width: 215.9, height: 279.4 },
  tabloid: { width: 279.4, height: 431.8 },
};

export type PaperName = 'a4' | 'letter' | 'a3' | 'tabloid';

/** What an office prints on: sheets for the shop and documents are laid out for these. */
export type OfficePaper = 'a4' | 'letter';

/** How far what is laid out as wide as A4 moves to the right to stand in the middle of a sheet, mm. */
export function toMiddle(paper: OfficePaper): number {
  return (PAPERS[paper].width - PAPERS.a4.width) / 2;
}

/** Scales that a drawing may have, the largest first: enlargements and reductions of ISO 5455. */
export const SCALES: readonly number[] = [50, 20, 10, 5, 2, 1, 0.5, 0.2, 0.1, 0.05, 0.02, 0.01];

/** White margin round a sheet, mm: printers leave a little of it blank anyway. */
export const SHEET_MARGIN = 12;

/** Room for drawings on a sheet, mm. */
export interface Page {
  readonly width: number;
  readonly height: number;
}
