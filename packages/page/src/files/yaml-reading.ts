// The parts that need YAML, which is fetched when a file is opened.
export { readFileData, readJob } from '@fielded/core';
