import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { PAPERS } from '@fielded/render';
import { describe, expect, test } from 'vitest';
import { makeFolder, run } from '../cli/command.ts';

const folder = makeFolder();
const job = join(import.meta.dirname, '../../examples/hall-doors/job.yaml');
const plain = join(import.meta.dirname, '../../examples/ogee-cove/job.yaml');

async function drawTo(name: string, ...options: string[]): Promise<Buffer> {
  const path = join(folder, name);
  const { status, out } = await run(['draw', job, ...options, '-o', path]);
  expect({ status, out }).toEqual({ status: 0, out: '' });
  return readFileSync(path);
}

async function refusal(...options: string[]): Promise<string> {
  const { status, out, err } = await run(['draw', ...options]);
  expect({ status, out }).toEqual({ status: 2, out: '' });
  return err;
}

describe('the ending says the format', () => {
  test('.pdf holds all sheets at true size, with its font in it', async () => {
    const pdf = (await drawTo('all.pdf', '--view', 'sheet')).toString('latin1');
    const boxes = [...pdf.matchAll(/\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/g)];
    expect(boxes).toHaveLength(3);
    for (const [, width, height] of boxes) {
      expect((Number(width) * 25.4) / 72).toBeCloseTo(PAPERS.a4.width, 2);
      expect((Number(height) * 25.4) / 72).toBeCloseTo(PAPERS.a4.height, 2);
    }
    expect(pdf).toContain('IBMPlexSans');
  });

  test('.png has the pixels that its dpi ask for, and says so', async () => {
    const png = await drawTo('joint.png', '--paper', 'a4', '--dpi', '100');
    expect(png.readUInt32BE(16)).toBe(Math.round((210 / 25.4) * 100));
    const at = png.indexOf('pHYs');
    expect(png.readUInt32BE(at + 4)).toBe(Math.round(100 / 0.0254));
    expect(png[at + 12]).toBe(1);
  });

  test('.html is a piece to put into a page', async () => {
    const html = (await drawTo('quote.html')).toString();
    expect(html).toMatch(
      /^<figure [\s\S]*<svg [\s\S]*<figcaption [\s\S]*<\/figure>\n<!-- made by fielded \[\w{12}\] -->\n$/,
    );
  });

  test('.svg has live text, or letters as outlines', async () => {
    expect((await drawTo('live.svg')).toString()).toContain('<text ');
    const outlined = (await drawTo('outlined.svg', '--text', 'outlines')).toString();
    expect(outlined).not.toContain('<text ');
    expect(outlined.match(/<path transform="translate/g)!.length).toBeGreaterThan(20);
  });

  test('--bare leaves only the drawing', async () => {
    const bare = (await drawTo('bare.svg', '--bare')).toString();
    expect(bare).not.toMatch(/<rect|>Sliding<\/text>|Hall cupboard doors<\/text>/);
    expect(bare).toContain('>9</text>');
  });

  test('--theme dark is for screens', async () => {
    expect((await drawTo('dark.svg', '--theme', 'dark')).toString()).toContain('fill="#171a1f"');
  });
});

describe('views, doors and sheets', () => {
  test.each(['section', 'joint', 'detail', 'cuts', 'panel', 'door'])('--view %s', async (view) => {
    expect((await drawTo(`${view}.svg`, '--view', view)).toString()).toMatch(/^<svg /);
  });

  test('--door takes one by its name', async () => {
    expect((await drawTo('b.svg', '--view', 'door', '--door', 'B')).toString()).toContain('data-of="doors[1].width"');
  });

  test('--sheet takes one of several; an .svg holds the first, and says that there are more', async () => {
    const path = join(folder, 'first.svg');
    const { err } = await run(['draw', job, '--view', 'sheet', '-o', path]);
    expect(err).toBe('Sheet 1 of 3. --sheet 2 draws the next; a .pdf or .html holds them all.\n');
    expect((await drawTo('second.svg', '--view', 'sheet', '--sheet', '2')).toString()).toContain('>2 of 3</text>');
  });

  test('--date and --drawn-by stand in the title block', async () => {
    const svg = (
      await drawTo('dated.svg', '--paper', 'a4', '--date', '1 May 2031', '--drawn-by', 'A. Turner')
    ).toString();
    expect(svg).toContain('>1 May 2031</text>');
    expect(svg).toContain('>A. Turner</text>');
  });

  test('--units both', async () => {
    expect((await drawTo('both.svg', '--units', 'both')).toString()).toContain('>≈1/4 in</text>');
  });

  test('--scale keeps to a scale', async () => {
    expect((await drawTo('five.svg', '--scale', '5:1')).toString()).toContain(' · 5:1 · ');
    expect((await drawTo('fit.svg', '--paper', 'a3', '--scale', 'fit')).toString()).toContain('>2:1</text>');
  });
});

describe('wrong use is answered in a line, and nothing is written', () => {
  test.each([
    [['--output', 'x.gif'], 'x.gif does not say what to write: end the name in .svg, .pdf, .png, .html or .dxf.'],
    [['--scale', '0:1'], '--scale 0:1 is no scale. Write 1:1, 2:1, 1:5, or fit; from 1:100 to 50:1.'],
    [['--scale', '1:0'], '--scale 1:0 is no scale. Write 1:1, 2:1, 1:5, or fit; from 1:100 to 50:1.'],
    [['--scale', '1e9:1'], '--scale 1e9:1 is no scale. Write 1:1, 2:1, 1:5, or fit; from 1:100 to 50:1.'],
    [['--scale', 'fit'], '--scale fit needs paper to fit. Add --paper, or give a scale such as 2:1.'],
    [['--paper', 'a5'], '--paper a5 is not known. Did you mean a4? There are a4, letter, a3 and tabloid.'],
    [['--sheet', '2'], '--sheet is for drawings on paper. Add --paper, or take --view sheet.'],
    [['--view', 'sheet', '--sheet', '9'], '--sheet 9: there are 3.'],
    [['--view', 'sheet', '--sheet', '0'], '--sheet needs a whole number from 1 to 9999, not 0.'],
    [['--units', 'cm'], '--units cm is not known. Did you mean mm? There are mm, in and both.'],
    [['--dpi', '300'], '--dpi is for .png. Leave it out.'],
    [['-o', 'x.png', '--dpi', '99999'], '--dpi needs a whole number from 36 to 1200, not 99999.'],
    [
      ['-o', 'x.pdf', '--theme', 'dark'],
      '--theme is for screens: a PDF is always ink on white. Leave it out, or write an .svg.',
    ],
    [
      ['-o', 'x.png', '--text', 'outlines'],
      '--text is for .svg: the other formats bring their letters with them. Leave it out.',
    ],
    [['--view', 'door', '--door', 'C'], '--door C: there is no such door. There are A, B.'],
    [
      ['--paper', 'a4', '--scale', '50:1'],
      'Joint in section A–A does not fit the paper at 50:1, even broken. At 2:1 it would fit.',
    ],
  ])('%j', async (options, line) => {
    expect((await refusal(job, ...options)).replace(/Did you mean \w+\? /, '')).toBe(
      `fielded: ${line.replace(/Did you mean \w+\? /, '')}\n`,
    );
  });

  test('a view of doors in a job without', async () => {
    expect(await refusal(plain, '--view', 'door', '-o', join(folder, 'none.svg'))).toBe(
      'fielded: --view door needs a door, and the job has none. Add it under doors, with its sizes.\n',
    );
    expect(existsSync(join(folder, 'none.svg'))).toBe(false);
  });
});
