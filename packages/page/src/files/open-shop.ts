import type { Desk } from '../desk/desk.ts';
import { fetchPart } from '../desk/fetch-part.ts';
import type { Data } from '../job/data.ts';
import { baseName } from './base-name.ts';
import { readFiles, takeShopLogo } from './open-text.ts';

const DRAWING = /\.(?:svg|dxf)$/i;

/** Makes a shop file the shop of the job on the desk; a notice says what is wrong with one that cannot be read, by its lines. */
export async function takeShop(desk: Desk, files: readonly File[]): Promise<void> {
  const given = await readFiles(files);
  if ('message' in given) {
    desk.notice.value = { kind: 'fault', text: given.message };
    return;
  }
  const file = given.find(({ name, bytes }) => !DRAWING.test(name) && bytes === undefined);
  if (file === undefined) return;
  const { putOutlinesIn, readFileData, readOutlineFile, readShop } = await fetchPart(() => import('./shop-reading.ts'));
  const loadOutline = (path: string) => {
    const drawing = given.find(({ name }) => name === baseName(path));
    return drawing === undefined
      ? { refused: 'it was not opened with the shop', instead: 'Choose the shop file and its drawings at once' }
      : readOutlineFile(drawing.name, drawing.text);
  };
  const { faults } = readShop(file.text, file.name, loadOutline);
  if (faults.length > 0) {
    const lines = faults.slice(0, 12).map(({ line, message }) => (line > 0 ? `Line ${line}: ${message}` : message));
    desk.notice.value = { kind: 'fault', text: `${file.name} is not a shop file that can be read.`, lines };
    return;
  }
  const data = putOutlinesIn(JSON.parse(JSON.stringify(readFileData(file.text).value)) as Data, loadOutline);
  const before = desk.doc.value;
  const { shop, remark } = await takeShopLogo({ name: file.name, text: file.text, data }, given);
  desk.replace({ ...before, shop });
  const said = `${file.name} is the shop now. Undo brings the one before back.`;
  desk.notice.value = { kind: 'note', text: `${said} ${remark}`.trim() };
}
