import { askedOf, isOpen, isPending } from "../../../record/index.ts";
import { type CaseRule, practice } from "../../rule.ts";

export const pendingThoughAnswered: CaseRule = {
  id: "pending-though-answered",
  scope: "case",
  family: "diagnosis",
  level: "note",
  summary: "A diagnosis stays pending as long as a result is waited for, and no longer.",
  protects:
    "The results are filed and nobody draws the conclusion: next visit asks the laboratory the same again.",
  lookAlike: "A result awaited of a pen mate, or a test to be asked for: say so under diagnosis.comment.",
  source: practice("a case is closed once its results are in; common practice"),
  bad: {
    case: "diagnosis: {aetiologic: [pending]}",
    results:
      "entries: [{sample: 01-A, test: histology, text: lymphocytic cuffs around bronchi}, {sample: 01-B, test: pcr, agent: prrsv, interpretation: negative}, {sample: 01-B, test: culture, interpretation: negative}]",
  },
  good: {
    case: "diagnosis: {aetiologic: [no agent found]}",
    results:
      "entries: [{sample: 01-A, test: histology, text: lymphocytic cuffs around bronchi}, {sample: 01-B, test: pcr, agent: prrsv, interpretation: negative}, {sample: 01-B, test: culture, interpretation: negative}]",
  },
  check(one, report) {
    const { diagnosis } = one.record;
    if (diagnosis === undefined || diagnosis.comment !== undefined || !isPending(one)) return;
    const asked = askedOf(one);
    if (asked.length === 0 || asked.some(isOpen)) return;
    report(
      "diagnosis: pending, and every test that was asked has its result. Write the cause and what it rests on, or that none was found; answered: closes the case.",
      diagnosis.basis === "pending" ? ["diagnosis", "basis"] : ["diagnosis", "aetiologic"],
    );
  },
};
