import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { COMMANDS } from '../../packages/cli/src/commands.ts';
import { usageText } from '../../packages/cli/src/help/overview.ts';
import { run } from './command.ts';

describe('help', () => {
  it('is the same asked for in any way', async () => {
    const general = await run(['--help']);
    expect(general).toMatchObject({ status: 0, err: '' });
    expect(general.out).toMatch(/^fielded: the section, the fit and the drawing of raised-and-fielded panels\n/);
    expect((await run(['help'])).out).toBe(general.out);
    expect((await run(['-h'])).out).toBe(general.out);
    const check = (await run(['help', 'check'])).out;
    expect(check).toMatch(/^fielded check JOB… \[--json\] \[--shop FILE\] /);
    expect((await run(['check', '--help'])).out).toBe(check);
    expect((await run(['check', 'x.yaml', '-h'])).out).toBe(check);
    expect((await run(['draw', '--help'])).out).toMatch(/^fielded draw JOB \[--view VIEW\]/);
  });

  it('keeps to 90 columns, and describes every option of every command', async () => {
    for (const about of ['', ...Object.keys(COMMANDS)]) {
      const { out } = await run(['help', ...(about === '' ? [] : [about])]);
      for (const line of out.split('\n')) expect(line.length, line).toBeLessThanOrEqual(90);
      if (about === '') continue;
      const { options } = await COMMANDS[about]!();
      for (const [name, { value, says, choices }] of Object.entries(options)) {
        expect(out, `${about} --${name}`).toContain(`--${name}${value === undefined ? '' : ` ${value}`} `);
        expect(says !== '' || choices !== undefined, `${about} --${name} says what it does`).toBe(true);
      }
    }
  });

  it('stands in the docs as the table of commands has it', async () => {
    const page = readFileSync(new URL('../../docs/command-line.md', import.meta.url), 'utf8');
    // After a change: npm run usage.
    expect(page).toContain(`\`\`\`\n${await usageText(COMMANDS)}\`\`\``);
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
