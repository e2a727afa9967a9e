import { conchae } from "../../../record/index.ts";
import { type CaseRule, practice } from "../../rule.ts";

export const turbinateLossContradiction: CaseRule = {
  id: "turbinate-loss-contradiction",
  scope: "case",
  family: "scoring",
  level: "error",
  summary: "What the record says about turbinate loss fits whether there is any.",
  protects: "None beside a lost scroll, or a cause without a loss: the reader cannot tell which is true.",
  lookAlike:
    "A scroll that was always small, or one cut on the slant: grade 1 beside loss_looks: none is passed, and so is undecided beside any loss.",
  source: practice("common practice of snout scoring: the cause is named only where there is loss"),
  bad: { case: "respiratory: {turbinates: {loss_looks: none}}" },
  good: { case: "respiratory: {turbinates: {loss_looks: undecided}}" },
  check(one, report) {
    const nose = conchae(one);
    if (nose === undefined || nose.losses.length === 0) return;
    const looks = nose.loss_looks;
    if (looks !== "none" && looks !== "infectious" && looks !== "environmental") return;
    const most = Math.max(...nose.losses);
    const path = [...nose.path, "loss_looks"];
    if (looks === "none" && most >= 2)
      report(
        "respiratory.turbinates.loss_looks: none, yet a concha has lost tissue. Write infectious, environmental or undecided.",
        path,
      );
    else if (looks !== "none" && Math.max(most, ...Object.values(nose.grades)) === 0)
      report(
        `respiratory.turbinates.loss_looks: ${looks}, yet no concha has lost tissue. Write none, or grade the conchae again.`,
        path,
      );
  },
};
