import { isUnborn } from "../../../cases/index.ts";
import { type CaseRule, practice } from "../../rule.ts";
import { placeRules } from "../../shared/rule-rows.ts";

/** What cannot stand beside the manner of death. */
export const deathContradictions: readonly CaseRule[] = placeRules("consistency", [
  {
    id: "method-without-kill",
    level: "error",
    summary: "Only a pig that was killed has a method of killing.",
    protects:
      "Found dead and barbiturate exclude each other; freshness and brain are then judged by the one that is wrong.",
    lookAlike:
      "A pig that died before the needle was in: write found-dead, without method, and what was tried in death.note.",
    source: practice("meaning of the words"),
    bad: {
      case: "death: {manner: found-dead, note: last seen alive at 06:00}\nselection: {basis: found-dead, onset: , typical: }",
    },
    good: {
      case: "death: {manner: found-dead, method: , note: last seen alive at 06:00}\nselection: {basis: found-dead, onset: , typical: }",
    },
    at: ["death", "method"],
    says({ record: { death } }) {
      const { manner, method } = death ?? {};
      return method !== undefined && (manner === "found-dead" || manner === "born-dead")
        ? `${method}, yet the pig was ${manner}. Take the method out, or correct the manner.`
        : undefined;
    },
  },
  {
    id: "slaughtered-by-barbiturate",
    level: "error",
    summary: "A pig killed with barbiturate was not slaughtered.",
    protects:
      "Such a carcass never enters the food chain; manner or method is wrong, and so is the selection it stands for.",
    lookAlike:
      "A pig sedated on the way to slaughter, or emergency slaughter of a treated one: the method is how it died, so write exsanguination or captive-bolt.",
    source: practice(
      "common practice at slaughter: nothing is injected that would leave residues in the meat",
    ),
    bad: { case: "death: {manner: slaughtered}\nselection: {basis: random, onset: , typical: }" },
    good: {
      case: "death: {manner: slaughtered, method: exsanguination}\nselection: {basis: random, onset: , typical: }",
    },
    at: ["death", "manner"],
    says: ({ record: { death } }) =>
      death?.manner === "slaughtered" && death.method === "barbiturate"
        ? "a pig killed with barbiturate was not slaughtered. Write manner: euthanised, or method: exsanguination."
        : undefined,
  },
  {
    id: "basis-contradicts-death",
    level: "error",
    summary: "How the pig was chosen fits how it died.",
    protects: "A pig found dead was not chosen alive for its signs; in the herd table the two count apart.",
    lookAlike:
      "A pig picked for its signs that died before you came: basis: found-dead is the answer, and selection.note says that it was picked first.",
    source: practice("meaning of the words"),
    bad: { case: "selection: {basis: found-dead, onset: , typical: }" },
    good: {
      case: "selection: {basis: found-dead, onset: , typical: }\ndeath: {manner: found-dead, method: , note: last seen alive at 06:00}",
    },
    at: ["selection", "basis"],
    says({ record: { selection, death } }) {
      const basis = selection?.basis;
      const manner = death?.manner;
      if (basis === "found-dead" && (manner === "euthanised" || manner === "slaughtered"))
        return `found-dead, yet the pig was ${manner}. Write basis: clinical, or manner: found-dead.`;
      return (basis === "clinical" || basis === "comparison") && manner === "found-dead"
        ? `${basis} means a pig chosen alive, and this one was found dead. Write basis: found-dead.`
        : undefined;
    },
  },
  {
    id: "born-dead-contradiction",
    level: "error",
    summary: "A fetus or stillborn piglet is born dead, and no other pig is.",
    protects:
      "Class and manner decide what is due and where the pig is counted; here they exclude each other.",
    lookAlike:
      "A weak piglet that breathed for minutes lived: class: suckling with the age in hours; one that died during birth is stillborn and born-dead.",
    source: practice("meaning of the words"),
    bad: { case: "death: {manner: born-dead, method: }" },
    good: {
      case: "death: {manner: found-dead, method: , note: last seen alive at 06:00}\nselection: {basis: found-dead, onset: , typical: }",
    },
    at: ["death", "manner"],
    says({ ageClass, record: { death } }) {
      const manner = death?.manner;
      if (ageClass === undefined || manner === undefined) return undefined;
      if (isUnborn(ageClass))
        return manner === "euthanised" || manner === "slaughtered"
          ? `${manner} does not go with ${ageClass}. Write manner: born-dead, or class: suckling if it lived.`
          : undefined;
      return manner === "born-dead"
        ? `${manner} does not go with ${ageClass}. Correct the manner, or write class: stillborn.`
        : undefined;
    },
  },
]);
