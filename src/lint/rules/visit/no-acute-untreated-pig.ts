import type { Case } from "../../../cases/index.ts";
import { selectionRules } from "../../../knowledge/index.ts";
import { acuteHours, clinicalPigs, hoursIll, isLongStanding, isUntreated } from "../../../record/index.ts";
import type { VisitRule } from "../../rule.ts";

export const noAcuteUntreatedPig: VisitRule = {
  id: "no-acute-untreated-pig",
  scope: "visit",
  family: "visit",
  level: "warning",
  summary: "At least one of the ill pigs is untreated and within two days of the onset of its signs.",
  protects:
    "That is the pig that still carries the agent; from treated and chronic ones the laboratory can only report what it did not find.",
  lookAlike:
    "A fresh untreated pig found dead counts as acute; wasting, which has no acute pig, is known by its signs; a whole room under treatment is said under pigs: {few: …}.",
  source: selectionRules.source,
  bad: {
    case: "selection: {onset: 6 d, note: worst of the pen}",
    others: [
      "case: birch-2026-04-20-02\npig: {tag: '902', pen: 5}\nselection: {onset: 5 d, note: thin}",
      "case: birch-2026-04-20-03\npig: {tag: '903', pen: 6}\nselection: {onset: 5 d, note: thin}",
    ],
    visit:
      "cases: [birch-2026-04-20-01, birch-2026-04-20-02, birch-2026-04-20-03]\npigs: {few: , comparison: none well}",
  },
  good: {
    case: "selection: {onset: 6 d, note: worst of the pen}",
    others: [
      "case: birch-2026-04-20-02\npig: {tag: '902', pen: 5}",
      "case: birch-2026-04-20-03\npig: {tag: '903', pen: 6}\nselection: {onset: 5 d, note: thin}",
    ],
    visit:
      "cases: [birch-2026-04-20-01, birch-2026-04-20-02, birch-2026-04-20-03]\npigs: {few: , comparison: none well}",
  },
  check(visit, reportVisit) {
    const pigs = clinicalPigs(visit);
    if (!visit.complete || pigs.length < 2 || visit.record.pigs?.few !== undefined) return;
    // What is not recorded may be the acute pig; other rules ask for it.
    const isFreshlyDead = ({ record }: Case): boolean =>
      record.death?.manner === "found-dead" && record.opened?.state === "fresh";
    const mayBe = [...pigs, ...visit.cases.filter(isFreshlyDead)].some((one) => {
      const hours = hoursIll(one);
      const isTreated = one.record.selection?.treated !== undefined && !isUntreated(one);
      return !isTreated && (hours === undefined || hours <= acuteHours || isLongStanding(one));
    });
    if (!mayBe)
      reportVisit(
        `none of the ${pigs.length} pigs chosen for their signs is untreated and in the first ${selectionRules.acute_within} of them. Open one more that is; it is worth more than the rest.`,
        ["cases"],
        "key",
      );
  },
};
