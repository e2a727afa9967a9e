// The page of the manual, from the texts that --help shows.
import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";

/** Writes it into `man` of a folder. */
export function writeManual(folder, { makeProgram, commandsOf, insideOf }, version) {
  const program = makeProgram();
  const commands = commandsOf(program)
    .map(({ command }) => command)
    .filter((one) => insideOf(one).length === 0);
  mkdirSync(join(folder, "man"));
  writeFileSync(join(folder, "man/carcase.1"), manual(program, commands, version));
}

function manual(program, commands, version) {
  const help = program.createHelp();
  return [
    `.TH CARCASE 1 "" "carcase ${version}" "User Commands"`,
    ".ad l",
    ".SH NAME",
    `carcase \\- ${text(help.commandDescription(program).split(":")[0].toLowerCase())}`,
    ".SH SYNOPSIS",
    ...commands.flatMap((one) => [".br", `.B ${text(help.commandUsage(one))}`]).slice(1),
    ".SH DESCRIPTION",
    text(help.commandDescription(program)),
    ...after(program),
    ".SH OPTIONS",
    ...items(help.visibleOptions(program), (one) => [help.optionTerm(one), help.optionDescription(one)]),
    ".SH COMMANDS",
    ...commands.flatMap((one) => [
      `.SS "${text(help.commandUsage(one))}"`,
      text(help.commandDescription(one)),
      ...items(help.visibleArguments(one), (each) => [
        help.argumentTerm(each),
        help.argumentDescription(each),
      ]),
      ...items(help.visibleOptions(one), (each) => [help.optionTerm(each), help.optionDescription(each)]),
      ...after(one),
    ]),
    "",
  ].join("\n");
}

const items = (all, parts) =>
  all.flatMap((one) => {
    const [term, description] = parts(one);
    return [".TP", `.B ${text(term)}`, text(description)];
  });

/** What stands below the options: indented lines as they are, the others as text. */
function after(command) {
  let said = "";
  command.emit("afterHelp", { error: false, command, write: (some) => (said += some) });
  let isKept = false;
  const lines = said.split("\n").flatMap((line) => {
    const isExample = line.startsWith("  ");
    if (isExample === isKept) return line.trim() === "" ? ".PP" : text(line);
    isKept = isExample;
    return [isExample ? ".PP\n.nf" : ".fi\n.PP", ...(line === "" ? [] : [text(line)])];
  });
  return [".PP", ...lines].filter(
    (line, at, all) => line !== ".PP" || ![".PP", undefined].includes(all[at + 1]),
  );
}

/** What roff would read as its own is kept a text; a hyphen is one that can be copied into a shell. */
const text = (line) =>
  line
    .replaceAll("\\", "\\e")
    .replaceAll("-", "\\-")
    .replace(/^(?=[.'])/, "\\&")
    .replaceAll('"', "\\(dq");
