/** The signs, patterns and counts in docs/alarms.md are made from the knowledge and measured: UPDATE_DOCS=1 writes them. */
import { readFileSync, writeFileSync } from "node:fs";
import { expect, it } from "vitest";
import { type AlarmPattern, alarmPatterns, alarmSigns, alarmSignsSource } from "../../src/knowledge/index.ts";
import { raised, rounds } from "./outbreaks-read.ts";
import { beforeLooking } from "./rounds.ts";

const page = new URL("../../docs/alarms.md", import.meta.url);

const between = (name: string, text: string, made: string): string =>
  text.replace(
    new RegExp(`(<!-- ${name} -->\\n)[\\s\\S]*(<!-- /${name} -->)`),
    (_, open: string, close: string) => [open, made, `\n${close}`].join("\n"),
  );

function signs(): string {
  const rows = [...alarmSigns].map(
    ([name, { look, asks }]) => `| \`${name}\` | ${look.replace("_", " the ")} | ${asks} |`,
  );
  return [
    ["| sign | looked for | what |", "| --- | --- | --- |", ...rows].join("\n"),
    `Source: ${alarmSignsSource.cite} (${alarmSignsSource.confidence}).`,
  ].join("\n\n");
}

function section(pattern: AlarmPattern): string {
  const { id, title, level, fires, scope, diseases, exclude, look_alikes: alikes, source } = pattern;
  const where = fires === "always" ? "everywhere" : "where the settings list it under `notifiable`";
  const of = scope === "visit" ? "over the pigs of a visit" : "in one pig";
  return [
    `### ${id}`,
    `${title}. **${level}**, ${where}, ${of}; may be ${diseases.join(", ")}.`,
    `${exclude}.`,
    alikes
      .map(
        ({ name, apart, separated_by }) =>
          `- *${name}*: ${apart}.${separated_by === "laboratory" ? " Only the laboratory separates them." : ""}`,
      )
      .join("\n"),
    `Source: ${source.cite} (${source.confidence}).${source.note === undefined ? "" : ` ${source.note}.`}`,
  ].join("\n\n");
}

const before = (round: number, which: "must" | "need_not"): string =>
  beforeLooking.get(round)?.before_looking?.[which].join(" of ") ?? "not yet";

function counts(): string {
  const row = (cells: readonly string[]): string => `| ${cells.join(" | ")} |`;
  const line = (title: string, must: boolean, by: "criteria" | "typist"): string =>
    row([title, ...rounds.map((round) => raised(round, must, by))]);
  return [
    row(["alarms raised", ...rounds.map((round) => `round ${round}`)]),
    row(["---", ...rounds.map(() => "---")]),
    line("must alarm by the criteria", true, "criteria"),
    line("need not by the criteria", false, "criteria"),
    line("must alarm as first expected", true, "typist"),
    line("need not as first expected", false, "typist"),
    row(["must alarm, before anybody looked", ...rounds.map((round) => before(round, "must"))]),
    row(["need not, before anybody looked", ...rounds.map((round) => before(round, "need_not"))]),
  ].join("\n");
}

function rows(): string {
  const text = readFileSync(new URL("../fixtures/outbreaks/CRITERIA.md", import.meta.url), "utf8");
  const lines = text.split("\n").flatMap((line) => {
    const [, row = "", picture = "", met = ""] = line.split("|").map((cell) => cell.trim());
    if (!/^[A-Z]\d$/.test(row)) return [];
    const own = alarmPatterns.filter(({ criteria }) => criteria.includes(row)).map(({ id }) => `\`${id}\``);
    return [`| ${row} | ${picture} | ${met} | ${own.join(", ")} |`];
  });
  return ["| row | picture | met by | patterns |", "| --- | --- | --- | --- |", ...lines].join("\n");
}

it("docs/alarms.md shows every sign and every pattern as it is, and what was measured", () => {
  const text = readFileSync(page, "utf8");
  const made = [
    ["patterns", alarmPatterns.map(section).join("\n\n")] as const,
    ["signs", signs()] as const,
    ["rows", rows()] as const,
    ["outbreaks", counts()] as const,
  ].reduce((so, [name, part]) => between(name, so, part), text);
  for (const name of ["patterns", "signs", "rows", "outbreaks"]) expect(text).toContain(`<!-- ${name} -->`);
  if (process.env.UPDATE_DOCS === "1") writeFileSync(page, made);
  else expect(text).toBe(made);
});
