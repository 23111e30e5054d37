import { type Io, safe } from '../io.ts';
import { say, voiceOf } from '../words/say.ts';

/** A bar on standard error while many jobs are checked; nothing where that is no terminal, or for a handful of jobs. */
export interface Progress {
  step(name: string): Promise<void>;
  clear(): Promise<void>;
}

const FEWEST = 4;
const BAR = 24;

export function startProgress(io: Io, total: number): Progress {
  if (!io.errIsTerminal || total < FEWEST) return { step: async () => {}, clear: async () => {} };
  let done = 0;
  let shown = -1;
  return {
    async step(name) {
      const filled = Math.floor((done / total) * BAR);
      const count = `${String(done).padStart(String(total).length)}/${total}`;
      done++;
      // Redraw once per percent: a terminal is slower than the checking.
      const hundredth = Math.floor((done / total) * 100);
      if (hundredth === shown) return;
      shown = hundredth;
      const line = `${'█'.repeat(filled)}${'░'.repeat(BAR - filled)} ${count} ${safe(name)}`;
      await io.err(`\r\u001B[K${line.slice(0, io.columns - 1)}`);
    },
    async clear() {
      await io.err('\r\u001B[K');
    },
  };
}

/** A bar for one long run, told how much is done; nothing where standard error is no terminal. */
export interface ProgressBar {
  show(done: number): Promise<void>;
  clear(): Promise<void>;
}

export function startRun(io: Io, total: number): ProgressBar {
  if (!io.errIsTerminal) return { show: async () => {}, clear: async () => {} };
  let shown = -1;
  return {
    async show(done) {
      const hundredth = Math.floor((done / total) * 100);
      if (hundredth === shown) return;
      shown = hundredth;
      const filled = Math.floor((done / total) * BAR);
      const figures = { percent: String(hundredth).padStart(3), count: total };
      const words = say('print.simulating', figures, voiceOf(io));
      const line = `${'█'.repeat(filled)}${'░'.repeat(BAR - filled)} ${words}`;
      await io.err(`\r\u001B[K${line.slice(0, io.columns - 1)}`);
    },
    async clear() {
      await io.err('\r\u001B[K');
    },
  };
}
