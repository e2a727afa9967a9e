import { conchae } from "../../../record/index.ts";
import { type CaseRule, practice } from "../../rule.ts";

export const turbinateLossUnexplained: CaseRule = {
  id: "turbinate-loss-unexplained",
  scope: "case",
  family: "scoring",
  level: "warning",
  summary:
    "Clear loss of turbinates says whether it looks infectious or environmental, or that this is undecided.",
  protects:
    "Dust and gases destroy scrolls as toxins do; a farm that vaccinates against bad air wastes its money.",
  lookAlike:
    "Nobody can tell from one snout: loss_looks: undecided is an answer; on the line, where only a grade is read, it is not asked.",
  source: practice(
    "common practice of herd visits: infectious and environmental turbinate loss are told apart first",
  ),
  bad: { case: "respiratory: {turbinates: {loss_looks: }}" },
  good: { case: "respiratory: {turbinates: {loss_looks: infectious}}" },
  check(one, report) {
    const nose = conchae(one);
    if (nose === undefined || nose.loss_looks !== undefined) return;
    // On a line only the grade is read; nobody there can tell the causes apart.
    if (nose.losses.length === 0 && one.protocol.observations === "optional") return;
    const worst = Math.max(0, ...nose.losses);
    const grade = nose.grades["maff-1978"] ?? 0;
    if (worst >= 2 || grade >= 2)
      report(
        `respiratory.turbinates: clear loss (${worst >= 2 ? `concha ${worst}` : `grade ${grade}`}), and nothing says what it looks like. Write loss_looks: infectious, environmental or undecided.`,
        [...nose.path, "loss_looks"],
      );
  },
};
