// The brightness of JPEGs against another decoder's (jpeg-js 0.4.4), and against blocks coded by hand after ITU-T T.81.
import { decode, encode } from 'jpeg-js';
import { describe, expect, it } from 'vitest';
import { greyOfSequentialJpeg } from '../../packages/exchange/src/scan/jpeg-grey.ts';

/** 53 × 37 pixels of a made scan, written by ImageMagick: colours at half the fineness; grey; progressive. */
const HALVED =
  '/9j/4AAQSkZJRgABAQAAAQABAAD/2wBDAAoHBwgHBgoICAgLCgoLDhgQDg0NDh0VFhEYIx8lJCIfIiEmKzcvJik0KSEiMEExNDk7Pj4+JS5ESUM8SDc9Pjv/2wBDAQoLCw4NDhwQEBw7KCIoOzs7Ozs7Ozs7Ozs7Ozs7Ozs7Ozs7Ozs7Ozs7Ozs7Ozs7Ozs7Ozs7Ozs7Ozs7Ozs7Ozv/wAARCAAlADUDASIAAhEBAxEB/8QAGAABAQEBAQAAAAAAAAAAAAAAAAEHBgL/xAAuEAACAQMCAgcJAQAAAAAAAAABEQACITFBUQNxBAUGBxJhgRUWIjKRobHR4fH/xAAVAQEBAAAAAAAAAAAAAAAAAAAAAv/EABQRAQAAAAAAAAAAAAAAAAAAAAD/2gAMAwEAAhEDEQA/AOi7w6X0bo1QwKiEpwVsgkEzQ+8Gk+y+DVqOJkTPAAjtraSJYCraKri4TCuYIyyP1KiakQfpAEkk7nzgUg+F5OkXScekCEEk2NrWiehqAPvEDR+3lBPU1LDXEdpm9hfm5p3bak1dQcQ7VBzMThJb+cAbINQGFjGHBHhu0fxCOoRMAf8AZBcgD1l5nmo3RBtoYAMjICtvElVICuucQNU7Zge7nSSboU2POZYCKQUMBxEAKfipL+aEitD/AGIgR4N72zGFziIE8asQCrREQP/Z';
const GREY =
  '/9j/4AAQSkZJRgABAQAAAQABAAD/2wBDAAoHBwgHBgoICAgLCgoLDhgQDg0NDh0VFhEYIx8lJCIfIiEmKzcvJik0KSEiMEExNDk7Pj4+JS5ESUM8SDc9Pjv/wAALCAAlADUBAREA/8QAGAABAQEBAQAAAAAAAAAAAAAAAQcABgL/xAAuEAEAAQMBBAcJAQAAAAAAAAABEQACITEDQVFxBAUGBxJhgRUWIjKRobHR4fH/2gAIAQEAAD8A6PvDtno3RrjQuSIrgcaii1sBdwrXZMkSRlpVV4vnWLR8M6u6hFXDjGKoneDa+y9jdvNpqVPAIeG/FCayn6phboR+lbMRNHpXo3gfeqP28sXqa2SY2k4qb4M85rOIJigkjTTSaX/aDKB60kpqEY41Te21rd1BtHhcTUydIiOPnQnhzMP4ph3kLRzecU8YRxuaLrQjMc6qnbMPdzpK5gtw86lYlowaE0lvxWs/NREMbn+1p0c5xrW0jnR44wgxiv/Z';
const PROGRESSIVE =
  '/9j/4AAQSkZJRgABAQAAAQABAAD/2wBDABALDA4MChAODQ4SERATGCgaGBYWGDEjJR0oOjM9PDkzODdASFxOQERXRTc4UG1RV19iZ2hnPk1xeXBkeFxlZ2P/2wBDARESEhgVGC8aGi9jQjhCY2NjY2NjY2NjY2NjY2NjY2NjY2NjY2NjY2NjY2NjY2NjY2NjY2NjY2NjY2NjY2NjY2P/wgARCAAlADUDASIAAhEBAxEB/8QAFwABAQEBAAAAAAAAAAAAAAAAAAUBBP/EABUBAQEAAAAAAAAAAAAAAAAAAAAB/9oADAMBAAIQAxAAAAHqmVZUAAGitIsxgAAC1FAAAD//xAAYEAADAQEAAAAAAAAAAAAAAAAEIDIzMf/aAAgBAQABBQIrjFQxMMRmxGTf/8QAFBEBAAAAAAAAAAAAAAAAAAAAMP/aAAgBAwEBPwFP/8QAFBEBAAAAAAAAAAAAAAAAAAAAMP/aAAgBAgEBPwFP/8QAFhABAQEAAAAAAAAAAAAAAAAAASBA/9oACAEBAAY/AizK3//EABoQAAEFAQAAAAAAAAAAAAAAACAAAREwoTH/2gAIAQEAAT8hPaDbs+9plf/aAAwDAQACAAMAAAAQ+++yW+u+++CC/8QAFBEBAAAAAAAAAAAAAAAAAAAAMP/aAAgBAwEBPxBP/8QAFBEBAAAAAAAAAAAAAAAAAAAAMP/aAAgBAgEBPxBP/8QAIBAAAgICAgIDAAAAAAAAAAAAAAERITFBUXEQgaHw8f/aAAgBAQABPxBbdJs6kwmPGIHciWORqdC2b2EqY1n7BbdouD0LomWbgUPsUof6bhCxlIWWcND4gai8F7V+Omhr0Jc7hIThYItXkj5OPHQ//9k=';

