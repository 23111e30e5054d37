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

/** Stands between the answers of a shell that is asked several things, each in a state of its own. */
const NEXT = '=== next ===';

/** What bash offers for the last of each of these lists of words. */
function askBash(...lines: readonly (readonly string[])[]): string[][] {
  const asks = lines.map((words) => {
    const list = ['fielded', ...words].map((word) => `'${word}'`).join(' ');
    return `(COMP_WORDS=(${list}); COMP_CWORD=${words.length}; _fielded; printf '%s\n' "\${COMPREPLY[@]}")`;
  });
  const ask = [`source "${scripts.get('bash')}"`, asks.join(`; echo '${NEXT}'; `)].join('; ');
  return execFileSync('bash', ['-c', ask], { cwd: folder, encoding: 'utf8' }).split(NEXT).map(listed);
}

/** What fish offers for each of these lines. */
function askFish(...lines: readonly string[]): string[][] {
  const asks = lines.map((line) => `complete -C '${line}'`).join(`; echo '${NEXT}'; `);
  const out = runProgram('fish', ['-c', `source ${scripts.get('fish')}; ${asks}`], folder).toString();
  return out.replaceAll(/\t.*/g, '').split(NEXT).map(listed);
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
    const offered: [words: string[], offers: string[]][] = [
      [[''], [...Object.keys(COMMANDS), '--help', '--version'].sort()],
      [['bo'], ['board']],
      [
        ['solve', '--'],
        ['--by', '--for', '--help', '--json', '--language', '--shop', '--write'],
      ],
      [['draw', 'x.yaml', '--view', ''], VIEWS],
      [
        ['draw', '--view', 'se'],
        ['season', 'section'],
      ],
      [
        ['check', 'b'],
        ['b.json', 'barn', 'boot room.yaml'],
      ],
      [['check', '--seed', ''], []],
      [['help', 'kn'], ['knife']],
      [
        ['completion', ''],
        ['bash', 'fish', 'zsh'],
      ],
    ];
    expect(askBash(...offered.map(([words]) => words))).toEqual(offered.map(([, offers]) => offers));
  });
});

describe('completion in fish', () => {
  it('offers commands, options, what these may be, and files', () => {
    const [commands, options, views, files, shells, more] = askFish(
      'fielded bo',
      'fielded solve --',
      'fielded draw x.yaml --view ',
      'fielded check b',
      'fielded completion ',
    );
    expect(commands).toEqual(['board']);
    expect(options!.filter((word) => /^--(by|for|write)$/.test(word))).toEqual(['--by', '--for', '--write']);
    expect(views).toEqual(VIEWS);
    expect(files).toContain('b.json');
    expect(shells).toEqual(['bash', 'fish', 'zsh']);
    expect(more).toBeUndefined();
  });
});

describe('completion in zsh', () => {
  /** Types each line into a real zsh with a terminal, presses Tab, and gives what then stands on it. */
  function askZsh(...lines: readonly string[]): string[] {
    const setUp = `autoload -Uz compinit; compinit -u -d ${folder}/.zcompdump; source ${scripts.get('zsh')}; bindkey '^X' accept-line; LISTMAX=0; zstyle ':completion:*' list-prompt ''`;
    const typing = put(
      folder,
      '.type.zsh',
      `zmodload zsh/zpty
zpty shell zsh -f -i
zpty -w shell "PS1='>'; ${setUp.replaceAll('"', '\\"')}; print READY"
zpty -r shell out '*READY*READY*'
${lines.map(typed).join(`print '${NEXT}'\n`)}`,
    );
    return runProgram('zsh', ['-f', typing], folder).toString().split(NEXT);
  }
  /** Types a line into that zsh, and empties it for the next once what stands on it has been printed. */
  const typed = (line: string) => `zpty -w -n shell $'${line}\\t'
sleep 1
zpty -w -n shell $'\\x05\\x15'
zpty -w shell "print DONE"
zpty -r shell out '*DONE*DONE*'
print -r -- "$out"
`;
  it('reads, and completes a command, a view and a file', () => {
    runProgram('zsh', ['-n', scripts.get('zsh')!], folder);
    const [command, view, file] = askZsh('fielded bo', 'fielded draw --view jo', 'fielded check boot');
    expect(command).toContain('fielded board');
    expect(view).toContain('--view joint');
    expect(file).toContain('boot\\ room.yaml');
  });
});

it('knows no other shell', async () => {
  expect(await run(['completion', 'fishy'])).toEqual({
    status: 2,
    out: '',
    err: 'fielded: fishy is no shell known here. Did you mean fish? There are bash, zsh and fish.\n',
  });
});
