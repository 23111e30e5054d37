// Works out what takes long beside the page, which goes on answering meanwhile.
import { type Asked, answerAsked } from './asked.ts';

addEventListener('message', ({ data }: MessageEvent<Asked>) => {
  postMessage(answerAsked(data));
});
