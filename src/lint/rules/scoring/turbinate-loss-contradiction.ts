import { conchae } from "../../../record/index.ts";

import type { CaseRule } from "../../rule.ts";

export const turbinateLossContradiction: CaseRule = {
  id: "turbinate-loss-contradiction",
  scope: "case",
  family: "scoring",
  level: "error",
  summary: "What is said of the loss of turbinates fits whether there is any.",
  protects: "None beside a lost scroll, or a cause without a loss: the reader cannot know which is true.",
  source: { cite: "common practice", confidence: "common-practice" },
  bad: { case: "respiratory: {turbinates: {loss_looks: none}}" },
  good: { case: "respiratory: {turbinates: {loss_looks: undecided}}" },
  check(one, report) {
    const nose = conchae(one);
    if (nose === undefined || nose.losses.length === 0) return;
    const worst = Math.max(...nose.losses, ...Object.values(nose.grades));
    const clear = Math.max(...nose.losses) >= 2;
    const path = [...nose.path, "loss_looks"];
    if (nose.loss_looks === "none" && clear)
      report(
        "respiratory.turbinates.loss_looks: none, yet a concha has lost tissue. Write infectious, environmental or undecided.",
        path,
      );
    else if ((nose.loss_looks === "infectious" || nose.loss_looks === "environmental") && worst === 0)
      report(
        `respiratory.turbinates.loss_looks: ${nose.loss_looks}, yet no concha has lost anything. Write none, or grade the conchae again.`,
        path,
      );
  },
};
