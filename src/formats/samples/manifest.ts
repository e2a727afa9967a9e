/** What was taken, a line a container: to count against before the carcass goes, and to lie in the parcel. */
import { type Container, containerNames, testNames } from "../../record/index.ts";
import { count } from "../../words/listing.ts";
import { type Block, heading, table, text } from "../page/blocks.ts";
import { csv } from "../page/csv.ts";
import { outputJson } from "../page/json.ts";
import { markdownOf } from "../page/markdown.ts";
import type { Style } from "../page/style.ts";
import { textOf } from "../page/text.ts";
import { shortName } from "./names.ts";

export interface Manifest {
  readonly visit: string;
  readonly date: string | undefined;
  readonly containers: readonly Container[];
}

export const manifestText = (all: readonly Manifest[], style: Style, width: number): string =>
  textOf(all.flatMap(blocksOf), style, width);
export const manifestMarkdown = (all: readonly Manifest[]): string => markdownOf(all.flatMap(blocksOf));

function blocksOf({ visit, date, containers }: Manifest): Block[] {
  const pigs = new Set(containers.map(({ pig }) => pig)).size;
  const fixed = containers.filter(({ fixative }) => fixative !== undefined).length;
  return [
    heading(
      `${visit}  ${date ?? ""}  ${count(containers.length, "container")} of ${count(pigs, "pig")}, ${fixed} fixed`,
    ),
    ...(containers.length === 0 ? [text("No sample is written down.")] : []),
    ...table(
      [
        { head: "no" },
        { head: "pig" },
        { head: "what" },
        { head: "container" },
        { head: "tests" },
        { head: "taken" },
      ],
      containers.map((one) => [
        one.id,
        [one.tag ?? shortName(one.pig), ...one.pooledWith.map(shortName)].join(" + "),
        one.what,
        `${one.into === undefined ? "not written" : containerNames([one.into]).replace("swab in ", "")}${one.bag === undefined ? "" : `, bag ${one.bag}`}`,
        one.tests.map((test) => testNames([test]).replace("blood ", "")).join(", "),
        one.takenAt?.replace(`${date}T`, "").replace("T", " ") ?? "",
      ]),
    ),
  ];
}

const linesOf = (all: readonly Manifest[]) =>
  all.flatMap(({ visit, containers }) =>
    containers.map((one) => ({
      visit,
      sample: one.id,
      case: one.pig,
      tag: one.tag ?? null,
      pooled_with: one.pooledWith,
      from: one.from,
      what: one.what,
      into: one.into ?? null,
      fixative: one.fixative ?? null,
      tests: one.tests,
      taken: one.takenAt ?? null,
      amount: one.amount ?? null,
      bag: one.bag ?? null,
      note: one.note ?? null,
    })),
  );

export const manifestJson = (all: readonly Manifest[]): string =>
  outputJson("samples-manifest", 1, { containers: linesOf(all) });

export function manifestCsv(all: readonly Manifest[]): string {
  const lines = linesOf(all);
  const head = [
    "visit",
    "sample",
    "case",
    "tag",
    "pooled_with",
    "from",
    "what",
    "into",
    "fixative",
    "tests",
    "taken",
    "amount",
    "bag",
    "note",
  ] as const;
  return csv(
    head,
    lines.map((line) =>
      head.map((key) => {
        const value = line[key];
        return Array.isArray(value) ? value.join(" ") || null : (value as string | null);
      }),
    ),
  );
}
