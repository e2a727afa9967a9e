import { formatPath } from "../../../cases/index.ts";
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
      const name = formatPath(missing.path);
      const { parts, not_of_diffuse: spared } = missing.definition;
      const how =
        parts === undefined
          ? exampleOf(missing)
          : `${missing.observation}: with ${Object.keys(parts).join(", ")}${spared === undefined ? "" : `, 0 for each that has none; where ${listing(spared, "or")} takes the whole organ, distribution: diffuse on the finding says so instead`}`;
      report(
        `${name}: ${missingTitle(missing)} is not recorded on ${missing.organ.id}. Write ${how}.`,
        missing.path,
        "key",
      );
    }
  },
};
