import type { CommandWords } from './words.ts';

/** A script for fish. */
export function fishScript(commands: readonly CommandWords[]): string {
  return `# Completion of fielded in fish. Write it to ~/.config/fish/completions/fielded.fish
complete -c fielded -f
complete -c fielded -n __fish_use_subcommand -l help -d 'say what there is'
complete -c fielded -n __fish_use_subcommand -l version -d 'print the version'
${commands.flatMap(commandLines).join('\n')}
`;
}

function commandLines({ name, summary, options, choices, endings }: CommandWords): string[] {
  const after = `complete -c fielded -n '__fish_seen_subcommand_from ${name}'`;
  const lines = [`complete -c fielded -n __fish_use_subcommand -a ${name} -d ${quote(summary)}`];
  if (choices.length > 0) lines.push(`${after} -a ${quote(choices.join(' '))}`);
  else if (endings.length > 0) lines.push(`${after} -F`);
  for (const option of options) {
    const short = option.short === undefined ? '' : ` -s ${option.short}`;
    lines.push(`${after} -l ${option.name}${short}${valueText(option)} -d ${quote(option.says)}`);
  }
  return lines;
}

function valueText({ value, choices, endings }: CommandWords['options'][number]): string {
  if (value === undefined) return '';
  if (choices.length > 0) return ` -x -a ${quote(choices.join(' '))}`;
  return endings === null ? ' -x' : ' -r -F';
}

function quote(text: string): string {
  return `'${text.replaceAll('\\', '\\\\').replaceAll("'", "\\'")}'`;
}
