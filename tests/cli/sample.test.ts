import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { evaluateJoint, readJob, readShop, sampleBoard } from '@fielded/core';
import { drawBoard, sampleLabel } from '@fielded/render';
import { describe, expect, it } from 'vitest';
import { layoutFaults } from '../render/layout-faults.ts';
import { makeFolder, run } from './command.ts';

const JOB = 'examples/shop/job.yaml';

describe('fielded sample', () => {
  it('writes the section at full size with every cut, its knife and settings, wood and date', async () => {
    const { status, out } = await run(['sample', JOB, '--date', '3 May', '--wood', 'oak from the loft']);
    expect(status).toBe(0);
    const words = out.replaceAll('\u00a0', ' ');
    for (const said of [
      'knife ogee-38',
      'knife cove-14',
      'depth 9 mm',
      'reach 38 mm',
      '3 May',
      'oak from the loft',
      'tongue measured',
    ])
      expect(words).toContain(said);
    const { job } = readJob(readFileSync(JOB, 'utf8'), {
      loadShop: () => readFileSync('examples/shop/shop.yaml', 'utf8'),
    });
    const label = sampleLabel({ report: evaluateJoint(job!), knives: {} });
    expect(layoutFaults(label)).toEqual([]);
    expect(label.scale).toBe(1);
  });

  it('is a PDF of one page', async () => {
    const path = join(makeFolder(), 'label.pdf');
    expect((await run(['sample', JOB, '-o', path])).status).toBe(0);
    expect(
      readFileSync(path)
        .toString('latin1')
        .match(/\/Type \/Page\b(?!s)/g),
    ).toHaveLength(1);
  });
});

describe('the sample board', () => {
  it('shows what is kept, and where', () => {
    const { shop, faults } = readShop(`fielded: 1
knives: { bevel: { shape: bevel, reach: 38, depth: 9, kept: "rack 3, door side" }, cove: { shape: cove, reach: 14, depth: 4 } }`);
    expect(faults).toEqual([]);
    const samples = sampleBoard(shop!);
    expect(samples.map(({ kept }) => kept)).toEqual(['rack 3, door side', null]);
    expect(drawBoard({ samples, units: 'mm', title: 'Knives' }).replaceAll('\u00a0', ' ')).toContain(
      'sample: rack 3, door side',
    );
  });

  it('leaves out a knife measured off the steel whose head the shop does not describe, or that it does not fit, and no other', () => {
    const knife = (name: string, more: string) => `  ${name}: { shape: bevel, reach: 38, depth: 9, ${more} }`;
    const heads = `heads: { small: { cuttingDiameter: 120, bodyDiameter: 40, height: 60, rake: 18, maxSpeed: 8000 } }`;
    const { shop, faults } = readShop(
      [
        'fielded: 1',
        heads,
        'knives:',
        knife('off steel', 'measured: knife, head: small'),
        knife('no head', 'measured: knife'),
      ]
        .concat(
          knife('far head', 'measured: knife, head: far'),
          knife('of wood', 'head: far'),
          knife('bare', 'measured: wood'),
        )
        .join('\n'),
    );
    expect(faults).toEqual([]);
    const samples = sampleBoard(shop!);
    expect(samples.map(({ name }) => name)).toEqual(['off steel', 'of wood', 'bare']);
    // A section is less deep than the steel stands, whose rake leans it back; one of the wood is as it was drawn.
    const [steel, wood, bare] = samples;
    expect(steel!.reach).toBeLessThan(38);
    expect([wood!.reach, wood!.depth, bare!.reach, bare!.depth]).toEqual([38, 9, 38, 9]);
  });
});
