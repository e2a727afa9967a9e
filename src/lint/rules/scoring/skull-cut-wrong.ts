import { valueAt } from "../../../cases/index.ts";
import type { CaseRule } from "../../rule.ts";

export const skullCutWrong: CaseRule = {
  id: "skull-cut-wrong",
  scope: "case",
  family: "scoring",
  level: "warning",
  summary: "The skull is opened by one cut across behind the eyes and one on each side to the condyles.",
  protects: "A cut through the eyes or lengthwise goes through the brain itself.",
  source: { cite: "common practice", confidence: "common-practice" },
  bad: { case: "nervous: {brain: {state: normal, skull_cut: through-the-eyes}}" },
  good: { case: "nervous: {brain: {state: normal, skull_cut: behind-the-eyes}}" },
  check(one, report) {
    const path = ["nervous", "brain", "skull_cut"];
    const cut = valueAt(one.record, path);
    const damaged = valueAt(one.record, ["nervous", "brain", "not_assessable"]) !== undefined;
    if (damaged) return;
    if (cut === "through-the-eyes" || cut === "split-lengthwise")
      report(
        `nervous.brain.skull_cut: ${cut} hits the brain. Saw across one to two centimetres behind the outer corner of the eye, then from each end to the occipital condyle, and lift the roof off. If the brain was hit, write not_assessable: {because: damaged, why: …}.`,
        path,
      );
  },
};
