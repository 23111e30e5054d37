/// <reference path="../../types.d.ts" />
import { type Answers, type Asked, answerAsked } from '../../desk/asked.ts';
import EngineWorker from '../../desk/engine-worker.ts?worker&inline';

type Question = Extract<Asked, { ask: 'one' | 'two' }>;

/** Asks the solver; rejects with what the engine throws. */
export type AskSolver = <Q extends Question>(asked: Q) => Promise<Answers[Q['ask']]>;

export interface Solver {
  readonly ask: AskSolver;
  /** Ends the work on a question, which is then never answered. */
  giveUp(): void;
  close(): void;
}

/** A solver in a worker, or on the page itself where there can be none. It answers one question at a time. */
export function createSolver(): Solver {
  let worker: Worker | null = null;
  let working = false;
  const ask = <Q extends Question>(asked: Q): Promise<Answers[Q['ask']]> =>
    new Promise((resolve, reject) => {
      const done = (answer: Answers[Q['ask']]) => {
        working = false;
        resolve(answer);
      };
      const alone = () => {
        try {
          done(answerAsked(asked as never));
        } catch (error) {
          reject(error);
        }
      };
      working = true;
      try {
        worker ??= new EngineWorker();
        worker.onmessage = ({ data }) => done(data);
        worker.onerror = alone;
        worker.postMessage(asked);
      } catch {
        setTimeout(alone);
      }
    });
  const close = () => {
    worker?.terminate();
    worker = null;
    working = false;
  };
  return { ask, giveUp: () => working && close(), close };
}
