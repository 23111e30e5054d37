import { evaluate } from '@fielded/core';
import { draw, pathData, scene, sceneToSvg, writeNumber } from '@fielded/render';
import { XMLParser, XMLValidator } from 'fast-xml-parser';
import { describe, expect, test } from 'vitest';
import { JOBS, job } from './jobs-to-draw.ts';

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

describe('hostile titles neither break nor inject', () => {
  test.each([
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
  ])('%s', (_, title) => {
    for (const view of VIEWS) {
      const svg = draw(evaluate(job({ title })), { view });
      expect(XMLValidator.validate(svg)).toBe(true);
      const tree = new XMLParser({ ignoreAttributes: false }).parse(svg);
      expect(Object.keys(tree)).toEqual(['svg']);
      expect(svg.replaceAll('\n', '')).not.toMatch(/<script|onload="|\p{Cc}|\u202e/u);
      const width = Number(/width="([\d.]+)mm"/.exec(svg)![1]);
      expect(width).toBeLessThan(260);
    }
  });
});

test('numbers are rounded in one place', () => {
  expect([0.0004, -0.0004, 1.00049, 12, 1e-9, -2.5].map(writeNumber)).toEqual(['0', '0', '1', '12', '0', '-2.5']);
});

test('an empty loop draws nothing', () => {
  expect(pathData([{ curves: [], closed: true }])).toBe('');
});
