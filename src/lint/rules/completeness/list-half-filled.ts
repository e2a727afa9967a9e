import { type Case, formatPath, type OrganState, valueAt } from "../../../cases/index.ts";
import { type Observation, organById, type PlacedOrgan, partRules } from "../../../knowledge/index.ts";
import { listing } from "../../../words/listing.ts";
import type { CaseRule, Report } from "../../rule.ts";
import { held } from "../../shared/parts.ts";

const onTheLine = (accessory: string): string =>
  `protocol: slaughter-check\nselection: {basis: random, onset: , typical: , note: every 12th}\ndeath: {manner: slaughtered, method: exsanguination}\nrespiratory: {lungs: {consolidation: {accessory: ${accessory}}}}`;

export const listHalfFilled: CaseRule = {
  id: "list-half-filled",
  scope: "case",
  family: "completeness",
  level: "error",
  summary: "On a slaughter line as well, a list of lobes, conchae or sides that was begun is filled.",
  protects:
    "Six of seven lobes look like a record and give no score: the pig drops out of every table, and nobody misses it.",
  lookAlike:
    "A line that leaves the accessory lobe behind: name madec-kobisch-1982-six-lobes under scales in carcase.yaml. With another lobe lost, take the list out and write not_assessable.",
  source: partRules.source,
  bad: { case: onTheLine("") },
  good: { case: onTheLine("10") },
  check(one, report) {
    // Where observations are asked for, rules of their own ask for what a list or a grade needs.
    if (one.protocol.observations !== "optional") return;
    for (const row of Object.values(partRules.whole)) {
      const organ = organById(row.organ);
      if (organ !== undefined) reportList(one, organ, row, report);
    }
    for (const { organ: id, reads, needs, because, instead } of Object.values(partRules.together)) {
      const organ = organById(id);
      if (organ === undefined) continue;
      const { entry, path } = one.organ(organ);
      const begun = reads.find((read) => entry?.[read] !== undefined);
      if (begun !== undefined && entry?.[needs] === undefined)
        report(
          `${formatPath([...path, needs])}: blank, although ${begun} is recorded; ${because}. ${instead}.`,
          [...path, needs],
          "key",
        );
    }
  },
};

type Row = (typeof partRules.whole)[string];

function reportList(one: Case, organ: PlacedOrgan, row: Row, report: Report): void {
  const state = one.organ(organ);
  const { entry, path } = state;
  if (entry === undefined) return;
  for (const read of row.reads) {
    const value = entry[read];
    const at = [...path, read];
    const definition = organ.definition.observations?.[read];
    const isDue =
      value !== undefined || (row.both === true && row.reads.some((other) => entry[other] !== undefined));
    if (definition?.parts === undefined || !isDue) continue;
    const missing = missingParts(one, row, { state, read, definition });
    if (missing.length > 0)
      report(
        `${formatPath(at)}: ${listing(missing.map((part) => definition.parts?.[part] ?? part))} ${missing.length > 1 ? "are" : "is"} blank; ${row.because}. Write ${missing[0]}: ${exampleFor(definition)}, or take the whole list out.`,
        at,
        "key",
      );
  }
}

interface AskedList {
  readonly state: OrganState;
  readonly read: string;
  readonly definition: Observation;
}

function missingParts(one: Case, row: Row, { state, read, definition }: AskedList): string[] {
  const parts = Object.keys(definition.parts ?? {}).filter(
    (part) => valueAt(state.entry, [read, part]) == null,
  );
  return parts.filter((part) => {
    const scale = row.may_lack?.[part];
    if (scale !== undefined && one.settings.scales?.includes(scale) === true) return false;
    return row.where === undefined || held(one, row.organ, row.where, part) !== undefined;
  });
}

const exampleFor = ({ kind, values, range, normal }: Observation): string =>
  kind === "choice" || kind === "choices"
    ? (normal ?? values?.[0] ?? "")
    : `${range?.[0] ?? 0} to ${range?.[1] ?? ""}`;
