/** `carcase completion`: the script with which a shell completes what is typed. All but names of cases stands in it. */
import type { Command, Option } from "commander";
import { type Asked, commandsOf, optionsOf, shells, valuesOf, wordsOf } from "./choices.ts";
import { oneOf } from "./parsers.ts";
import type { Run } from "./run.ts";

export function completion(run: Run, program: Command): number {
  const shell = oneOf("completion", run.paths[0] ?? "", shells, "shell");
  run.write(scripts[shell](commandsOf(program)));
  return run.end();
}

const scripts = { bash, zsh, fish } as const;

const namesOf = ({ long, short }: Option): string[] => [long, short].flatMap((name) => name ?? []);
const insideOf = (all: readonly Asked[], { path }: Asked): string[] =>
  all
    .filter((one) => one.path !== "" && one.path.split("/").slice(0, -1).join("/") === path)
    .map(({ command }) => command.name());

/** `  "/lint --format") list="text json" ;;` */
const arm = (patterns: readonly string[], ...does: readonly string[]): string =>
  `    ${patterns.map((one) => `"${one}"`).join("|")}) ${does.filter((one) => one !== "").join(" ")} ;;`;

/**
 * What bash and zsh have in common: `at` becomes the command that was typed, and `list` what may stand here, or `kind`
 * files, folders, cases or nothing. Words that were typed are compared, and never evaluated.
 */
function table(all: readonly Asked[]): string {
  const values = all.flatMap((asked) =>
    optionsOf(asked.command)
      .filter(({ required }) => required)
      .map((option) => {
        const found = valuesOf(asked, option);
        const line = typeof found === "object" ? `list="${found.join(" ")}"` : `kind=${found ?? "none"}`;
        return arm(
          namesOf(option).map((name) => `/${asked.path} ${name}`),
          line,
        );
      }),
  );
  const words = all.map((asked) => {
    const inside = insideOf(all, asked);
    const found = inside.length > 0 ? inside : wordsOf(asked, asked.command.registeredArguments);
    return arm(
      [`/${asked.path}`],
      `options="${optionsOf(asked.command).flatMap(namesOf).join(" ")}"`,
      typeof found === "object" ? `list="${found.join(" ")}"` : "",
      `kind=${found === "files" || asked.path === "explain" ? "cases" : "none"}`,
    );
  });
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
const commandPatterns = (all: readonly Asked[]): string =>
  all
    .filter(({ path }) => path !== "")
    .map(({ path }) => `"/${path}"`)
    .join("|");

function bash(all: readonly Asked[]): string {
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

function zsh(all: readonly Asked[]): string {
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
const quoted = (text: string): string => `'${text.replaceAll(/[\\']/g, "\\$&")}'`;

function fish(all: readonly Asked[]): string {
  const lines = all.flatMap((asked) => {
    const start = `complete -c carcase -n '__carcase_at /${asked.path}'`;
    const inside = insideOf(all, asked);
    const words = wordsOf(asked, asked.command.registeredArguments);
    const after =
      inside.length > 0
        ? all
            .filter(({ path, command }) => path !== "" && command.parent === asked.command)
            .map(({ command }) => `${start} -f -a ${command.name()} -d ${quoted(command.summary())}`)
        : words === undefined
          ? [`${start} -f`]
          : [
              words === "files"
                ? `${start} -a '(__carcase_cases)'`
                : `${start} ${asked.path === "explain" ? "" : "-f "}-a ${quoted(words.join(" "))}`,
            ];
    return [
      ...optionsOf(asked.command).map((option) => {
        const { long = "", short, description } = option;
        const found = valuesOf(asked, option);
        const names = [`-l ${long.slice(2)}`, ...(short === undefined ? [] : [`-s ${short.slice(1)}`])].join(
          " ",
        );
        const value = !option.required
          ? ""
          : typeof found === "object"
            ? ` -x -a '(__carcase_list ${found.join(" ")})'`
            : found === "files"
              ? " -r -F"
              : found === "folders"
                ? " -x -a '(__fish_complete_directories)'"
                : " -x";
        return `${start} ${names}${value} -d ${quoted(description)}`;
      }),
      ...after,
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
