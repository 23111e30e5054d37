// The scripts are judged by the shells themselves: each is asked what it would offer.
import { execFileSync } from 'node:child_process';
import { mkdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { COMMANDS } from '../../packages/cli/src/commands.ts';
import { runProgram } from '../support/programs.ts';
import { makeFolder, put, run } from './command.ts';

const folder = makeFolder();
for (const name of ['boot room.yaml', 'b.json', 'b.txt']) put(folder, name, '');
mkdirSync(`${folder}/barn`);
const scripts = new Map<string, string>();
for (const shell of ['bash', 'zsh', 'fish'])
  scripts.set(shell, put(folder, `.${shell}`, (await run(['completion', shell])).out));

/** What bash offers for the last of these words. */
function askBash(...words: string[]): string[] {
  const list = ['fielded', ...words].map((word) => `'${word}'`).join(' ');
  const ask = `source "${scripts.get('bash')}"; COMP_WORDS=(${list}); COMP_CWORD=${words.length}; _fielded; printf '%s\n' "\${COMPREPLY[@]}"`;
  return listed(execFileSync('bash', ['-c', ask], { cwd: folder, encoding: 'utf8' }));
}

/** What fish offers for a line. */
function askFish(line: string): string[] {
  const ask = `source ${scripts.get('fish')}; complete -C '${line}'`;
  const out = runProgram('fish', ['-c', ask], folder).toString();
  return listed(out.replaceAll(/\t.*/g, ''));
}

function listed(out: string): string[] {
  return out
    .split('\n')
    .filter((line) => line !== '')
    .sort();
}

const VIEWS = ['corner', 'cuts', 'detail', 'door', 'joint', 'panel', 'season', 'section', 'sheet', 'spread'];

describe('completion in bash', () => {
  it('offers commands, options, what these may be, and files', () => {
    expect(askBash('')).toEqual([...Object.keys(COMMANDS), '--help', '--version'].sort());
    expect(askBash('bo')).toEqual(['board']);
    expect(askBash('solve', '--')).toEqual(['--by', '--for', '--help', '--json', '--language', '--shop', '--write']);
    expect(askBash('draw', 'x.yaml', '--view', '')).toEqual(VIEWS);
    expect(askBash('draw', '--view', 'se')).toEqual(['season', 'section']);
    expect(askBash('check', 'b')).toEqual(['b.json', 'barn', 'boot room.yaml']);
    expect(askBash('check', '--seed', '')).toEqual([]);
    expect(askBash('help', 'kn')).toEqual(['knife']);
    expect(askBash('completion', '')).toEqual(['bash', 'fish', 'zsh']);
  });
});

describe('completion in fish', () => {
  it('offers commands, options, what these may be, and files', () => {
    expect(askFish('fielded bo')).toEqual(['board']);
    expect(askFish('fielded solve --').filter((word) => /^--(by|for|write)$/.test(word))).toEqual([
      '--by',
      '--for',
      '--write',
    ]);
    expect(askFish('fielded draw x.yaml --view ')).toEqual(VIEWS);
    expect(askFish('fielded check b')).toContain('b.json');
    expect(askFish('fielded completion ')).toEqual(['bash', 'fish', 'zsh']);
  });
});

describe('completion in zsh', () => {
  /** Types a line into a real zsh with a terminal, presses Tab, and gives what then stands on it. */
  function askZsh(line: string): string {
    const setUp = `autoload -Uz compinit; compinit -u -d ${folder}/.zcompdump; source ${scripts.get('zsh')}; bindkey '^X' accept-line; LISTMAX=0; zstyle ':completion:*' list-prompt ''`;
    const typing = put(
      folder,
      '.type.zsh',
      `zmodload zsh/zpty
zpty shell zsh -f -i
zpty -w shell "PS1='>'; ${setUp.replaceAll('"', '\\"')}; print READY"
zpty -r shell out '*READY*READY*'
zpty -w -n shell $'${line}\\t'
sleep 1
zpty -w -n shell $'\\x05\\x15'
zpty -w shell "print DONE"
zpty -r shell out '*DONE*'
print -r -- "$out"
`,
    );
    return runProgram('zsh', ['-f', typing], folder).toString();
  }
  it('reads, and completes a command, a view and a file', () => {
    runProgram('zsh', ['-n', scripts.get('zsh')!], folder);
    expect(askZsh('fielded bo')).toContain('fielded board');
    expect(askZsh('fielded draw --view jo')).toContain('--view joint');
    expect(askZsh('fielded check boot')).toContain('boot\\ room.yaml');
  });
});

it('knows no other shell', async () => {
  expect(await run(['completion', 'fishy'])).toEqual({
    status: 2,
    out: '',
    err: 'fielded: fishy is no shell known here. Did you mean fish? There are bash, zsh and fish.\n',
  });
});
