// The parts that need YAML, which is fetched when a file of words is opened.
export { readQuoteWords, writeQuoteWords } from '@fielded/core';
