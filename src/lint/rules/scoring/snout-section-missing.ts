import { missingObservations } from "../../../record/index.ts";
import { type CaseRule, verified } from "../../rule.ts";

export const snoutSectionMissing: CaseRule = {
  id: "snout-section-missing",
  scope: "case",
  family: "scoring",
  level: "error",
  summary: "The level at which the snout was sawn is recorded.",
  protects:
    "The same snout scores higher when sawn further forward, so a score without its level cannot be compared.",
  lookAlike:
    "A snout that was looked at from outside only: write not_examined under turbinates, or leave them to rest: {not_examined: …}; nothing was sawn.",
  source: verified(
    "Corrégé, Sallé, Monziols & Volant 2013, Journées de la Recherche Porcine (203 snouts against computed tomography)",
  ),
  bad: { case: "respiratory: {turbinates: {section: }}" },
  good: { case: "respiratory: {turbinates: {section: between-premolars-1-2}}" },
  check(one, report) {
    for (const { organ, observation, path } of missingObservations(one))
      if (organ.id === "respiratory.turbinates" && observation === "section")
        report(
          "respiratory.turbinates.section: say where the snout was sawn. Write section: premolar-1 if it was at the first upper premolar (the corner of the mouth, seen from outside); for a normal snout write turbinates: {state: normal, section: premolar-1}. If it was not sawn, write turbinates: {not_examined: snout not sawn}.",
          path,
          "key",
        );
  },
};
