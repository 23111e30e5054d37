import {
  ENGLISH,
  evaluate,
  type GivenJob,
  type Job,
  readJob,
  readLanguage,
  readLanguageText,
  sayFault,
  sayTerm,
  termsOf,
  translate,
  verdictSentence,
  verdictWord,
} from '@fielded/core';
import { writeCsv } from '@fielded/exchange';
import { describe, expect, it } from 'vitest';
import { readQuoteWords } from '../../packages/core/src/reading/quote-words.ts';
import { shareSentence } from '../../packages/core/src/report/share-words.ts';
import german from '../support/german.json' with { type: 'json' };

const { language } = readLanguage(german);

function job(relief: number, change: Partial<GivenJob> = {}): GivenJob {
  return {
    panel: { thickness: 20 },
    frame: { thickness: 22, groove: { width: 6.4, depth: 11, setback: 7.5 }, swellGap: 2 },
    cuts: [
      { name: 'Platte', side: 'front', profile: { shape: 'ogee', reach: 38, depth: 9, land: 11, shoulder: 1.5 } },
      { name: 'Rückseite', side: 'back', profile: { shape: 'rebate', reach: 14, depth: relief } },
    ],
    ...change,
  };
}

describe('a second language, added as one file', () => {
  it('is read, every sentence checked against the English one', () => {
    expect(readLanguage(german).faults).toEqual([]);
    const spoilt = {
      'word.tigt': 'x',
      'word.tight': '',
      loose: '{spare:length} {more}',
      'raise-hidden': 'Die [raise]',
    };
    expect(readLanguage({ decimal: ';', sentences: spoilt }).faults).toEqual([
      'decimal is missing: write "." or ","',
      'word.tigt is no sentence of the catalogue',
      'word.tight says nothing: write a sentence',
      'loose names {more}, which is not given: it has {spare:length}, {loose:length}',
      'raise-hidden holds a term in [ ]: write the word itself',
    ]);
    expect(readLanguage(null).faults).toHaveLength(2);
  });

  it('says problems and advice in it, with a decimal comma', () => {
    const { problems } = evaluate(job(4.63, { language: language! }));
    expect(problems.map(({ message }) => message)).toEqual([
      'Die Feder sitzt stramm: Sie hat 0,03 mm Spiel und braucht 0,05 mm, um zu gleiten. „Rückseite“ um 0,17 mm tiefer einstellen.',
    ]);
  });

  it('puts a report that was made in English into it, figures and all', () => {
    const report = evaluate(job(4.63));
    expect(report.problems[0]!.message).toMatch(/^The tongue is tight/);
    const said = translate(report.problems[0]!, report, language!);
    expect(said.message).toContain('0,17 mm tiefer');
    expect(said.advice![0]!.message).toBe('„Rückseite“ um 0,17 mm tiefer einstellen.');
    expect(said.figures).toEqual(report.problems[0]!.figures);
  });

  it('says what is wrong with a file in it, with the parts of its sentences', () => {
    const text = 'fielded: 1\npanel: { thickness: -3 }\nframe: { thicknes: 22 }\ncuts: []\n';
    const faults = readJob(text).faults.map((fault) => translate(fault, { units: 'mm' }, language!));
    expect(faults.map(({ message }) => message)).toEqual([
      'panel.thickness: -3 ist zu klein. Mehr als 0, höchstens 10 m angeben.',
      'frame.thickness is missing. Add thickness (thickness of stiles and rails).',
      'frame.groove is missing. Add groove (its width, depth and setback).',
      "frame.swellGap is missing. Add swellGap (left at the groove's bottom when the panel is made).",
      expect.stringMatching(/^thicknes ist kein Schlüssel von frame\. Gemeint: thickness\? Bekannt sind thickness, /),
      'cuts holds no cut. Add at least one, with a side and a profile.',
    ]);
    expect(faults[0]).toMatchObject({ code: 'out-of-range', at: 'panel.thickness', line: 2 });
  });

  it('calls places of the file as it is told to, and leaves out the one that it stands beside', () => {
    const [fault, other] = readJob('fielded: 1\npanel: { thickness: -3 }\nframe: { thickness: 22 }\ncuts: []\n').faults;
    const beside = (path: string) => (path === fault!.at ? '' : `<${path}>`);
    expect([fault, other].map((each) => sayFault(each!, { units: 'mm', namePlace: beside }))).toEqual([
      '-3 is too small. Write a thickness above 0, at most 10 m.',
      '<frame.groove> is missing. Add groove (its width, depth and setback).',
    ]);
    expect(sayFault(other!, { units: 'mm', namePlace: () => '' })).toMatch(/^this is missing\./);
    expect(sayFault(fault!, { units: 'mm' })).toBe(fault!.message);
  });

  it('names stretches and lists its own way', () => {
    const { problems } = evaluate(job(12, { language: language! }));
    expect(problems[0]!.message).toMatch(/^Die Schnitte treffen sich: Bis \d+(,\d+)? mm von der Kante/);
    const where = [
      [3, 8.5],
      [10, 12],
    ] as const;
    const apart = { ...problems[0]!, sentence: 'no-tongue', figures: { where }, advice: [] };
    expect(translate(apart, { units: 'mm' }, language!).message).toBe(
      'Die Schnitte treffen sich: Von 3 mm bis 8,5 mm und 10 mm bis 12 mm von der Kante aus bleibt kein Holz.',
    );
  });

  it('falls back to English for a sentence it lacks, with the decimal sign of all the others', () => {
    const { problems } = evaluate(job(5.4, { language: language! }));
    expect(problems[0]!.message).toContain('The tongue is loose: it has 0,8 mm to spare');
  });

  it('says verdicts and shares', () => {
    const report = evaluate(job(4.8));
    const voice = { units: 'mm', language: language! } as const;
    expect(verdictSentence(report, voice)).toBe(
      'Die Feder gleitet mit 0,2 mm Spiel in die Nut und geht ihre vollen 9 mm hinein.',
    );
    expect(verdictWord('tight', voice)).toBe('stramm');
    const shares = { 'will-not-enter': 0, 'stops-short': 0.00001, tight: 0.125, sliding: 0.87499, loose: 0 };
    const simulation = { count: 100_000, distribution: 'normal', seed: 1, shares } as never;
    expect(shareSentence(simulation, voice).replaceAll('\u00a0', ' ')).toBe(
      'Von 100 000 zufällig gefertigten Verbindungen klemmen unter 0,01 %, sitzen 12,5 % stramm, gleiten 87,5 %, klappern 0 % (jedes ± drei Abweichungen einer Normalverteilung; Startwert 1).',
    );
  });

  it('has tables with semicolons, since the comma is taken', () => {
    const table = {
      headings: ['s (mm)', 't (mm)'],
      rows: [
        [0, 1.25],
        [-0.5, null],
      ],
    };
    expect(writeCsv(table, language!.decimal)).toBe('s (mm);t (mm)\r\n0;1,25\r\n-0,5;\r\n');
    expect(writeCsv(table)).toBe('s (mm),t (mm)\r\n0,1.25\r\n-0.5,\r\n');
  });
});

