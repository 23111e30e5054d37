import { createRequire } from 'node:module';

/** The font that drawings are lettered in where they do not use the reader's own: IBM Plex Sans, under the SIL Open Font License beside it. */
export const FONT_FILE: string = createRequire(import.meta.url).resolve(
  '@fielded/render/fonts/IBMPlexSans-Regular.ttf',
);
export const FONT_NAME = 'IBM Plex Sans';
