import type { Case } from "../../../cases/index.ts";
import { organById } from "../../../knowledge/index.ts";
import { findingsOf, isLesion } from "../../../record/index.ts";
import { type CaseRule, practice } from "../../rule.ts";

const joints = organById("locomotor.joints");
const locomotorSigns = ["lameness", "swollen-joints"];

export const lamePigJoints: CaseRule = {
  id: "lame-pig-joints",
  scope: "case",
  family: "completeness",
  level: "error",
  summary: "In a lame pig at least two joints are opened.",
  protects:
    "One joint cannot tell an infection of many joints from an injury of one, and a lame pig with no joint opened answers nothing.",
  lookAlike:
    "Lameness from a broken leg or a claw: record it under feet, muscles, bones, vertebrae or growth plates, and joints left closed with a reason are passed, and so are joints that could not be judged.",
  source: practice(
    "common practice at diagnostic laboratories: several joints of one pig, after the joint table of Iowa State University",
  ),
  bad: {
    case: "selection: {signs: [lameness]}\nlocomotor: {joints: {state: normal, opened: [left-hock]}, costochondral_junctions: normal, growth_plates: normal, muscles: normal}",
  },
  good: {
    case: "selection: {signs: [lameness]}\nlocomotor: {joints: {state: normal, opened: [left-hock, left-elbow]}, costochondral_junctions: normal, growth_plates: normal, muscles: normal}",
  },
  check(one, report) {
    const sign = one.signs.find((word) => locomotorSigns.includes(word));
    if (joints === undefined || sign === undefined) return;
    const state = one.organ(joints);
    const opened = state.entry?.opened;
    if (state.status === "not_examined" && !isExplained(one))
      report(
        `locomotor.joints: not examined in a pig with ${sign}. Open at least two joints, the bad one and one that looks sound, and list them under opened.`,
        state.path,
      );
    else if (Array.isArray(opened) && new Set(opened).size < 2)
      report(
        `locomotor.joints.opened: ${new Set(opened).size === 0 ? "none" : "one joint"} opened in a pig with ${sign}. Open at least two, the bad one and one that looks sound, and list them.`,
        [...state.path, "opened"],
      );
  },
};

/** Whether another part of a leg or of the spine shows why the pig was lame. */
const isExplained = (one: Case): boolean =>
  findingsOf(one).some(
    ({ organ, finding }) =>
      isLesion(finding) && (organ.system === "locomotor" || organ.id === "external.feet") && organ !== joints,
  );
