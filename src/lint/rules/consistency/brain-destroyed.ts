import { deathMethods, organById } from "../../../knowledge/index.ts";
import { type CaseRule, verified } from "../../rule.ts";

export const brainDestroyed: CaseRule = {
  id: "brain-destroyed",
  scope: "case",
  family: "consistency",
  level: "error",
  summary: "A brain that a blow, bolt or shot destroyed is not judged; it is recorded as damaged.",
  protects: "Bleeding and broken tissue from the kill are read as disease, or hide it.",
  lookAlike:
    "A bolt behind the ear or a blow that spared the brain: accept the finding. Of a blank brain the rules of completeness tell, if it was due.",
  source: verified(
    "Validating the effectiveness of alternative euthanasia techniques using penetrating captive bolt guns in mature swine, 2021 (damage at six brain sites; authors not noted); Casey-Trott, thesis, University of Guelph 2012",
  ),
  bad: { case: "death: {method: captive-bolt}" },
  good: {
    case: "death: {method: captive-bolt}\nnervous: {brain: {not_assessable: {because: damaged, why: captive bolt}}}",
  },
  check(one, report) {
    const method = one.record.death?.method;
    const brain = organById("nervous.brain");
    if (method === undefined || brain === undefined || deathMethods[method]?.brain !== "destroyed") return;
    const { status } = one.organ(brain);
    // Of a blank brain that was due, the rules of completeness tell.
    if (status !== "normal" && status !== "recorded") return;
    report(
      `death.method: ${method} destroys the brain, yet it is judged here. Record it as nervous.brain: {not_assessable: {because: damaged, why: …}}; for the next pig choose a method that spares the head.`,
      ["death", "method"],
    );
  },
};