it('a quote’s words name the figures that their sentence has, and no others', () => {
  const faultOf = (text: string) => (readQuoteWords(text) as { fault?: string }).fault;
  expect(faultOf('item.doors: "{price} Türen"\n')).toContain(
    'names {price}, which this sentence does not have. It has {count}.',
  );
  expect(faultOf('price: "{count}"\n')).toContain('It has none.');
  expect(faultOf('item.doors: "{count} Türen"\n')).toBeUndefined();
});

describe('terms on both sides of the Atlantic', () => {
  it('follow the unit, or what the job says', () => {
    expect(termsOf({ units: 'mm' })).toBe('british');
    expect(termsOf({ units: 'in' })).toBe('american');
    expect(termsOf({ units: 'in', terms: 'british' })).toBe('british');
    expect([sayTerm('head', 'british'), sayTerm('head', 'american')]).toEqual(['cutter block', 'cutterhead']);
    const hidden = (change: Partial<GivenJob>) => {
      const short = { name: 'raise', side: 'front', profile: { shape: 'rebate', reach: 9, depth: 9 } } as const;
      const { problems, terms } = evaluate(job(4.8, { cuts: [short, job(4.8).cuts[1]!], ...change }));
      return [terms, problems[0]!.message.slice(0, 32)];
    };
    expect(hidden({})).toEqual(['british', 'The fielding ends inside the gro']);
    expect(hidden({ units: 'in' })).toEqual(['american', 'The raise ends inside the groove']);
    expect(hidden({ terms: 'american' })).toEqual(['american', 'The raise ends inside the groove']);
  });
});

describe('names from files', () => {
  it('are written as they are, whatever stands in them', () => {
    const odd = '{by:length} [raise] $& <b>';
    const cuts = job(4.63).cuts.map((cut, k) => (k === 1 ? { ...cut, name: odd } : cut)) as Job['cuts'];
    expect(evaluate(job(4.63, { cuts })).problems[0]!.message).toContain(`Take the ${odd} 0.17 mm deeper.`);
  });
});

it('every sentence has figures of known kinds and terms that are known', () => {
  const kinds = [
    'length',
    'coarse',
    'degrees',
    'percent',
    'area',
    'count',
    'grouped',
    'share',
    'number',
    'spans',
    'said',
    'list',
    'path',
  ];
  const strange = Object.entries(ENGLISH).flatMap(([key, sentence]) =>
    [...sentence.matchAll(/\{\w+:(\w+)\}/g)]
      .filter(([, kind]) => !kinds.includes(kind!))
      .map(([all]) => `${key} ${all}`),
  );
  expect(strange).toEqual([]);
  for (const sentence of Object.values(ENGLISH))
    for (const [, term] of sentence.matchAll(/\[(\w+)\]/g)) expect(sayTerm(term as never, 'british')).toBeTruthy();
});

it('says what to do in words, with the key of the file at most beside them', () => {
  const keyed = Object.entries(ENGLISH).filter(
    ([code, sentence]) =>
      !/^(?:fault|means|misread|text)\b/.test(code) &&
      /\b(?:frame|panel|cuts|fit)\.[a-z]+/.test(sentence.replace(/\([^()]*\)/g, '')),
  );
  expect(keyed.map(([code]) => code)).toEqual([]);
});

it('a file of plain lines says what it says as YAML, keys that stand twice, elsewhere or in no language among them', () => {
  const sentences = 'sentences:\n  word.tight: "stramm"\n';
  // The end of the document is no plain line.
  for (const text of [
    `decimal: ","\n${sentences}`,
    `${sentences}decimal: ","\n`,
    `point: ","\n${sentences}`,
    `decimal: ","\ndecimal: "."\n${sentences}`,
    `decimal: ","\n${sentences}  word.tight: "fest"\n`,
    `decimal: ","\nword.tight: "stramm"\n`,
    `${sentences}  decimal: ","\n`,
    `  decimal: ","\n${sentences}`,
    `decimal: ","\n${sentences}${sentences}`,
  ])
    expect(readLanguageText(text), text).toEqual(readLanguageText(`${text}...\n`));
});
