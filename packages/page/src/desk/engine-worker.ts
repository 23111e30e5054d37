// Computes long answers in a worker, so that the page stays responsive.
import { type Asked, answerAsked } from './asked.ts';

addEventListener('message', ({ data }: MessageEvent<Asked>) => {
  postMessage(answerAsked(data));
});
