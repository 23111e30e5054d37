// Works out jobs whole, their spread with them, beside the page, which goes on answering meanwhile.
import { evaluate, type Job } from '@fielded/core';

addEventListener('message', ({ data }: MessageEvent<Job>) => {
  postMessage(evaluate(data));
});
