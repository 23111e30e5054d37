// A second language from one file, over the command line: sentences, figures, tables and faults.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { readLanguageText } from '@fielded/core';
import { describe, expect, it } from 'vitest';
import { COMMANDS } from '../../packages/cli/src/commands.ts';
import { allEnglish } from '../../packages/cli/src/words/all-english.ts';
import { broken, SOUND } from '../core/job-texts.ts';
import { makeFolder, put, run } from './command.ts';

const folder = makeFolder();
const english = await allEnglish(COMMANDS);
const german = 'tests/support/german.json';
const tight = put(folder, 'tight.yaml', broken('depth: 4.6', 'depth: 4.63'));

describe('--language', () => {
  it('says verdict and problems, and writes figures with its decimal sign', async () => {
    const { status, out } = await run(['check', tight, '--language', german]);
    expect(status).toBe(0);
    expect(out).toContain('» stramm');
    expect(out).toContain('um zu gleiten.');
    expect(out).toMatch(/Clearance +0,03 mm/);
    expect(out).toMatch(/back relief +back +cove +over +4,63 +14,00 /);
  });

  it('says what is wrong with a file, or that the language cannot be taken', async () => {
    const bad = put(folder, 'bad.yaml', SOUND.replace(/thickness: \d+/, 'thickness: -3'));
    const { status, err } = await run(['check', bad, '--language', german]);
    expect([status, err]).toEqual([2, expect.stringContaining('-3 ist zu klein. Mehr als 0, höchstens 10 m angeben.')]);
    const spoilt = put(folder, 'spoilt.yaml', 'decimal: ","\nsentences: { word.tigt: x }\n');
    expect(await run(['check', tight, '--language', spoilt])).toEqual({
      status: 2,
      out: '',
      err: `fielded: --language ${spoilt}: word.tigt is no sentence of the catalogue.\n`,
    });
  });

  it('parts the columns of tables with semicolons', async () => {
    const list = join(folder, 'list.csv');
    const ask = ['cutting-list', 'examples/kitchen/job.yaml', '-o', list];
    expect((await run([...ask, '--language', german])).status).toBe(0);
    const rows = readFileSync(list, 'utf8').split('\r\n');
    expect(rows[0]).toBe('piece;off;length;width;thickness;grain;wood;for;note (mm)');
    expect(rows.filter((row) => row.startsWith('order;'))[0]).toMatch(/;\d+,\d{4} m³ = \d+,\d\d board feet$/);
    // It is known as ours, and replaced by the same with commas.
    expect((await run(ask)).status).toBe(0);
    const english = readFileSync(list, 'utf8').split('\r\n');
    expect(english[0]).toBe('piece,off,length,width,thickness,grain,wood,for,note (mm)');
    expect(english).toHaveLength(rows.length);
  });
});

describe('the file of a language', () => {
  const text = readFileSync('examples/languages/german.yaml', 'utf8');

  it('is read line by line as it is read as YAML', () => {
    const asYaml = readLanguageText(`---\n${text}`, english);
    expect(asYaml.faults).toEqual([]);
    expect(readLanguageText(text, english)).toEqual(asYaml);
    expect(readLanguageText(text.replaceAll('\n', '\r\n'), english)).toEqual(asYaml);
  });

  it.each([
    ['a key that stands twice', 'decimal: ","\nsentences:\n  loose: "a"\n  loose: "b"\n', /loose/],
    ['a sentence over two lines', 'decimal: ","\nsentences:\n  loose: "a\n    b"\n', null],
    ['an escape that JSON lacks', 'decimal: ","\nsentences:\n  loose: "a\\x41"\n', null],
    ['a key above the sentences', 'decimal: ","\n  loose: "a"\nsentences: {}\n', /./],
    ['no sentences', 'decimal: ","\n', /sentences is missing/],
  ])('%s is left to YAML', (_, written, fault) => {
    const { language, faults } = readLanguageText(written, english);
    if (fault === null) expect(language?.sentences.loose).toBe(written.includes('x41') ? 'aA' : 'a b');
    else expect(faults.join()).toMatch(fault);
  });

  it('is checked for the help of the command that is run, and for all of it by fielded language', async () => {
    const odd = put(folder, 'odd.yaml', 'decimal: ","\nsentences:\n  help.drow: "x"\n  help.draw.abuot.1: "x"\n');
    const known = put(folder, 'odd-draw.yaml', 'decimal: ","\nsentences:\n  help.draw.abuot.1: "x"\n');
    expect((await run(['check', tight, '--language', odd])).err).toContain('help.drow is no sentence');
    expect((await run(['check', tight, '--language', known])).status).toBe(0);
    for (const argv of [
      ['language', known],
      ['draw', tight, '--view', 'joint', '--language', known],
    ])
      expect((await run(argv)).err).toContain('help.draw.abuot.1 is no sentence of the catalogue');
  });
});

describe('the German example', () => {
  it('is taken by a command that has not every option', async () => {
    const { status, out } = await run(['check', tight, '--language', 'examples/languages/german.yaml']);
    expect([status, out.includes('stramm')]).toEqual([0, true]);
  });

  it('has every sentence that is said of a job and every line that the command prints', () => {
    const text = readFileSync('examples/languages/german.yaml', 'utf8');
    const { language, faults } = readLanguageText(text, english);
    expect(faults).toEqual([]);
    expect(Object.keys(english).filter((key) => !Object.hasOwn(language!.sentences, key))).toEqual([]);
  });

  it('is passed over where a folder is searched for jobs', async () => {
    expect((await run(['check', 'examples/languages'])).err).toContain('there is no job file in this folder'.slice(1));
  });

  it('names the same figures as the English sentences, all of them', () => {
    const { language } = readLanguageText(readFileSync('examples/languages/german.yaml', 'utf8'), english);
    const figures = (sentence: string) => [...new Set(sentence.match(/\{\w+/g))].sort();
    const odd = Object.entries(language!.sentences).filter(
      ([key, sentence]) => `${figures(sentence)}` !== `${figures(english[key]!)}`,
    );
    // "Above 0, at most 10 m" says no more in German than without the word for the measure.
    expect(odd.map(([key]) => key)).toEqual(['wanted.bounded']);
  });
});

describe('fielded language', () => {
  it('prints every sentence as a file that can be taken', async () => {
    const { status, out } = await run(['language']);
    const { language, faults } = readLanguageText(out, english);
    expect([status, faults]).toEqual([0, []]);
    expect(Object.keys(language!.sentences)).toEqual(Object.keys(english));
  });

  it('prints what a translation lacks', async () => {
    const { status, out, err } = await run(['language', german]);
    const own = Object.keys(readLanguageText(readFileSync(german, 'utf8'), english).language!.sentences);
    const lacking = Object.keys(readLanguageText(out, english).language!.sentences);
    expect([status, [...own, ...lacking].sort()]).toEqual([1, Object.keys(english).sort()]);
    expect(err).toBe(`${own.length} of ${own.length + lacking.length} sentences are translated.\n`);
  });
});
