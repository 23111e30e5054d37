import { Composer, type CST, type Document, type YAMLParseError } from 'yaml';
import { MOST_YAML_FAULTS } from './limits.ts';

/** What the tokens of a text make: its first two documents, and what is wrong with them, in the order it was found. */
interface Composed {
  readonly documents: readonly Document.Parsed[];
  readonly errors: readonly YAMLParseError[];
}

/** Thrown inside the composer to leave a text that has as many faults as are looked for. */
class EnoughFaults extends Error {}

/** The part of the composer that a fault goes through as it is found; the library's types keep it to themselves. */
interface Reporting {
  onError: (source: unknown, code: unknown, message: string, warning?: boolean) => void;
  readonly errors: readonly YAMLParseError[];
}

/**
 * Composes documents, up to two, and stops at `MOST_YAML_FAULTS` faults: a million commas are a million faults, each an
 * object of a kilobyte. Warnings are not kept: what they are about is refused by who reads the document.
 */
export function composeFirst(tokens: Iterable<CST.Token>): Composed {
  const composer = new Composer({ version: '1.2', uniqueKeys: false, prettyErrors: false, logLevel: 'silent' });
  const reporting = composer as unknown as Reporting;
  const note = reporting.onError;
  let found = 0;
  reporting.onError = (source, code, message, warning) => {
    if (warning) return;
    note(source, code, message);
    if (++found >= MOST_YAML_FAULTS) throw new EnoughFaults();
  };
  const documents: Document.Parsed[] = [];
  try {
    for (const document of composer.compose(tokens)) {
      documents.push(document);
      if (documents.length === 2) break;
    }
  } catch (error) {
    if (!(error instanceof EnoughFaults)) throw error;
    return { documents, errors: [...documents.flatMap((each) => each.errors), ...reporting.errors] };
  }
  return { documents, errors: documents.flatMap((document) => document.errors) };
}
