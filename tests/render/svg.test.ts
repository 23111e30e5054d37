import { evaluate, type Report } from '@fielded/core';
import { loopsData } from '@fielded/geometry';
import { draw, scene, scenesToHtml, sceneToSvg, sheets, viewsOf, writeNumber } from '@fielded/render';
import { XMLValidator } from 'fast-xml-parser';
import { describe, expect, test } from 'vitest';
import { writePdf } from '../../packages/cli/src/formats/pdf.ts';
import { writePng } from '../../packages/cli/src/formats/png.ts';
import { shippedLetters } from '../support/shipped-letters.ts';
import { JOBS, job } from './jobs-to-draw.ts';
import { layoutFaults } from './layout-faults.ts';

const VIEWS = ['section', 'joint'] as const;

describe('drawings as files', () => {
  for (const view of VIEWS) {
    for (const [name, drawn] of Object.entries(JOBS)) {
      test(`${view}: ${name}`, async () => {
        await expect(draw(evaluate(drawn), { view })).toMatchFileSnapshot(
          `../snapshots/${name.replaceAll(' ', '-')}-${view}.svg`,
        );
      });
    }
  }
});

describe('an SVG', () => {
  const svg = draw(evaluate(job()), { view: 'joint' });
  const drawing = scene(evaluate(job()), { view: 'joint' });

  test('is well-formed, sized in millimetres, and viewed in millimetres', () => {
    expect(XMLValidator.validate(svg)).toBe(true);
    const [, width, height] = /width="([\d.]+)mm" height="([\d.]+)mm"/.exec(svg)!;
    expect(svg).toContain(`viewBox="0 0 ${width} ${height}"`);
    expect(Number(width)).toBeCloseTo(drawing.width, 3);
  });

  test('has no ids, styles, patterns, clips, markers or links', () => {
    expect(svg).not.toMatch(/\sid=|<style|<pattern|clip-path|<marker|href|url\(/);
  });

  test('has no number with more than three decimals, none in exponent form, and no -0', () => {
    const drawn = svg.replace(/<(title|desc)>[^<]*<\/\1>/g, '').replace(/(data|aria)-\w+="[^"]*"/g, '');
    expect(drawn).not.toMatch(/\d\.\d{4}/);
    expect(drawn).not.toMatch(/\de[-+]\d/);
    expect(drawn).not.toMatch(/-0(?![.\d])/);
  });

  test('draws arcs as arcs', () => {
    const outline = /<path stroke="#1d2430" stroke-width="0.5"[^>]* d="([^"]*A[^"]*)"/.exec(svg)![1]!;
    expect(outline.match(/A/g)).toHaveLength(3);
  });

  test('is dark for dark screens and has no sheet behind it when bare', () => {
    expect(draw(evaluate(job()), { view: 'joint', theme: 'dark' })).toContain('fill="#171a1f"');
    expect(sceneToSvg(drawing, { bare: true })).not.toContain('<rect');
  });
});

const HOSTILE = [
  ['markup', '</svg><script>alert(1)</script>'],
  ['an end of character data', ']]> & <![CDATA['],
  ['quotes', `" onload="alert(1)" x='`],
  ['control characters', 'a\u0000b\u0007c\u001b[31m\ud800'],
  ['line breaks', 'one\ntwo\r\nthree\u2028four'],
  ['right to left', 'ארון מטבח \u202eabc'],
  ['emoji', '🚪🪚👩‍🔧'],
  ['ten thousand characters', 'panel '.repeat(1667)],
  ['one word of ten thousand', 'x'.repeat(10_000)],
  ['nothing', ''],
] as const;

const reports = new Map<string, Report>();

/** A job in which every name is the hostile text. */
function hostileReport(text: string): Report {
  const known = reports.get(text);
  if (known !== undefined) return known;
  const plain = job({ title: text });
  const door = { name: text, quantity: 1, width: 396, height: 716, stile: 60, rail: 60, across: 1, up: 1, muntin: 0 };
  const report = evaluate({ ...plain, cuts: plain.cuts.map((one) => ({ ...one, name: text })), doors: [door] });
  reports.set(text, report);
  return report;
}

/** What any XML reader makes of it, and that nothing got in that is not drawing. */
function expectSound(xml: string, top: string): void {
  expect(XMLValidator.validate(xml)).toBe(true);
  // Well-formed, it begins with its only such element and ends with its end: nothing stands beside it at the top.
  expect(xml.match(new RegExp(`</?${top}\\b`, 'g'))).toEqual([`<${top}`, `</${top}`]);
  expect(xml.startsWith(`<${top}`) && xml.trimEnd().endsWith(`</${top}>`)).toBe(true);
  expect(xml.replaceAll('\n', '')).not.toMatch(/<script|onload="|\p{Cc}|\u202e/u);
}

describe('hostile names neither break nor inject', () => {
  test.each(HOSTILE)('%s', (_, text) => {
    const report = hostileReport(text);
    for (const view of viewsOf(report)) {
      const drawing = scene(report, { view });
      expectSound(sceneToSvg(drawing), 'svg');
      expect(drawing.width).toBeLessThan(320);
      expect(layoutFaults(drawing)).toEqual([]);
    }
    for (const sheet of sheets(report, { view: 'sheet', paper: 'a4', date: text, drawnBy: text })) {
      expectSound(sceneToSvg(sheet), 'svg');
      expectSound(scenesToHtml([sheet]), 'figure');
      expect(layoutFaults(sheet)).toEqual([]);
    }
  });

  test.each(HOSTILE)('%s, as PDF, as PNG and with letters as outlines', async (_, text) => {
    const [sheet] = sheets(hostileReport(text), { view: 'joint', paper: 'a4' });
    expect(Buffer.from(await writePdf([sheet!])).toString('latin1')).toMatch(/^%PDF-[\s\S]*%%EOF\s*$/);
    const png = Buffer.from(writePng(sheet!, 50, { theme: 'print', bare: false }));
    expect(png.subarray(1, 4).toString()).toBe('PNG');
    expectSound(sceneToSvg(sheet!, { letters: shippedLetters }), 'svg');
  });
});

test('numbers are rounded in one place', () => {
  expect([0.0004, -0.0004, 1.00049, 12, 1e-9, -2.5].map(writeNumber)).toEqual(['0', '0', '1', '12', '0', '-2.5']);
});

test('an empty loop draws nothing', () => {
  expect(loopsData([{ curves: [], closed: true }], writeNumber)).toBe('');
});
