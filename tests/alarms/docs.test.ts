/** The table of patterns in docs/alarms.md is made from the patterns: UPDATE_DOCS=1 writes it. */
import { readFileSync, writeFileSync } from "node:fs";
import { expect, it } from "vitest";
import { type AlarmPattern, alarmPatterns } from "../../src/knowledge/index.ts";

const page = new URL("../../docs/alarms.md", import.meta.url);
const marks = /(<!-- patterns -->\n)[\s\S]*(<!-- \/patterns -->)/;

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

it("docs/alarms.md shows every pattern as it is", () => {
  const text = readFileSync(page, "utf8");
  const made = text.replace(marks, (_, open: string, close: string) =>
    [open, alarmPatterns.map(section).join("\n\n"), `\n${close}`].join("\n"),
  );
  if (process.env.UPDATE_DOCS === "1") writeFileSync(page, made);
  else expect(text).toBe(made);
});
