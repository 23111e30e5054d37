// The parts that need YAML and drawings, which are fetched when a shop file is opened.
export { readFileData, readShop } from '@fielded/core';
export { putOutlinesIn, readOutlineFile } from './outline-files.ts';
