import { writeOutput } from '../files/write-output.ts';
import type { Io } from '../io.ts';
import { refusalLine } from '../report/list-faults.ts';
import { voiceOf } from '../words/say.ts';

/**
 * Hands over what a command made: to standard output, or to the file named with -o. False, with a line on standard error,
 * where the file could not be written.
 */
export async function deliver(
  io: Io,
  output: string | undefined,
  content: string | Uint8Array,
  force: boolean,
): Promise<boolean> {
  if (output === undefined) {
    await io.out(content.toString());
    return true;
  }
  const refusal = writeOutput(output, content, force, voiceOf(io));
  if (refusal !== null) await io.err(refusalLine(output, refusal));
  return refusal === null;
}
