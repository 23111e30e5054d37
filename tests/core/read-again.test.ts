// A text that is read again is not parsed again: what is read does not show it.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readFileData, readJob, readShop } from '../../packages/core/src/reading/read.ts';
import { broken, SOUND } from './job-texts.ts';

const shopText = readFileSync('examples/kitchen/shop.yaml', 'utf8');

describe('a text that is read again', () => {
  const faulty = broken('thickness: 20', 'thickness: -3', broken('side: front', 'side: frnt')).replace(
    'swellGap: 2',
    'swellGap: [1]\n  odd: 1',
  );
  it.each([
    ['a sound job', SOUND],
    ['a faulty one', faulty],
    ['no YAML', 'panel: { thickness: "20 }'],
  ])('%s, gives the same again, whatever was made of the first', (_, text) => {
    const first = readJob(text);
    const told = structuredClone(first);
    expect(readJob(text)).toEqual(told);
    expect(told.faults.length > 0).toBe(text !== SOUND);
    const data = readFileData(text).value as { title?: string } | null;
    if (data !== null) data.title = 'changed';
    expect(readJob(text)).toEqual(told);
  });

  it('is read with the shop it is given this time', () => {
    const job = SOUND.replace('fielded: 1', 'fielded: 1\nshop: shop.yaml').replace(
      'profile: { shape: cove, reach: 14, depth: 4.6, land: 9 }',
      'knife: cove-14',
    );
    const read = (text: string) => readJob(job, { loadShop: () => text });
    expect(read(shopText).faults).toEqual([]);
    expect(read(shopText.replace('cove-14:', 'cove-15:')).faults.map(({ code }) => code)).toEqual(['unknown-knife']);
    expect(read(shopText).faults).toEqual([]);
    expect(readShop(shopText, 'one.yaml').faults).toEqual([]);
  });

  it('names the file that it is read as this time', () => {
    const wrong = 'fielded: 1\nknives: 7\n';
    for (const name of ['one.yaml', 'other.yaml'])
      expect(readShop(wrong, name).faults[0]).toMatchObject({ at: 'knives', file: name });
  });
});
