// Files as other systems write them: line ends of Windows and of old Macs, byte order marks, folders and names of any script.
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { makeFolder, run } from './command.ts';

const folder = makeFolder();

const JOB = (file: string) => `fielded: 1
title: Line ends
shop: shop.yaml
panel: { thickness: 20 }
frame: { thickness: 22, groove: { width: 6.4, depth: 11, setback: 7.5 }, swellGap: 2 }
cuts:
  - name: raise
    side: front
    profile: { shape: outline, file: "${file}" }
  - name: back
    side: back
    knife: cove
doors:
  - { width: 400, height: 700, stile: 60, rail: 70 }
`;
const SHOP = `fielded: 1
knives:
  cove: { shape: cove, reach: 14, depth: 4.8, land: 9 }
rates:
  currency: EUR
  hour: 40
  door: 1
`;
const SVG = `<svg xmlns="http://www.w3.org/2000/svg">
<path d="M 0 9 H 11
L 36 1.5 H 38 V 0"/>
</svg>
`;
const DXF = [
  '0',
  'SECTION',
  '2',
  'ENTITIES',
  ...line(0, -9, 11, -9),
  ...line(11, -9, 38, 0),
  '0',
  'ENDSEC',
  '0',
  'EOF',
  '',
].join('\n');
const WORDS = 'language: de-DE\nquote: Angebot\n';

function line(x0: number, y0: number, x1: number, y1: number): string[] {
  return ['0', 'LINE', '8', '0', '10', x0, '20', y0, '11', x1, '21', y1].map(String);
}

/** Writes a job with all its files into a folder of its own, as a system writes them. */
function write(name: string, end: string, mark: string, outline = 'thumb.svg'): string {
  const place = join(folder, name);
  mkdirSync(place, { recursive: true });
  const files = {
    'job.yaml': JOB(outline),
    'shop.yaml': SHOP,
    'thumb.svg': SVG,
    'thumb.dxf': DXF,
    'words.yaml': WORDS,
  };
  for (const [file, text] of Object.entries(files)) writeFileSync(join(place, file), mark + text.replaceAll('\n', end));
  return join(place, 'job.yaml');
}

/** What is said of a job that has a shop and words beside it. */
async function answer(job: string) {
  const report = (await run(['check', '--json', job])).out;
  const words = ['--words', job.replace('job.yaml', 'words.yaml')];
  const out = ['-o', `${job}.csv`, '--force'];
  const { status, err } = await run(['quote', job, '--date', '2026-03-14', '--draft', ...words, ...out]);
  expect(status, err).toBeLessThan(2);
  const quote = readFileSync(`${job}.csv`, 'utf8');
  return { report, quote, list: (await run(['cutting-list', job])).out };
}

describe.each(['thumb.svg', 'thumb.dxf'])('a job with its shop, its words and %s', (outline) => {
  let plain: ReturnType<typeof answer> | undefined;

  it.each([
    ['line ends of Windows', '\r\n', ''],
    ['line ends of Windows and a byte order mark', '\r\n', '\ufeff'],
    ['line ends of old Macs', '\r', ''],
    ['a byte order mark', '\n', '\ufeff'],
  ])('reads the same with %s', async (name, end, mark) => {
    plain ??= answer(write(`plain ${outline}`, '\n', '', outline));
    const found = await answer(write(`${name} ${outline}`, end, mark, outline));
    expect(JSON.parse(found.report).section.removedArea).toBeGreaterThan(100);
    expect(found).toEqual(await plain);
  });
});

describe('a path', () => {
  it.each(['with spaces in it', 'Füllung und Rahmen', '木の扉', 'дверь', 'x'.repeat(200)])(
    '%s is read and written beside',
    async (name) => {
      const path = write(name, '\n', '');
      const to = path.replace('job.yaml', `${name.slice(0, 60)} out.svg`);
      expect((await run(['check', path])).status).toBeLessThan(2);
      expect(await run(['draw', path, '--view', 'joint', '-o', to])).not.toMatchObject({ status: 2 });
    },
  );

  it('with the backslashes of Windows is refused, and told how to write it', async () => {
    const path = write('backslashes', '\n', '', 'shapes\\\\thumb.svg');
    const { status, err } = await run(['check', path]);
    expect(status).toBe(2);
    expect(err).toContain('with /');
  });
});
