import { conchae } from "../../../record/index.ts";
import { type CaseRule, verified } from "../../rule.ts";

export const environmentalLossUnmeasured: CaseRule = {
  id: "environmental-loss-unmeasured",
  scope: "case",
  family: "scoring",
  level: "note",
  summary: "Loss put down to the air is backed by an air reading.",
  protects: "Without figures for ammonia and dust the farm is asked to rebuild its ventilation on a guess.",
  lookAlike:
    "Air that was measured in another visit: put the reading into this one with its day, or write undecided until it is measured.",
  source: verified(
    "Hamilton, Roe & Webster 1996; Robertson, Wilson & Smith 1990 (ammonia and dust with snout scores)",
  ),
  bad: {
    case: "respiratory: {turbinates: {loss_looks: environmental}}",
    visit: "environment: [{group: nursery-2, temperature: 25 °C}]",
  },
  good: {
    case: "respiratory: {turbinates: {loss_looks: environmental}}",
    visit: "environment: [{group: nursery-2, ammonia: 28 ppm, dust: 4.1 mg/m3}]",
  },
  check(one, report) {
    const nose = conchae(one);
    if (nose?.loss_looks !== "environmental" || one.visit === undefined) return;
    if (one.visit.faults.some(({ intended }) => intended[0] === "environment")) return;
    const group = one.record.pig?.group;
    const readings = (one.visit.record.environment ?? []).filter((reading) => reading.group === group);
    if (!readings.some(({ ammonia, dust }) => ammonia !== undefined || dust !== undefined))
      report(
        `respiratory.turbinates.loss_looks: environmental, but the visit has no ammonia or dust reading of ${group ?? "the group"}. Measure at pig height and write the readings under environment in visit.yaml.`,
        [...nose.path, "loss_looks"],
      );
  },
};
