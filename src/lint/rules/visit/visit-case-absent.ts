import { basename } from "node:path";
import { grouped } from "../../../words/grouped.ts";
import { count, listing } from "../../../words/listing.ts";
import { practice, type VisitRule } from "../../rule.ts";

export const visitCaseAbsent: VisitRule = {
  id: "visit-case-absent",
  scope: "visit",
  family: "visit",
  silent: "never",
  level: "error",
  summary: "Every case that the visit lists has its file.",
  protects: "A pig that was opened and never written up drops out of every count without trace.",
  lookAlike:
    "A pig that was listed and then not opened: take it off the list, and say in the note of the visit why it was left.",
  source: practice("common practice of record keeping: every pig opened is written up"),
  bad: { visit: "cases: [birch-2026-04-20-01, birch-2026-04-20-02]" },
  good: { visit: "cases: [birch-2026-04-20-01]" },
  check(visit, reportVisit) {
    const listed = visit.record.cases;
    if (listed === undefined || !visit.complete) return;
    const present = new Set(visit.cases.map((one) => one.id));
    const absent = listed.filter((id) => !present.has(id));
    // Those of which nothing else is known are one line.
    const told = grouped(absent, (id) => why(id, visit.excluded));
    for (const [reason, ids] of told) {
      const single = ids.length === 1;
      reportVisit(
        `cases: ${listing(ids)} ${single ? "is" : "are"} listed here but ${single ? reason : reason.replace(/^has /, "have ").replace("the case", "the cases")}, or take ${single ? "it" : "them"} off the list.`,
        ["cases", listed.indexOf(ids[0])],
      );
    }
  },
};

/** A file that settings exclude was not read, so what it is called must do. */
function why(id: string, excluded: readonly string[]): string {
  const named = excluded.find((file) => basename(file).replace(/\.ya?ml$/i, "") === id);
  if (named !== undefined)
    return `its file ${named} is excluded by exclude: in carcase.yaml. Take it out of the patterns there`;
  return excluded.length === 0
    ? "has no file in this folder. Write up the case"
    : `no file of it was read; exclude: in carcase.yaml leaves out ${count(excluded.length, "file")} of this folder (${excluded[0]}${excluded.length > 1 ? " …" : ""}). Take the case out of the patterns there`;
}
