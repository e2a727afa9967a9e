import { isUnborn, quantity } from "../../../cases/index.ts";
import { plausible } from "../../../knowledge/index.ts";
import { isIllBeforeBirth } from "../../../record/index.ts";
import { withArticle } from "../../../words/listing.ts";
import { type CaseRule, practice } from "../../rule.ts";
import { placeRules } from "../../shared/rule-rows.ts";

const daysOf = (text: string | undefined): number | undefined => {
  const hours = quantity("duration", text);
  return hours === undefined ? undefined : hours / 24;
};

/** What cannot be said of a pig of this class, sex or age. */
export const pigContradictions: readonly CaseRule[] = placeRules("consistency", [
  {
    id: "parity-impossible",
    level: "error",
    summary: "Only a grown sow has farrowed.",
    protects: "Parity in a male or a weaner means that two pigs or two lines were mixed up.",
    lookAlike:
      "The parity of the dam, written on her fetus or her piglet: write it as dam_parity, and the sow under pig.litter.",
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
    id: "farrowing-impossible",
    level: "error",
    summary: "Only a grown sow that has litters has farrowed, and not years ago.",
    protects: "Agalactia of three days and of three weeks are two diseases, and a boar has neither.",
    lookAlike:
      "A sow kept barren for years: leave since_farrowing blank, and write when she last farrowed into a note.",
    source: plausible.source,
    bad: { case: "pig: {since_farrowing: 3 d}" },
    good: { case: "pig: {since_farrowing: }" },
    at: ["pig", "since_farrowing"],
    says({ record, ageDays, ageClass }) {
      const { parity, sex, since_farrowing: since } = record.pig ?? {};
      const days = daysOf(since);
      if (days === undefined) return undefined;
      if (sex === "male" || sex === "castrate")
        return `${since} in ${withArticle(sex)}. Correct the sex, or take it out.`;
      if (parity === 0) return `${since} in a gilt without a litter (parity 0). Correct one of them.`;
      const isYoung =
        (ageDays !== undefined && ageDays - days < plausible.parity_from_days) ||
        (ageClass !== undefined && ageClass !== "adult");
      if (isYoung)
        return `${since} in a pig that was too young to farrow then. Correct the age or the class.`;
      return days > plausible.farrowed_within_days
        ? `${since} is longer than a sow is kept without a litter. Check the unit.`
        : undefined;
    },
  },
  {
    id: "weaning-impossible",
    level: "error",
    summary: "A pig was weaned after it was born, at an age at which pigs are weaned.",
    protects: "Diarrhoea three days and three weeks after weaning have different causes.",
    lookAlike:
      "A piglet orphaned at birth and raised by hand was never weaned: leave since_weaning blank. Of a sow it is the weaning of her litter, and passed.",
    source: plausible.source,
    bad: { case: "pig: {since_weaning: 60 d}" },
    good: { case: "pig: {since_weaning: 30 d}" },
    at: ["pig", "since_weaning"],
    says({ record, ageDays, ageClass }) {
      const since = record.pig?.since_weaning;
      const days = daysOf(since);
      if (days === undefined) return undefined;
      if (ageClass !== undefined && isUnborn(ageClass))
        return `${since} in a pig that never suckled. Take it out, or correct the class.`;
      // Of a sow it is that of her litter.
      if (ageDays === undefined || ageClass === "adult") return undefined;
      const [low, high] = plausible.weaned_at_days;
      const at = ageDays - days;
      return at < low || at > high
        ? `${since} in a pig of ${record.pig?.age}: it would have been weaned at ${Math.round(at)} d. Correct one of them.`
        : undefined;
    },
  },
  {
    id: "litter-implausible",
    level: "error",
    summary: "A litter has no more piglets than litters have, and the pig on the table is one of them.",
    protects: "The share of dead piglets decides between a hard farrowing and an infection of the litter.",
    lookAlike:
      "A pen of piglets fostered together: litter_born counts what one sow bore, on the day, before any was moved.",
    source: plausible.source,
    bad: { case: "pig: {litter_born: {alive: 141, stillborn: 2}}" },
    good: { case: "pig: {litter_born: {alive: 14, stillborn: 2}}" },
    at: ["pig", "litter_born"],
    says({ record, ageClass }) {
      const born = record.pig?.litter_born ?? {};
      const counts = Object.entries(born) as [keyof typeof born, number][];
      const many = counts.find(([key, number]) => number > plausible.litter_born[key]);
      if (many !== undefined) return `${many[1]} ${many[0]} in one litter is hard to believe. Count again.`;
      const all = counts.reduce((sum, [, number]) => sum + number, 0);
      if (all > plausible.litter_born.all)
        return `${all} piglets in one litter are hard to believe. Count again.`;
      const own = ageClass === "mummy" ? "mummified" : ageClass === "stillborn" ? "stillborn" : undefined;
      return own !== undefined && born[own] === 0
        ? `${own}: 0, and this pig is one. Correct the count or the class.`
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
