/** What to beware of, and how to make the report again. */
import { heading, list, table, text } from "../../page/blocks.ts";
import type { Part } from "../blocks.ts";

export const cautions: Part = ({ scales, shares }, { say }) => {
  const fromMemory = [...scales, ...shares].some((one) => one.from_memory);
  return list(null, [
    say("caution_small"),
    ...(fromMemory ? [say("caution_memory")] : []),
    say("caution_people"),
    say("caution_notifiable"),
  ]);
};

export const method: Part = ({ made_by: version, files, scales, shares }, { say, name }) => [
  text(say("made_with", { version, files: files.length })),
  ...list(say("sources"), [
    ...new Set([
      ...scales.map(
        ({ scale, title, source, from_memory }) =>
          `${name("scales", scale, title)}: ${source}${from_memory ? "*" : ""}`,
      ),
      ...shares.flatMap(({ indicator, title, source }) =>
        source === null ? [] : [`${name("indicators", indicator, title)}: ${source}`],
      ),
    ]),
  ]),
  heading(say("files"), { level: 3 }),
  ...table(
    [{ head: say("file") }, { head: say("digest") }],
    files.map(({ file, sha256 }) => [file, sha256]),
  ),
];
