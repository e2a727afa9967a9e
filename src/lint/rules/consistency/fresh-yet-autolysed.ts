import { organs, type PlacedOrgan } from "../../../knowledge/index.ts";
import { entriesOf, findingsOf, isAmong } from "../../../record/index.ts";
import { listing } from "../../../words/listing.ts";
import { type CaseRule, practice } from "../../rule.ts";

/** What rots first, within the hour, and says as much of the carcass together as one system. */
const first = ["intestine", "stomach", "liver_pancreas.pancreas"];

export const freshYetAutolysed: CaseRule = {
  id: "fresh-yet-autolysed",
  scope: "case",
  family: "consistency",
  level: "warning",
  summary: "A carcass called fresh is not autolysed in two systems or more.",
  protects: "The state of the carcass decides which tests are worth their price.",
  lookAlike:
    "Gut, stomach and pancreas soften within the hour while the carcass is still fresh: they count as one system.",
  source: practice("common practice in the necropsy room: the carcass is as fresh as its organs"),
  bad: {
    case: "lymphoid: {thymus: {not_assessable: {because: autolysed, why: soft}}}\nintestine: {jejunum: {not_assessable: {because: autolysed, why: green}}}",
  },
  good: {
    case: "opened: {state: slight-autolysis}\nlymphoid: {thymus: {not_assessable: {because: autolysed, why: soft}}}\nintestine: {jejunum: {not_assessable: {because: autolysed, why: green}}}",
  },
  check(one, report) {
    if (one.record.opened?.state !== "fresh") return;
    const found = new Set<PlacedOrgan>();
    for (const { organ, finding } of findingsOf(one)) if (finding.process === "autolysis") found.add(organ);
    for (const { organ, state } of entriesOf(one)) if (state.because === "autolysed") found.add(organ);
    if (found.size < 2) return;
    const autolysed = organs.filter((organ) => found.has(organ));
    if (new Set(autolysed.map(({ id, system }) => (isAmong(id, first) ? "first" : system))).size > 1)
      report(
        `opened.state: fresh, yet ${listing(autolysed.map(({ id }) => id))} are autolysed. Write state: slight-autolysis, or worse.`,
        ["opened", "state"],
      );
  },
};
