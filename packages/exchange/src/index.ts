export { type PointReading, readPoints, type Table, writeCsv } from './csv.ts';
export type { WordBlock, WordCell, WordDocument, WordPicture } from './docx/word-document.ts';
export { writeDocx } from './docx/write-docx.ts';
export { type DxfOutline, type DxfReading, readDxf } from './read-dxf.ts';
export { readOutlineFile } from './read-outline.ts';
export type { OutlineRefusal } from './refusal.ts';
export { type DxfLayer, writeDxf } from './write-dxf.ts';
