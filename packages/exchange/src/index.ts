export { type PointReading, readPoints, type Table, writeCsv } from './csv.ts';
export { type DxfOutline, type DxfReading, readDxf } from './read-dxf.ts';
export { readOutlineFile } from './read-outline.ts';
export type { OutlineRefusal } from './refusal.ts';
export { type DxfLayer, writeDxf } from './write-dxf.ts';
