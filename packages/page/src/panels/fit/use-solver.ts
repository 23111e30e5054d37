import { useSignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import { useDesk } from '../../desk/context.ts';
import { attempt, fetchPart } from '../../desk/fetch-part.ts';
import type { AskSolver, Solver } from './solve-beside.ts';

/** How long an answer waits for the next key, and from when on it is said that it takes its time, ms. */
const PAUSE = 120;
const LONG = 500;

/** An answer of the solver; null while there is none. */
interface Working<A> {
  readonly answer: A | null;
  /** Whether it takes so long that it is said. */
  readonly long: boolean;
}

/**
 * Works something out with the solver beside the page, anew whenever the job or one of `of` changes; nothing, for `work` null.
 * An answer for a job that was changed meanwhile, or asked for by what is no longer shown, is dropped.
 */
export function useSolver<A>(work: ((ask: AskSolver) => Promise<A>) | null, of: readonly unknown[]): Working<A> {
  const desk = useDesk();
  const doc = desk.doc.value;
  const answer = useSignal<A | null>(null);
  const long = useSignal(false);
  const solver = useRef<Solver | null>(null);
  useEffect(() => () => solver.current?.close(), []);
  useEffect(() => {
    answer.value = null;
    long.value = false;
    if (work === null) return;
    let left = false;
    // Fetched when there is something to work out: what is there already needs no solver.
    const ask: AskSolver = async (asked) => {
      const { createSolver } = await fetchPart(() => import('./solve-beside.ts'));
      if (left) return new Promise(() => {});
      solver.current ??= createSolver();
      return solver.current.ask(asked);
    };
    const start = async () => {
      try {
        const found = await work(ask);
        if (!left && desk.doc.peek() === doc) answer.value = found;
      } finally {
        if (!left) long.value = false;
      }
    };
    const begin = setTimeout(() => void attempt(desk, start), PAUSE);
    const tell = setTimeout(() => {
      long.value = answer.peek() === null;
    }, LONG);
    return () => {
      left = true;
      clearTimeout(begin);
      clearTimeout(tell);
      solver.current?.giveUp();
    };
  }, [desk, doc, ...of]);
  return { answer: answer.value, long: long.value };
}
