/** Pigs that are not what their selection basis says: one that was chosen for signs has none, a healthy one has some. */
import type { Case } from "../../../cases/index.ts";
import { selectionRules } from "../../../knowledge/index.ts";
import { listing } from "../../../words/listing.ts";
import { type CaseRule, practice, type RuleRow, verified } from "../../rule.ts";

type Selection = NonNullable<Case["record"]["selection"]>;

interface Contradiction extends RuleRow {
  readonly basis: NonNullable<Selection["basis"]>;
  readonly key: keyof Selection;
  /** @returns undefined where the key agrees with the basis */
  says(selection: Selection): string | undefined;
}

const rows: readonly Contradiction[] = [
  {
    id: "pig-not-typical",
    level: "warning",
    summary: "A pig chosen for its signs shows the signs of the group.",
    protects:
      "The runt with the odd disease answers a question that nobody asked, and its laboratory bill is the same.",
    lookAlike:
      "The one odd pig, opened for its own sake: basis: convenience or culled, and whether it is typical is not asked.",
    source: selectionRules.source,
    bad: { case: "selection: {typical: no}" },
    good: { case: "selection: {typical: yes}" },
    basis: "clinical",
    key: "typical",
    says: ({ typical }) =>
      typical === "no" || typical === false
        ? "selection.typical is no: this pig does not stand for the group. Open one that does, or file this one as culled or convenience."
        : undefined,
  },
  {
    id: "clinical-without-signs",
    level: "error",
    summary: "A pig chosen for its signs has some.",
    protects:
      "A healthy pig counted among the ill ones makes lesions look rarer in the disease than they are.",
    lookAlike:
      "Signs of its pen mates only, or signs that had passed: list those that it had in life, or write basis: comparison.",
    source: practice(
      "definition of the basis: a pig is clinical by its signs; common practice of epidemiology",
    ),
    bad: { case: "selection: {signs: [none]}" },
    good: { case: "selection: {basis: comparison, signs: [none]}" },
    basis: "clinical",
    key: "signs",
    says: ({ signs = [] }) =>
      signs.length > 0 && signs.every((sign) => sign === "none")
        ? "selection.signs: chosen for its signs, yet it has none. List the signs, or write basis: comparison for a healthy pig."
        : undefined,
  },
  {
    id: "comparison-with-signs",
    level: "warning",
    summary: "A pig opened for comparison is healthy.",
    protects: "An ill pig as the healthy comparison hides exactly the difference that it was opened for.",
    lookAlike:
      "A healthy pig with a bitten ear or an old hernia: write signs: [none] where the sign has nothing to do with the question, and the rest in a note.",
    source: verified(
      "Loeffen et al., acute respiratory outbreaks in Dutch finishing herds: four diseased and two healthy pigs per herd",
    ),
    bad: { case: "selection: {basis: comparison}" },
    good: { case: "selection: {basis: comparison, signs: [none]}" },
    basis: "comparison",
    key: "signs",
    says({ signs = [] }) {
      const shown = signs.filter((sign) => sign !== "none");
      return shown.length > 0
        ? `selection.signs: a healthy comparison with ${listing(shown)}. Choose a pig without signs, or write basis: clinical.`
        : undefined;
    },
  },
];

export const basisContradicted: readonly CaseRule[] = rows.map(({ basis, key, says, ...row }) => ({
  ...row,
  scope: "case",
  family: "selection",
  silent: "never",
  check(one, report) {
    const { selection } = one.record;
    if (selection?.basis !== basis) return;
    const wrong = says(selection);
    if (wrong !== undefined) report(wrong, ["selection", key]);
  },
}));
