// The scripts with which shells complete what is typed, from all that can be typed. All but names of cases stands in them.
import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";

/** Writes them into `completion` of a folder. */
export function writeCompletion(folder, { makeProgram, ...typed }) {
  const all = typed
    .commandsOf(makeProgram())
    .map((asked) => ({ path: asked.path, ...partsOf(asked, typed) }));
  mkdirSync(join(folder, "completion"));
  for (const [shell, script] of Object.entries({ bash, zsh, fish }))
    writeFileSync(join(folder, `completion/carcase.${shell}`), script(all));
}

/** A command as plain data: its options with what may stand behind each, and the words behind itself. */
function partsOf(asked, { optionsOf, valuesOf, wordsOf, insideOf }) {
  const { command } = asked;
  const inside = insideOf(command).map((one) => ({ name: one.name(), summary: one.summary() }));
  return {
    inside,
    words: inside.length > 0 ? inside.map(({ name }) => name) : wordsOf(asked, command.registeredArguments),
    options: optionsOf(command).map((option) => ({
      names: [option.long, option.short].filter((name) => name !== undefined),
      required: option.required,
      description: option.description,
      values: valuesOf(asked, option),
    })),
  };
}

/** `  "/lint --format") list="text json" ;;` */
const arm = (patterns, ...does) =>
  `    ${patterns.map((one) => `"${one}"`).join("|")}) ${does.filter((one) => one !== "").join(" ")} ;;`;

/**
 * What bash and zsh have in common: `at` becomes the command that was typed, and `list` what may stand here, or `kind`
 * files, folders, cases or nothing. Words that were typed are compared, and never evaluated.
 */
function table(all) {
  const values = all.flatMap(({ path, options }) =>
    options
      .filter(({ required }) => required)
      .map(({ names, values }) =>
        arm(
          names.map((name) => `/${path} ${name}`),
          Array.isArray(values) ? `list="${values.join(" ")}"` : `kind=${values ?? "none"}`,
        ),
      ),
  );
  const words = all.map(({ path, options, words }) =>
    arm(
      [`/${path}`],
      `options="${options.flatMap(({ names }) => names).join(" ")}"`,
      Array.isArray(words) ? `list="${words.join(" ")}"` : "",
      `kind=${words === "files" || path === "explain" ? "cases" : "none"}`,
    ),
  );
  return `  case "$at $before" in
${values.join("\n")}
    *) case "$at" in
${words.join("\n")}
    esac
    case "$now" in -*) list=$options kind="" ;; esac
    ;;
  esac`;
}

/** The words that lead to a command, as patterns of `case`. */
const commandPatterns = (all) =>
  all
    .filter(({ path }) => path !== "")
    .map(({ path }) => `"/${path}"`)
    .join("|");

function bash(all) {
  return `# Completion of carcase for bash; written by: carcase completion bash
_carcase() {
  local now=\${COMP_WORDS[COMP_CWORD]} before=\${COMP_WORDS[COMP_CWORD-1]} at=/ list="" kind="" options="" head="" i one
  # bash parts --format=json at the sign.
  if [ "$now" = "=" ]; then now=""; elif [ "$before" = "=" ]; then before=\${COMP_WORDS[COMP_CWORD-2]}; fi
  for ((i = 1; i < COMP_CWORD; i++)); do
    one="\${at%/}/\${COMP_WORDS[i]}"
    case "$one" in ${commandPatterns(all)}) at=$one ;; esac
  done
${table(all)}
  COMPREPLY=()
  # A name of a case is offered where no file begins so.
  if [ "$kind" = cases ] && [ -n "$now" ] && [ -z "$(compgen -f -- "$now")" ]; then
    while IFS= read -r one; do COMPREPLY+=("$one"); done < <(command carcase names-of-cases -- "$now" 2>/dev/null)
  fi
  if [ -n "$list" ]; then
    case "$now" in *,*) head="\${now%,*}," ;; esac
    while IFS= read -r one; do COMPREPLY+=("$one"); done < <(compgen -P "$head" -W "$list" -- "\${now##*,}")
    case "\${COMPREPLY[0]-}" in *=) compopt -o nospace 2>/dev/null ;; esac
  elif [ "$kind" = folders ]; then compopt -o dirnames +o default 2>/dev/null
  elif [ "$kind" = none ]; then compopt +o default 2>/dev/null
  fi
}
complete -o default -F _carcase carcase
`;
}

