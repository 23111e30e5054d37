import { sayView, VIEW_ENGLISH } from '../words/english/view.ts';
import { createFigures, type MakeFigure } from './cut-dimensions.ts';

/** A figure that stands in the other views than section and joint. */
export const viewFigure: MakeFigure<typeof VIEW_ENGLISH> = createFigures(VIEW_ENGLISH, sayView);
