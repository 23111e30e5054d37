import type { CommandWords } from './words.ts';

/** A script for bash; names with a space in them are completed too. */
export function bashScript(commands: readonly CommandWords[]): string {
  return `# Completion of fielded in bash. Add to ~/.bashrc:  eval "$(fielded completion bash)"
_fielded_words() {
  COMPREPLY=($(compgen -W "$1" -- "$2"))
}

# Folders, and the files with one of the endings after the first word; every file where there are none.
_fielded_files() {
  local current=$1 file ending
  shift
  compopt -o filenames 2>/dev/null
  while IFS= read -r file; do
    if [[ -d $file || $# -eq 0 ]]; then
      COMPREPLY+=("$file")
      continue
    fi
    for ending in "$@"; do
      [[ $file == *"$ending" ]] && COMPREPLY+=("$file")
    done
  done < <(compgen -f -- "$current")
}

_fielded() {
  local current=\${COMP_WORDS[COMP_CWORD]} previous=\${COMP_WORDS[COMP_CWORD - 1]}
  COMPREPLY=()
  if ((COMP_CWORD == 1)); then
    _fielded_words '${[...commands.map(({ name }) => name), '--help', '--version'].join(' ')}' "$current"
    return
  fi
  case \${COMP_WORDS[1]} in
${commands.map(commandCase).join('\n')}
  esac
}

complete -F _fielded fielded
`;
}

function commandCase({ name, options, choices, endings }: CommandWords): string {
  const values = options.filter(({ value }) => value !== undefined);
  const cases = values.map(({ name: option, short, choices: words, endings: files }) => {
    const names = short === undefined ? `--${option}` : `-${short} | --${option}`;
    return `        ${names}) ${words.length > 0 ? offerWords(words) : files === null ? '' : offerFiles(files)}${words.length > 0 || files !== null ? '; ' : ''}return ;;`;
  });
  const own = choices.length > 0 ? offerWords(choices) : endings.length > 0 ? offerFiles(endings) : ':';
  return `    ${name})
${cases.length === 0 ? '' : `      case $previous in\n${cases.join('\n')}\n      esac\n`}      if [[ $current == -* ]]; then
        ${offerWords([...options.map((option) => `--${option.name}`), '--help'])}
      else
        ${own}
      fi
      ;;`;
}

const offerWords = (words: readonly string[]) => `_fielded_words '${words.join(' ')}' "$current"`;
const offerFiles = (endings: readonly string[]) => ['_fielded_files "$current"', ...endings].join(' ');
