// A document for word processors, read back by unzipping it, by an XML parser and by LibreOffice Writer.
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { type WordDocument, writeDocx } from '@fielded/exchange';
import { XMLValidator } from 'fast-xml-parser';
import { strFromU8, unzipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { runProgram, scratchFolder } from '../support/programs.ts';

const SVG =
  '<svg xmlns="http://www.w3.org/2000/svg" width="20mm" height="10mm" viewBox="0 0 20 10"><rect width="20" height="10"/></svg>';
/** A black pixel. */
const PNG = Uint8Array.from(
  Buffer.from('iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAAAAAA6fptVAAAACklEQVR4nGNgAAAAAgABSK+kcQAAAABJRU5ErkJggg==', 'base64'),
);

const DOCUMENT: WordDocument = {
  title: 'Quotation </w:t>',
  language: 'en-GB',
  foot: 'Alder Lane',
  paper: { width: 210, height: 297 },
  blocks: [
    { kind: 'letterhead', name: 'Alder & Lane', address: ['3 <b>Lane</b>'], logo: { png: PNG, width: 1, height: 1 } },
    { kind: 'title', text: 'Quotation' },
    { kind: 'facts', facts: [['For', 'M. Fennimore\n4 "Nowhere"']] },
    { kind: 'heading', text: 'Price' },
    {
      kind: 'table',
      head: ['Item', 'Amount'],
      rows: Array.from({ length: 200 }, (_, i) => [`Line ${i + 1}`, `€${i}.00`]),
      foot: [['Total', '€9']],
      shares: [3, 1],
      align: ['start', 'end'],
    },
    {
      kind: 'figures',
      figures: [{ picture: { svg: SVG, png: PNG, width: 20, height: 10, alt: 'A corner' }, caption: 'Corner' }],
    },
    { kind: 'list', items: ['Delivery'] },
    { kind: 'signatures', names: ['Client', 'Shop'] },
  ],
};

const folder = scratchFolder();

/** The document as a file, written once. */
const written = writeDocx(DOCUMENT);

describe('a document for word processors', () => {
  it('is a container of well-formed parts without script, macros, links or times', async () => {
    const parts = unzipSync(await written);
    const names = Object.keys(parts);
    expect(names).toContain('[Content_Types].xml');
    expect(names.filter((name) => /vba|macro|activeX|embeddings|\/$/i.test(name))).toEqual([]);
    for (const name of names.filter((part) => /\.(xml|rels)$/.test(part))) {
      const xml = strFromU8(parts[name]!);
      expect(XMLValidator.validate(xml), name).toBe(true);
      expect(xml, name).not.toMatch(/TargetMode="External"|20\d\d-\d\d-\d\dT/);
    }
  });

  it('has a real table with its head marked to be repeated, styled headings and the drawing as SVG with PNG beside', async () => {
    const parts = unzipSync(await written);
    const xml = strFromU8(parts['word/document.xml']!);
    expect(xml.match(/<w:tblHeader/g)).toHaveLength(1);
    expect(xml).toContain('<w:pStyle w:val="Heading1"/>');
    expect(xml).toContain('svgBlip');
    expect(Object.keys(parts).filter((name) => name.startsWith('word/media/') && name.endsWith('.svg'))).toHaveLength(
      1,
    );
    expect(xml).toContain('4 &quot;Nowhere&quot;');
  });

  it('is the same, byte for byte, each time', async () => {
    expect(Buffer.from(await writeDocx(DOCUMENT)).equals(Buffer.from(await written))).toBe(true);
  });

  it('opens in LibreOffice with every line, on several pages', { timeout: 120_000 }, async () => {
    const file = join(folder, 'quote.docx');
    writeFileSync(file, await written);
    const profile = `-env:UserInstallation=file://${folder}/profile`;
    runProgram('soffice', ['--headless', profile, '--convert-to', 'pdf', '--outdir', folder, file]);
    const pdf = join(folder, 'quote.pdf');
    expect(existsSync(pdf)).toBe(true);
    const text = runProgram('pdftotext', ['-layout', pdf, '-']).toString('utf8');
    for (const words of ['Alder & Lane', '3 <b>Lane</b>', 'Line 1 ', 'Line 200', 'Total', '4 "Nowhere"', 'Delivery'])
      expect(text).toContain(words);
    expect(text.match(/\bItem\b/g)!.length).toBeGreaterThan(3);
    expect(readFileSync(pdf).subarray(0, 5).toString()).toBe('%PDF-');
  });
});
