/** What a case must say of how its pig was chosen, and leaves blank. */
import type { Case, Path } from "../../../cases/index.ts";
import { type CaseRule, practice, type RuleRow, verified } from "../../rule.ts";

interface Missing extends RuleRow {
  readonly path: Path;
  /** @returns undefined where it is said, or need not be */
  says(one: Case): string | undefined;
}

const rows: readonly Missing[] = [
  {
    id: "selection-basis-missing",
    level: "error",
    summary: "How the pig came to be examined is recorded.",
    protects:
      "Three ill pigs out of three picked for illness say nothing about how common it is; without the basis no proportion means anything.",
    lookAlike:
      "A pig that simply lay there: found-dead, or convenience where it was at hand, is as good an answer as any.",
    source: practice("definition of a probability sample; general epidemiology"),
    bad: { case: "selection: {basis: }" },
    good: { case: "selection: {basis: clinical}" },
    path: ["selection", "basis"],
    says: ({ record: { selection } }) =>
      selection?.basis === undefined
        ? "selection.basis is blank. Write how this pig was chosen: random, complete, clinical, found-dead, culled, comparison or convenience."
        : undefined,
  },
  {
    id: "signs-missing",
    level: "error",
    summary: "The signs in life are recorded, [none] for a pig without any.",
    protects: "Signs decide which organs are due and which tests the laboratory runs.",
    lookAlike:
      "A pig that was found dead and that nobody had seen ill: signs: [sudden-death], or [none] where it was healthy; a slaughter line is not asked.",
    source: verified("Animal Health Laboratory, University of Guelph: history decides the test set"),
    bad: { case: "selection: {signs: }" },
    good: { case: "selection: {signs: [sneezing, cough]}" },
    path: ["selection", "signs"],
    says: ({ record: { selection }, protocol }) =>
      selection?.signs === undefined && protocol.facts.includes("all")
        ? "selection.signs is blank. List what was seen in life, such as [sneezing, cough], or [none]."
        : undefined,
  },
  {
    id: "culled-without-reason",
    level: "note",
    summary: "A culled pig says what it was culled for.",
    protects:
      "A runt, a hernia and a broken leg have different lungs; in a year nobody will know which it was.",
    lookAlike:
      "A reason that stands in death.note, in the history of the pig or among its signs is read as well: signs: [wasting] says enough.",
    source: practice("common practice of record keeping: why a pig was culled stands with it"),
    bad: { case: "selection: {basis: culled, signs: [none]}" },
    good: { case: "selection: {basis: culled, signs: [none], note: navel hernia}" },
    path: ["selection", "note"],
    says: ({ signs, record: { selection, history, death } }) =>
      selection?.basis === "culled" &&
      signs.every((sign) => sign === "none") &&
      (selection.note ?? history ?? death?.note) === undefined
        ? "selection.note is blank. Say what this pig was culled for, such as note: navel hernia."
        : undefined,
  },
];

export const selectionMissing: readonly CaseRule[] = rows.map(({ path, says, ...row }) => ({
  ...row,
  scope: "case",
  family: "selection",
  check(one, report) {
    const missing = says(one);
    if (missing !== undefined) report(missing, path, "key");
  },
}));
