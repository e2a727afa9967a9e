import { deathMethods, organById } from "../../../knowledge/index.ts";
import { type CaseRule, verified } from "../../rule.ts";

export const brainDestroyed: CaseRule = {
  id: "brain-destroyed",
  scope: "case",
  family: "consistency",
  level: "error",
  summary:
    "A pig whose brain must be seen is not killed by a blow, bolt or shot to the head; if it was, the brain is recorded as damaged.",
  protects: "Bleeding and broken tissue from the kill are read as disease, or hide it.",
  lookAlike:
    "A bolt behind the ear or a blow that spared the brain: accept the finding. Nothing is asked of the blank brain of a sucking piglet killed by a blow, as on most farms.",
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
    const killed = method === undefined ? undefined : deathMethods[method];
    if (brain === undefined || killed?.brain !== "destroyed") return;
    const { status } = one.organ(brain);
    if (status === "not_assessable" || status === "not_examined") return;
    const isUsual = one.ageClass !== undefined && killed.usual_in?.includes(one.ageClass);
    if (status === "blank" && (isUsual || !one.must.has(brain))) return;
    report(
      `death.method: ${method} destroys the brain, ${status === "blank" ? "which is due in this pig" : "yet it is judged here"}. Record it as nervous.brain: {not_assessable: {because: damaged, why: …}}; for the next pig choose a method that spares the head.`,
      ["death", "method"],
    );
  },
};
