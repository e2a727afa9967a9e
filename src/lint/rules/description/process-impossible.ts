import { type Case, formatPath } from "../../../cases/index.ts";
import { type ImpossibleFinding, impossibleFindings } from "../../../knowledge/index.ts";
import { findingsOf, isAmong, type PlacedFinding } from "../../../record/index.ts";
import type { CaseRule } from "../../rule.ts";

export const processImpossible: CaseRule = {
  id: "process-impossible",
  scope: "case",
  family: "description",
  level: "error",
  summary: "A lesion is one that this organ can have at this age, and its words go with it.",
  protects:
    "Soft dark lung called consolidation spoils every lung score of the herd, a scar formed this morning dates the disease wrongly, and a prolapse of the spleen was typed into the wrong line.",
  lookAlike:
    "An ulcer of a valve or of cartilage, a twisted lobe of liver or lung, a prolapsed disc: rare, and passed. What has no word is written as the nearest process with a note.",
  source: impossibleFindings.source,
  bad: {
    case: "liver_pancreas: {liver: [{process: congestion, distribution: diffuse, extent: 90 %, colour: unchanged}]}",
  },
  good: {
    case: "liver_pancreas: {liver: [{process: congestion, distribution: diffuse, extent: 90 %, colour: dark-red}]}",
  },
  check(one, report) {
    for (const placed of findingsOf(one)) {
      const row = rowsOf(placed.finding.process).find((entry) => isMet(entry, placed, one));
      if (row === undefined) continue;
      const field = fieldOf(row);
      const at = [...placed.path, field ?? "process"];
      report(`${formatPath(at)}: ${says(row, placed, one)}`, at);
    }
  },
};

type Row = ImpossibleFinding;
const fields = ["colour", "consistency", "exudate", "duration", "distribution", "contour"] as const;

const byProcess = new Map<string, Row[]>();
for (const row of Object.values(impossibleFindings.rows))
  for (const process of row.processes) byProcess.set(process, [...(byProcess.get(process) ?? []), row]);
const rowsOf = (process: string): readonly Row[] => byProcess.get(process) ?? [];

interface Placed {
  readonly organ: PlacedFinding["organ"];
  readonly finding: Partial<PlacedFinding["finding"]>;
}

/** Whether a lesion cannot be in an organ of this pig, whatever else is said of it. */
export const cannotBe = (process: string, organ: PlacedFinding["organ"], one: Case): boolean =>
  rowsOf(process).some(
    (row) =>
      fieldOf(row) === undefined && row.exudates === undefined && isMet(row, { organ, finding: {} }, one),
  );

/** The field whose word is denied; undefined where the process itself cannot be. */
const fieldOf = ({ with: words }: Row): (typeof fields)[number] | undefined =>
  fields.find((field) => words?.[field] !== undefined);

function isMet(row: Row, { organ, finding }: Placed, one: Case): boolean {
  if (row.organs !== undefined && !isAmong(organ.id, row.organs)) return false;
  if (row.except !== undefined && isAmong(organ.id, row.except)) return false;
  if (row.exudates !== undefined && !row.exudates.includes(finding.exudate ?? "")) return false;
  if ((row.classes !== undefined || row.under_days !== undefined) && !isOfAge(row, one)) return false;
  const field = fieldOf(row);
  return field === undefined || (row.with?.[field] ?? []).includes(finding[field] ?? "");
}

const isOfAge = ({ classes, under_days: days }: Row, { ageClass, ageDays }: Case): boolean =>
  (ageClass !== undefined && classes?.includes(ageClass) === true) ||
  (days !== undefined && ageDays !== undefined && ageDays < days);

/** What is wrong, why, and what to write. */
function says(row: Row, { organ, finding }: PlacedFinding, { ageClass, record }: Case): string {
  const field = fieldOf(row);
  const { process, exudate } = finding;
  if (field === undefined) {
    const young = row.classes !== undefined || row.under_days !== undefined;
    const where = young
      ? `in a pig of ${record.pig?.age ?? `class ${ageClass}`}`
      : `of ${organ.definition.title.toLowerCase()}`;
    return `${process} ${where}; ${row.because}. ${row.instead ?? "Correct the process or the organ"}.`;
  }
  const [lesion, other] =
    row.exudates === undefined ? [process, "process"] : [`${exudate} ${process}`, "exudate"];
  return `${finding[field]} does not go with ${lesion}; ${row.because}. ${row.instead ?? `Correct the ${field} or the ${other}`}.`;
}
