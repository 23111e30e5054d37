import { createRequire } from 'node:module';

const mathjs = createRequire(import.meta.url)('mathjs/lib/browser/math.js') as typeof import('mathjs');

/** Arithmetic of mathjs in decimals of 64 digits. The library as one file: its thousand modules take more than a second to load. */
export const arithmetic = mathjs.create(mathjs.all, { number: 'BigNumber', precision: 64 });
