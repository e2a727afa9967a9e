/** What a table makes, for people: how it was read, which files, and the first of them as an example. */
import type { Tally } from "../../tally/index.ts";
import { count } from "../../words/listing.ts";
import { type Block, gap, heading, right, table, text, verbatim } from "../page/blocks.ts";
import type { Style } from "../page/style.ts";
import { textOf } from "../page/text.ts";

export interface ImportView {
  readonly folder: string;
  readonly written: boolean;
}

export const importText = (tally: Tally, view: ImportView, style: Style, width: number): string =>
  textOf(blocks(tally, view), style, width);

function blocks({ cases, visit, unnamed, said }: Tally, { folder, written }: ImportView): Block[] {
  const [first] = cases;
  const place = folder === "." ? "this folder" : folder;
  const files = `${count(cases.length, "case")}${visit === undefined ? "" : " and visit.yaml"}`;
  return [
    heading(`A table of pigs: ${count(cases.length, "row")}`),
    text(`Read with ${said.join("; ")}.`),
    text(
      written
        ? `Wrote ${files} into ${place}. Next: carcase lint ${folder}`
        : `${files} would be written into ${place}; nothing is written without --write.`,
    ),
    ...(unnamed === undefined
      ? []
      : [text(`${unnamed} lists its cases. Add there: ${cases.map(({ id }) => id).join(", ")}`)]),
    ...table(
      [right("line"), { head: "file" }, { head: "case" }, { head: "tag" }],
      cases.map(({ line, file, id, tag }) => [
        String(line),
        file.startsWith(`${folder}/`) ? file.slice(folder.length + 1) : file,
        id,
        tag,
      ]),
    ),
    ...(written ? [] : [...shown(visit), ...shown(first)]),
  ];
}

const shown = (file: { readonly file: string; readonly text: string } | undefined): Block[] =>
  file === undefined
    ? []
    : [
        gap,
        text(file.file, { indent: 0 }),
        ...file.text
          .trimEnd()
          .split("\n")
          .map((line) => verbatim(`  ${line}`)),
      ];
