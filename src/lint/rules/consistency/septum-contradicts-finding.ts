import { formatPath } from "../../../cases/index.ts";
import { conchae, lesions } from "../../../record/index.ts";
import { type CaseRule, practice } from "../../rule.ts";

export const septumContradictsFinding: CaseRule = {
  id: "septum-contradicts-finding",
  scope: "case",
  family: "consistency",
  level: "error",
  summary: "A septum with a deviation is not called straight.",
  protects: "Some scales count the septum; they read the word, not the finding.",
  source: practice("meaning of the words"),
  bad: {
    case: "respiratory: {turbinates: {findings: [{process: deviation, site: septum, distribution: focal, size: 4 mm}]}}",
  },
  good: {
    case: "respiratory: {turbinates: {septum: slight, findings: [{process: deviation, site: septum, distribution: focal, size: 4 mm}]}}",
  },
  check(one, report) {
    const nose = conchae(one);
    if (nose?.septum !== "straight") return;
    const [lesion] = lesions(one, { processes: ["deviation"], organs: ["respiratory.turbinates"] });
    if (lesion !== undefined)
      report(
        `${formatPath(lesion.path)}: a deviation, yet the septum is straight. Write septum: slight or marked, or take the finding out.`,
        [...nose.path, "septum"],
      );
  },
};
