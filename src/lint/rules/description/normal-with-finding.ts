import { type Case, formatPath, listed, type OrganState } from "../../../cases/index.ts";
import { organs } from "../../../knowledge/index.ts";
import { entriesOf, lesionPath, type PlacedEntry } from "../../../record/index.ts";
import { type CaseRule, practice } from "../../rule.ts";

export const normalWithFinding: CaseRule = {
  id: "normal-with-finding",
  scope: "case",
  family: "description",
  level: "error",
  summary: "An organ is normal, not examined or described; never two of these at once.",
  protects: "The next reader cannot know which half of the contradiction is true.",
  lookAlike:
    "A normal organ with an old scar or an artefact of the kill: leave state out and write the one finding, with certainty: artefact where it is one.",
  source: practice("common practice of recording"),
  bad: {
    case: "lymphoid: {spleen: {state: normal, findings: [{process: infarct, distribution: focal, size: 8 mm}]}}",
  },
  good: { case: "lymphoid: {spleen: {state: normal, weight: 38 g}}" },
  check(one, report) {
    for (const { organ, state, entry } of entriesOf(one)) {
      if (!says.some((key) => isSaid(entry, key))) continue;
      const { path } = state;
      const said = says.filter((key) => isSaid(entry, key));
      const lesion = said.length === 1 ? lesionPath(one, organ, state) : undefined;
      const wordsSaid = said.map((key) => words[key]).join(" and ");
      if (said.length > 1)
        report(`${formatPath(path)}: ${wordsSaid} at once. Keep one.`, [...path, said[1] ?? ""], "key");
      else if (lesion !== undefined)
        report(
          `${formatPath(path)}: ${wordsSaid}, yet ${formatPath(lesion)} says otherwise. Keep one.`,
          lesion,
        );
    }
    const named = new Set<string>();
    for (const { names, path, state } of listed(one.record))
      for (const name of names) {
        const yet = named.has(name) ? ["another entry"] : saidOtherwise(one, name, state.status);
        named.add(name);
        if (yet[0] !== undefined)
          report(
            `${formatPath(path)}: ${name} is ${words[state.status === "normal" ? "state" : "not_examined"]} by the list at the top, yet ${yet[0]} says otherwise. Keep one; what the list cannot say of every organ is written under ${name.split(".")[0]}.`,
            path,
          );
      }
  },
};

/** Where a system, or an organ, says itself what no list at the top can say of it. */
const saidOtherwise = (one: Case, name: string, listed: OrganState["status"]): string[] =>
  organs
    .filter(({ system, id }) => system === name || id === name)
    .map((organ) => ({ ...one.organ(organ), system: organ.system }))
    .filter(({ path, status, system }) => path[0] === system && status !== "blank" && status !== listed)
    .map(({ path }) => formatPath(path));

const words = { not_examined: "not examined", not_assessable: "not assessable", state: "normal" } as const;
const says = ["not_examined", "not_assessable", "state"] as const;

/** Whether an entry says so, be it with a blank reason. */
const isSaid = (entry: PlacedEntry["entry"], key: keyof typeof words): boolean =>
  key === "state" ? entry.state === "normal" : Object.hasOwn(entry, key);
