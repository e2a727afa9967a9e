import { type Case, formatPath, pathOf, valueAt } from "../../../cases/index.ts";
import {
  exampleOf,
  type MissingObservation,
  missingObservations,
  missingTitle,
} from "../../../record/index.ts";
import { listing } from "../../../words/listing.ts";
import { type CaseRule, practice } from "../../rule.ts";

/** Sides and the section of the snout have rules of their own. */
const hasOwnRule = ({ organ, observation }: MissingObservation): boolean =>
  organ.id === "respiratory.turbinates" && ["left", "right", "section"].includes(observation);

export const observationMissing: CaseRule = {
  id: "observation-missing",
  scope: "case",
  family: "completeness",
  level: "error",
  summary: "An organ that was examined has the observations that scores and statistics are made from.",
  protects:
    "A lung described in words cannot be compared with next spring's; a joint that nobody named may not have been opened.",
  lookAlike:
    "A lung that is firm all over without a consolidated lobe: oedema, congestion and collapse ask for no lobes; where it is called inflammation, accept the finding.",
  source: practice(
    "observations needed by the published scores; common practice of recording: the joints opened are listed by name",
  ),
  bad: { case: "locomotor: {joints: normal}" },
  good: { case: "locomotor: {joints: {state: normal, opened: [left-hock, right-stifle]}}" },
  check(one, report) {
    for (const missing of missingObservations(one)) {
      if (missing.part !== undefined || hasOwnRule(missing)) continue;
      report(
        `${formatPath(missing.path)}: ${missingTitle(missing)} is not recorded on ${missing.organ.id}. Write ${placed(one, missing)}.`,
        missing.path,
        "key",
      );
    }
  },
};

/** What to write, with the keys around it where the organ was told by one word or by a list, which hold no observation. */
function placed(one: Case, missing: MissingObservation): string {
  const { organ, definition, observation } = missing;
  const { parts, not_of_diffuse: spared } = definition;
  const what =
    parts === undefined ? exampleOf(missing) : `${observation}: {${Object.keys(parts).join(": 0, ")}: 0}`;
  const diffuse = `; where ${listing(spared ?? [], "or")} takes the whole organ, distribution: diffuse on the finding says so instead`;
  const told = valueAt(one.record, pathOf(organ.id));
  const how = Array.isArray(told)
    ? `${organ.key}: {${what}, findings: […]}, with the list that stands there`
    : typeof told === "string"
      ? `${organ.key}: {state: normal, ${what}}`
      : one.organ(organ).bySystem
        ? `${organ.system}: {${organ.key}: {state: normal, ${what}}, rest: normal}`
        : what;
  return spared === undefined ? how : `${how}${diffuse}`;
}
