import type { CommandWords } from './words.ts';

/** A script for zsh, for a file _fielded on the fpath or for eval. */
export function zshScript(commands: readonly CommandWords[]): string {
  return `#compdef fielded
# Completion of fielded in zsh. Add to ~/.zshrc, after compinit:  eval "$(fielded completion zsh)"
_fielded() {
  local curcontext=$curcontext state line
  local -a commands
  _arguments -C '1:command:->command' '*::argument:->rest' '(- *)--help[say what there is]' '(- *)--version[print the version]'
  case $state in
    command)
      commands=(
${commands.map(({ name, summary }) => `        ${quote(`${name}:${summary}`)}`).join('\n')}
      )
      _describe command commands
      ;;
    rest)
      case $words[1] in
${commands.map(commandCase).join('\n')}
      esac
      ;;
  esac
}

if [[ $funcstack[1] == _fielded ]]; then
  _fielded "$@"
else
  compdef _fielded fielded
fi
`;
}

function commandCase({ name, options, choices, endings, many }: CommandWords): string {
  const specs = options.flatMap((option) => {
    const rest = `[${escapeText(option.says)}]${option.value === undefined ? '' : `:${option.value}:${action(option.choices, option.endings)}`}`;
    const names = option.short === undefined ? [`--${option.name}`] : [`--${option.name}`, `-${option.short}`];
    return names.map((word) => `(${names.join(' ')})${word}${rest}`);
  });
  const place = action(choices, endings.length === 0 ? null : endings);
  const own = place === ' ' ? [] : [`${many ? '*' : '1'}:${choices.length > 0 ? 'word' : 'file'}:${place}`];
  const lines = [...specs, '(- *)--help[say more about it]', ...own].map((spec) => `            ${quote(spec)}`);
  return `        ${name})
          _arguments -s \\
${lines.join(' \\\n')}
          ;;`;
}

function action(choices: readonly string[], endings: readonly string[] | null): string {
  if (choices.length > 0) return `(${choices.join(' ')})`;
  if (endings === null) return ' ';
  if (endings.length === 0) return '_files';
  return `_files -g "*(${endings.join('|')})"`;
}

/** Square brackets and colons mean something in a description. */
function escapeText(text: string): string {
  return text.replaceAll(/[[\]:\\]/g, '\\$&');
}

function quote(text: string): string {
  return `'${text.replaceAll("'", "'\\''")}'`;
}
