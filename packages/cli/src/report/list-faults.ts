import { dirname, join } from 'node:path';
import { type Fault, type Language, type Refusal, translate } from '@fielded/core';
import { safe } from '../io.ts';
import { say, voiceOf } from '../words/say.ts';

/** The most faults printed for one file. */
const MOST_LINES = 100;

/**
 * The faults of one job as `path:line:column  message` lines. A fault in the shop file names that file: where the job
 * names it, seen from here; where the user gave it, as given. In English, or in the language given.
 */
export function listFaults(job: string, faults: readonly Fault[], shopGiven: boolean, language?: Language): string {
  const lines = faults.slice(0, MOST_LINES).map((fault) => {
    const { file, line, column } = fault;
    const { message } = language === undefined ? fault : translate(fault, { units: 'mm' }, language);
    const path = file === '' ? job : shopGiven ? file : join(dirname(job), file);
    return safe(line === 0 ? `${path}  ${message}` : `${path}:${line}:${column}  ${message}`);
  });
  const more = faults.length - MOST_LINES;
  if (more > 0) {
    const voice = voiceOf({ ...(language && { language }) });
    const words =
      more === 1 ? say('print.more-faults.one', {}, voice) : say('print.more-faults', { count: more }, voice);
    lines.push(`${safe(job)}  ${words}`);
  }
  return lines.map((line) => `${line}\n`).join('');
}

/** One line for a file that could not be opened or written. */
export function refusalLine(path: string, { refused, instead }: Refusal): string {
  return `${safe(path)}  ${refused.charAt(0).toUpperCase()}${refused.slice(1)}. ${instead}.\n`;
}