function zsh(all) {
  return `#compdef carcase
# Completion of carcase for zsh; written by: carcase completion zsh
_carcase() {
  local now=$PREFIX before=$words[CURRENT-1] at=/ list="" kind="" options="" one
  local -a found
  if [[ $now == --*=* ]]; then before=\${now%%=*}; compset -P '*='; fi
  for one in $words[2,CURRENT-1]; do
    one="\${at%/}/$one"
    case "$one" in ${commandPatterns(all)}) at=$one ;; esac
  done
${table(all)}
  if [[ $kind == folders ]]; then _files -/
  elif [[ $kind == files ]]; then _files
  elif [[ $kind == cases ]] && ! _files && [[ -n $PREFIX ]]; then
    found=(\${(f)"$(command carcase names-of-cases -- "$PREFIX" 2>/dev/null)"})
    compadd -a found
  fi
  if [[ -n $list ]]; then
    compset -P '*,'
    if [[ $list == *= ]]; then compadd -S "" -- \${=list}; else compadd -- \${=list}; fi
  fi
}
if [[ $funcstack[1] == _carcase ]]; then _carcase "$@"; else compdef _carcase carcase; fi
`;
}

/** A text between single quotes, as fish reads it. */
const quoted = (text) => `'${text.replaceAll(/[\\']/g, "\\$&")}'`;

function behind({ required, values }) {
  if (!required) return "";
  if (Array.isArray(values)) return ` -x -a '(__carcase_list ${values.join(" ")})'`;
  if (values === "folders") return " -x -a '(__fish_complete_directories)'";
  return values === "files" ? " -r -F" : " -x";
}

function offered(path, words) {
  if (words === undefined) return "-f";
  if (words === "files") return "-a '(__carcase_cases)'";
  return `${path === "explain" ? "" : "-f "}-a ${quoted(words.join(" "))}`;
}

function fish(all) {
  const lines = all.flatMap(({ path, options, words, inside }) => {
    const start = `complete -c carcase -n '__carcase_at /${path}'`;
    return [
      ...options.map(
        ({ names, description, ...option }) =>
          `${start} ${names.map((name) => name.replace(/^--/, "-l ").replace(/^-(?=\w$)/, "-s ")).join(" ")}${behind(option)} -d ${quoted(description)}`,
      ),
      ...(inside.length > 0
        ? inside.map(({ name, summary }) => `${start} -f -a ${name} -d ${quoted(summary)}`)
        : [`${start} ${offered(path, words)}`]),
    ];
  });
  return `# Completion of carcase for fish; written by: carcase completion fish
function __carcase_at --argument-names wanted
  set -l at /
  set -l typed (commandline -opc)
  set -e typed[1]
  for one in $typed
    switch (string trim -r -c / -- $at)/"$one"
      case ${all
        .filter(({ path }) => path !== "")
        .map(({ path }) => `/${path}`)
        .join(" ")}
        set at (string trim -r -c / -- $at)/"$one"
    end
  end
  test "$at" = "$wanted"
end
function __carcase_list
  set -l head (string replace -r '^--[^=]*=' '' -- (commandline -ct) | string match -r '^.*,')
  printf '%s\\n' "$head"$argv
end
# A name of a case is offered where no file begins so.
function __carcase_cases
  set -l typed (commandline -ct)
  test -n "$typed"; or return
  set -l there "$typed"*
  test (count $there) -eq 0; and command carcase names-of-cases -- "$typed" 2>/dev/null
end
${lines.join("\n")}
`;
}
