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
