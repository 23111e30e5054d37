import { effect, type ReadonlySignal, signal } from '@preact/signals';
import type { Desk } from './desk.ts';

/** Least time between two updates of the figures beside a moving drawing, ms: nobody reads faster. */
const PACE = 90;

/**
 * The same desk for figures beside the drawing: while a hand drags, its report is updated about ten times a second, so that
 * most frames have only the drawing to paint. At rest it is updated at once.
 */
export function createPacedDesk(desk: Desk): { readonly desk: Desk; stop(): void } {
  const report = signal(desk.report.peek());
  let told = 0;
  let wait: ReturnType<typeof setTimeout> | undefined;
  const tell = () => {
    clearTimeout(wait);
    wait = undefined;
    told = performance.now();
    report.value = desk.report.peek();
  };
  const stop = effect(() => {
    const now = desk.report.value;
    if (now === report.peek()) return;
    const left = told + PACE - performance.now();
    if (!desk.dragged.value || left <= 0) tell();
    else wait ??= setTimeout(tell, left);
  });
  return {
    desk: { ...desk, report: report as ReadonlySignal<Desk['report']['value']> },
    stop() {
      clearTimeout(wait);
      stop();
    },
  };
}
