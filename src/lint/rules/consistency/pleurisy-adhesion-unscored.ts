import { formatPath, valueAt } from "../../../cases/index.ts";
import { lesions, namedSide } from "../../../record/index.ts";
import { type CaseRule, practice } from "../../rule.ts";

const path = ["respiratory", "pleura", "pleurisy"];

export const pleurisyAdhesionUnscored: CaseRule = {
  id: "pleurisy-adhesion-unscored",
  scope: "case",
  family: "consistency",
  level: "error",
  summary: "Where there are pleural adhesions, the pleurisy of that side is not none.",
  protects:
    "The adhesion is described and then scored as absent; the pleurisy figures of the herd come out too low.",
  source: practice("common practice of scoring: an adhesion of the pleura is pleurisy"),
  bad: {
    case: "respiratory: {pleura: {pleurisy: {left: none, right: none}, findings: [{process: adhesion, site: right caudal lobe, distribution: focal, size: 40 mm}]}}",
  },
  good: {
    case: "respiratory: {pleura: {pleurisy: {left: none, right: dorsocaudal-focal}, findings: [{process: adhesion, site: right caudal lobe, distribution: focal, size: 40 mm}]}}",
  },
  check(one, report) {
    const none = (side: string): boolean => {
      const value = valueAt(one.record, [...path, side]);
      return value === "none" || (Array.isArray(value) && value.every((word) => word === "none"));
    };
    for (const { finding, path: at } of lesions(one, {
      processes: ["adhesion", "fibrosis", "scar"],
      organs: ["respiratory.pleura"],
    })) {
      const side = namedSide(finding.site);
      if (side === undefined ? none("left") && none("right") : none(side))
        report(
          `${formatPath(at)}: ${finding.process}${side === undefined ? "" : ` on the ${side}`}, yet respiratory.pleura.pleurisy says none. Write where it lies, such as ${side ?? "left"}: dorsocaudal-focal.`,
          side === undefined ? path : [...path, side],
        );
    }
  },
};
