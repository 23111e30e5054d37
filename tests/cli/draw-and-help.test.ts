import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { evaluate, readJob } from '@fielded/core';
import { draw } from '@fielded/render';
import { describe, expect, it } from 'vitest';
import { broken } from '../core/job-texts.ts';
import { makeFolder, put, run, withoutMark } from './command.ts';

const folder = makeFolder();
const sound = put(folder, 'sound.yaml', broken('depth: 4.6', 'depth: 4.8'));
const report = evaluate(readJob(readFileSync(sound, 'utf8')).job!);

describe('fielded draw', () => {
  it.each(['section', 'joint'] as const)('writes the %s whole, into a folder it makes', async (view) => {
    const target = join(folder, 'made', 'here', `${view}.svg`);
    expect(await run(['draw', sound, '--view', view, '-o', target])).toEqual({ status: 0, out: '', err: '' });
    expect(withoutMark(readFileSync(target, 'utf8'))).toBe(draw(report, { view }));
    expect(readdirSync(join(folder, 'made', 'here')).filter((name) => name.startsWith('.'))).toEqual([]);
  });

  it('writes over an older drawing', async () => {
    const target = join(folder, 'old.svg');
    await run(['draw', sound, '--view', 'joint', '--output', target]);
    await run(['draw', sound, '--view', 'section', '--output', target]);
    expect(withoutMark(readFileSync(target, 'utf8'))).toBe(draw(report, { view: 'section' }));
  });

  it('draws the joint to standard output unless told otherwise', async () => {
    expect((await run(['draw', sound])).out).toBe(draw(report, { view: 'joint' }));
  });

  it('draws a job with an error all the same, and says what is wrong', async () => {
    const wedge = put(folder, 'wedge.yaml', broken('depth: 4.6', 'depth: 2'));
    const { status, out, err } = await run(['draw', wedge]);
    expect(status).toBe(1);
    expect(out).toMatch(/^<svg /);
    expect(err).toContain('✗ error    The tongue will not enter: it needs a groove 2.6 mm wider.');
  });
});

describe('help', () => {
  it('is the same asked for in any way', async () => {
    const general = await run(['--help']);
    expect(general).toMatchObject({ status: 0, err: '' });
    expect(general.out).toMatch(/^fielded: the section, the fit and the drawing of raised-and-fielded panels\n/);
    expect((await run(['help'])).out).toBe(general.out);
    expect((await run(['-h'])).out).toBe(general.out);
    const check = (await run(['help', 'check'])).out;
    expect(check).toMatch(/^fielded check JOB… \[--json\] \[--shop FILE\]\n/);
    expect((await run(['check', '--help'])).out).toBe(check);
    expect((await run(['check', 'x.yaml', '-h'])).out).toBe(check);
    expect((await run(['draw', '--help'])).out).toMatch(/^fielded draw JOB \[--view VIEW\]/);
  });

  it('keeps to 90 columns', async () => {
    for (const about of ['', 'check', 'draw'])
      for (const line of (await run(['help', ...(about === '' ? [] : [about])])).out.split('\n'))
        expect(line.length).toBeLessThanOrEqual(90);
  });

  it('comes on standard error with status 2 where nothing was asked for', async () => {
    const { status, out, err } = await run([]);
    expect({ status, out }).toEqual({ status: 2, out: '' });
    expect(err).toBe((await run(['--help'])).out);
  });

  it('gives the version of the package', async () => {
    const { version } = JSON.parse(readFileSync(new URL('../../packages/cli/package.json', import.meta.url), 'utf8'));
    expect(await run(['--version'])).toEqual({ status: 0, out: `${version}\n`, err: '' });
  });
});
