import type { Language } from '@fielded/core';
import { explainFailure } from './files/read-text.ts';

/** The command's output streams and whether they are terminals. */
export interface Io {
  /** Writes to standard output; settled when it is flushed, or when no one reads on. Rejects with `WriteError` where it fails. */
  out(text: string): Promise<void>;
  /** Writes to standard error, likewise. */
  err(text: string): Promise<void>;
  readonly outIsTerminal: boolean;
  readonly errIsTerminal: boolean;
  /** Columns of the terminal that standard error is; 80 where unknown. */
  readonly columns: number;
  /** Whether colour is welcome on standard output: a terminal, and neither NO_COLOR nor a dumb one. */
  readonly colour: boolean;
  /** What jobs and their faults are spoken of in, where the user names another language than English. */
  readonly language?: Language;
  /** Settled when someone stops the command: Ctrl-C, or an end from outside. */
  stopped(): Promise<void>;
}

/** What is written to: a terminal says so, and how wide it is. */
type Output = NodeJS.WritableStream & { readonly isTTY?: boolean; readonly columns?: number };

/** The streams of this process, or others. A reader that goes away (`fielded … | head`) ends the writing, not the command. */
export function processIo(stdout: Output = process.stdout, stderr: Output = process.stderr): Io {
  return {
    out: writer(stdout, true),
    err: writer(stderr, false),
    outIsTerminal: stdout.isTTY === true,
    errIsTerminal: stderr.isTTY === true,
    columns: stderr.columns || 80,
    colour: stdout.isTTY === true && !process.env.NO_COLOR && process.env.TERM !== 'dumb',
    stopped: () =>
      new Promise((settle) => {
        process.once('SIGINT', () => settle());
        process.once('SIGTERM', () => settle());
      }),
  };
}

/** A stream that could not be written to, for another reason than that its reader left: status 2, whatever was found. */
export class WriteError extends Error {}

function writer(stream: Output, mustArrive: boolean): (text: string) => Promise<void> {
  let gone = false;
  // Without a listener an error would end the process with a stack trace; the write that failed hears of it itself.
  stream.on('error', () => {
    gone = true;
  });
  return (text) =>
    new Promise((settle, fail) => {
      if (gone || text === '') return settle();
      stream.write(text, (error) => {
        const { code = '' } = (error ?? {}) as NodeJS.ErrnoException;
        if (!error || code === 'EPIPE' || !mustArrive) return settle();
        const { refused, instead } = explainFailure(error);
        fail(new WriteError(`standard output could not be written: ${refused}. ${instead}.`));
      });
    });
}

/** Text from a file made safe for a terminal: characters that move the cursor, turn the direction of writing or cannot be seen become marks. */
export function safe(text: string): string {
  return text.replace(
    /[\p{Cc}\p{Zl}\p{Zp}\u061C\u200B\u200E\u200F\u202A-\u202E\u2060-\u206F\uFEFF\uFFF9-\uFFFB\u{E0000}-\u{E007F}]/gu,
    '�',
  );
}
