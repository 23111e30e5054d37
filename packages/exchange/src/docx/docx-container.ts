import { strFromU8, strToU8, unzipSync, type Zippable, zipSync } from 'fflate';

/** Stands uncompressed in the container, so that a file of ours is known again. */
const MADE_HERE = 'made by fielded';
/** When files in the container are said to be made: the first day that a zip file knows. */
const NO_TIME = new Date('1980-01-01T00:00:00');

/** The container written again without the time that the library puts in, and without entries for folders, which OPC has not. */
export function withoutTime(zipped: Uint8Array): Uint8Array {
  const files: Zippable = {};
  for (const [name, bytes] of Object.entries(unzipSync(zipped))) {
    if (name.endsWith('/')) continue;
    files[name] = name === 'docProps/core.xml' ? strToU8(untimed(strFromU8(bytes))) : bytes;
  }
  return zipSync(files, { mtime: NO_TIME, level: 6, comment: MADE_HERE });
}

function untimed(xml: string): string {
  return xml.replace(/(<dcterms:(?:created|modified)[^>]*>)[^<]*/g, '$11980-01-01T00:00:00Z');
}
