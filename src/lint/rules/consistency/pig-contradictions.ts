import { plausible } from "../../../knowledge/index.ts";
import { isIllBeforeBirth } from "../../../record/index.ts";
import { withArticle } from "../../../words/listing.ts";
import { type CaseRule, practice } from "../../rule.ts";
import { placeRules } from "../../shared/rule-rows.ts";

/** What cannot be said of a pig of this class, sex or age. */
export const pigContradictions: readonly CaseRule[] = placeRules("consistency", [
  {
    id: "parity-impossible",
    level: "error",
    summary: "Only a grown sow has farrowed.",
    protects: "Parity in a male or a weaner means that two pigs or two lines were mixed up.",
    lookAlike:
      "The parity of the dam, written on her fetus or her piglet: name the sow under pig.litter, and her parity in a note.",
    source: plausible.source,
    bad: { case: "pig: {parity: 2}" },
    good: { case: "pig: {parity: }" },
    at: ["pig", "parity"],
    says({ record, ageDays, ageClass }) {
      const { parity, sex } = record.pig ?? {};
      if (parity === undefined) return undefined;
      if (sex === "male" || sex === "castrate")
        return `${parity} in ${withArticle(sex)}. Correct the sex, or take the parity out.`;
      const isYoung =
        (ageDays !== undefined && ageDays < plausible.parity_from_days) ||
        (ageClass !== undefined && ageClass !== "adult");
      return parity > 0 && isYoung
        ? `${parity} in a pig that is too young to have farrowed. Correct the age or the class, or take the parity out.`
        : undefined;
    },
  },
  {
    id: "wasting-yet-fat",
    level: "warning",
    summary: "A wasting pig is not in fat condition.",
    protects: "Sign and condition come from two looks at one pig, or from two pigs.",
    lookAlike:
      "A scale that runs the other way, or a big belly over a bony back: condition is of the back and hips, 1 thin to 5 fat.",
    source: practice("meaning of the words"),
    bad: { case: "pig: {condition: 4.5}\nselection: {signs: [wasting]}" },
    good: { case: "pig: {condition: 1.5}\nselection: {signs: [wasting]}" },
    at: ["pig", "condition"],
    says({ record, signs }) {
      const condition = record.pig?.condition;
      return condition !== undefined && condition >= 4 && signs.includes("wasting")
        ? `${condition} of 5 (very fat) in a pig that is wasting. Check the pig and the direction of the scale.`
        : undefined;
    },
  },
  {
    id: "onset-before-birth",
    level: "error",
    summary: "The signs of a pig began after it was born.",
    protects:
      "An onset of last year makes an acute case a chronic one, and the tests are chosen by it; the year, the age or the tag is wrong.",
    lookAlike:
      "A disease that the whole group has had for months, in a young pig: onset is that of this pig, and the first day of the group stands in visit.yaml.",
    source: practice("order of events; common practice"),
    bad: { case: "selection: {onset: 2025-04-18}" },
    good: { case: "selection: {onset: 2026-04-19}" },
    at: ["selection", "onset"],
    says: (one) =>
      isIllBeforeBirth(one)
        ? `the signs would have begun (${one.record.selection?.onset}) before the pig was born (age ${one.record.pig?.age}). Correct the onset, the age or the tag; signs of its group belong in visit.yaml.`
        : undefined,
  },
]);
