import type { Refusal } from '@fielded/core';
import { type GreyImage, type Traced, traceScan } from '@fielded/exchange';

/** Pixels to the inch that are tried first: tracing tells faces from cuts by their length in millimetres. */
const GUESSES = [600, 300, 1200, 150];

/** Traces a picture that does not say its scale by a sample's thickness in mm, as a calliper reads it. */
export function traceByThickness(image: GreyImage, thickness: number): Traced | Refusal {
  let refusal: Refusal = { refused: 'the sample was not found', instead: 'Give the pixels to the inch instead' };
  for (const guess of GUESSES) {
    const first = traceScan(image, [guess, guess]);
    if ('refused' in first) {
      refusal = first;
      continue;
    }
    const dpi = (guess * first.thickness) / thickness;
    const traced = traceScan(image, [dpi, dpi]);
    if (!('refused' in traced)) return traced;
    refusal = traced;
  }
  return refusal;
}
