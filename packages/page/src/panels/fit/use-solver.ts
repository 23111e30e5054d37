import { useSignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import { useDesk } from '../../desk/context.ts';
import { attempt, fetchPart } from '../../desk/fetch-part.ts';
import type { AskSolver, Solver } from './solve-beside.ts';

/** How long a question waits for the next key, and after how long the page says that it is still working, ms. */
const PAUSE = 120;
const LONG = 500;

/** An answer of the solver; null while there is none. */
interface Working<A> {
  readonly answer: A | null;
  /** Whether it takes so long that the page says so. */
  readonly long: boolean;
}

/**
 * Runs `work` with the solver, again whenever the job or one of `of` changes; does nothing for null. Drops the answer for a
 * job that has changed meanwhile, or for a component that is no longer shown.
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
    // Fetch the solver only when it is asked: a fit that is there already needs none.
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
