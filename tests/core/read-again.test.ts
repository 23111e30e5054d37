// A text that is read again is not parsed again, and the library's parser is fed in a way of our own: what is read shows neither.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type CST, Lexer, LineCounter, Parser } from 'yaml';
import { feedParser } from '../../packages/core/src/reading/feed-parser.ts';
import { readFileData, readJob, readShop } from '../../packages/core/src/reading/read.ts';
import { Random } from '../support/random.ts';
import { trials } from '../support/trials.ts';
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

describe('the library’s parser', () => {
  const TEXTS = [
    ...['kitchen', 'wardrobe', 'two-machines'].map((name) => readFileSync(`examples/${name}/job.yaml`, 'utf8')),
    shopText,
    '%YAML 1.2\n---\n- ? a\n  : &b !t [1, {c: *b, "d": \'e\'}]\n- |\n  f\n  g\n- >-\n\th\n...\n# i\n---\nj: k # l\n',
  ];

  /** What a parser makes of a text: its tokens, and where lines start. */
  function parsed(text: string, feed: (parser: Parser, lexeme: string, take: (token: CST.Token) => void) => void) {
    const lines = new LineCounter();
    const parser = new Parser(lines.addNewLine);
    const tokens: CST.Token[] = [];
    for (const lexeme of new Lexer().lex(text)) feed(parser, lexeme, (token) => tokens.push(token));
    tokens.push(...parser.end());
    return JSON.stringify([tokens, lines.lineStarts, parser.offset, parser.stack]);
  }

  it('makes the same of every lexeme that it is fed as of those it takes itself, of spoilt texts too', () => {
    const random = new Random(7);
    const spoil = (text: string) => {
      const at = Math.floor(random.unit() * text.length);
      const put = random.oneOf([
        '',
        '  ',
        '\n',
        '\t',
        '[',
        '}',
        '"',
        '- ',
        '? ',
        ': ',
        '---\n',
        '|\n',
        '&a ',
        '\u0002',
        '@',
      ]);
      return text.slice(0, at) + put + text.slice(at + random.oneOf([0, 1, 5]));
    };
    const spoilt = Array.from({ length: trials(60, 600) }, () => spoil(spoil(random.oneOf(TEXTS))));
    for (const text of [...TEXTS, ...spoilt]) {
      const itself = parsed(text, (parser, lexeme, take) => [...parser.next(lexeme)].forEach(take));
      expect(parsed(text, feedParser) === itself, text).toBe(true);
    }
  });
});