const bytesOf = (text: string) => new Uint8Array(Buffer.from(text, 'base64'));

/** The greatest way from another decoder's brightness (Rec. 601 of its colours), of 255. */
function apart(bytes: Uint8Array): number {
  const { data, width, height } = decode(bytes, { useTArray: true, formatAsRGBA: false });
  const grey = greyOfSequentialJpeg(bytes)!;
  expect(grey.length).toBe(width * height);
  return grey.reduce((most, shade, i) => {
    const [r, g, b] = [data[3 * i]!, data[3 * i + 1]!, data[3 * i + 2]!];
    return Math.max(most, Math.abs(shade - (0.299 * r + 0.587 * g + 0.114 * b)));
  }, 0);
}

describe('the brightness of a JPEG', () => {
  it.each([
    ['with halved colours', HALVED],
    ['grey', GREY],
  ])('%s is that of another decoder within 2 of 255', (_, text) => {
    expect(apart(bytesOf(text))).toBeLessThanOrEqual(2);
  });

  it.each([50, 90, 100])('of quality %d with whole colours too', (quality) => {
    const [width, height] = [61, 43];
    const data = Uint8Array.from({ length: width * height * 4 }, (_, i) => {
      const [x, y] = [Math.floor(i / 4) % width, Math.floor(i / 4 / width)];
      return i % 4 === 3 ? 255 : 128 + 100 * Math.sin(x / (3 + (i % 4))) * Math.cos(y / 5);
    });
    expect(apart(encode({ width, height, data }, quality).data)).toBeLessThanOrEqual(2);
  });

  it('that is progressive is left to the other decoder', () => {
    expect(greyOfSequentialJpeg(bytesOf(PROGRESSIVE))).toBeNull();
  });

  it('starts anew after a restart marker', () => {
    // Two blocks of one shade with a marker after each: level 16, then −16, in steps of 8; 128 + 16 and 128 − 16.
    const segment = (marker: number, ...body: number[]) => [0xff, marker, 0, body.length + 2, ...body];
    const counts = (...first: number[]) => [...first, ...new Array(16 - first.length).fill(0)];
    const file = (second: number[]) =>
      Uint8Array.from([
        ...[0xff, 0xd8],
        ...segment(0xdb, 0, ...new Array(64).fill(8)),
        ...segment(0xc0, 8, 0, 8, 0, 16, 1, 1, 0x11, 0),
        // Codes: 0 for no change, 10 for a change of 5 bits; 0 for the end of a block.
        ...segment(0xc4, 0x00, ...counts(1, 1), 0, 5),
        ...segment(0xc4, 0x10, ...counts(1), 0),
        ...segment(0xdd, 0, 1),
        ...segment(0xda, 1, 1, 0x00, 0, 63, 0),
        ...[0b10_10000_0, ...second, 0b10_01111_0, 0xff, 0xd9],
      ]);
    const grey = greyOfSequentialJpeg(file([0xff, 0xd0]))!;
    expect([grey[0], grey[7], grey[8], grey[127]]).toEqual([144, 144, 112, 112]);
    expect(() => greyOfSequentialJpeg(file([]))).toThrow('no restart');
  });

  it('that is cut short or broken is an error, never a picture of its own making', () => {
    const whole = bytesOf(HALVED);
    for (let length = 4; length < whole.length - 40; length += 23)
      expect(() => {
        if (greyOfSequentialJpeg(whole.slice(0, length)) === null) throw new Error('not told');
      }).toThrow();
  });
});
