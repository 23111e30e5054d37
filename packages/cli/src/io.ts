/** What the command has to do with the world outside files: two streams, and what is known about them. */
export interface Io {
  /** Writes to standard output; settled when it is flushed, or when no one reads on. */
  out(text: string): Promise<void>;
  /** Writes to standard error, likewise. */
  err(text: string): Promise<void>;
  readonly outIsTerminal: boolean;
  readonly errIsTerminal: boolean;
  /** Columns of the terminal that standard error is; 80 where unknown. */
  readonly columns: number;
  /** Whether colour is welcome on standard output: a terminal, and neither NO_COLOR nor a dumb one. */
  readonly colour: boolean;
  /** Settled when someone stops the command: Ctrl-C, or an end from outside. */
  stopped(): Promise<void>;
}

/** The streams of this process. A reader that goes away (`fielded … | head`) ends the writing, not the command. */
export function processIo(): Io {
  return {
    out: writer(process.stdout),
    err: writer(process.stderr),
    outIsTerminal: process.stdout.isTTY === true,
    errIsTerminal: process.stderr.isTTY === true,
    columns: process.stderr.columns || 80,
    colour: process.stdout.isTTY === true && !process.env.NO_COLOR && process.env.TERM !== 'dumb',
    stopped: () =>
      new Promise((settle) => {
        process.once('SIGINT', () => settle());
        process.once('SIGTERM', () => settle());
      }),
  };
}

function writer(stream: NodeJS.WriteStream): (text: string) => Promise<void> {
  let gone = false;
  stream.on('error', () => {
    gone = true;
  });
  return (text) =>
    new Promise((settle) => {
      if (gone || text === '') settle();
      else stream.write(text, () => settle());
    });
}

/** Text from a file made safe for a terminal: control characters, which could move the cursor, become marks. */
export function safe(text: string): string {
  return text.replace(/[\p{Cc}\u2028\u2029\u202A-\u202E\u2066-\u2069]/gu, '�');
}
