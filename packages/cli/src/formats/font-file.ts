import { fileURLToPath } from 'node:url';

/** The font that drawings are lettered in where they do not use the reader's own: IBM Plex Sans, under the SIL Open Font License beside it. */
export const FONT_FILE: string = fileURLToPath(new URL('../../fonts/IBMPlexSans-Regular.ttf', import.meta.url));
export const FONT_NAME = 'IBM Plex Sans';
