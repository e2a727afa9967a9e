import { sealedStateOf } from "../../../seals/index.ts";
import { type FileRule, practice } from "../../rule.ts";

export const sealedRecordChanged: FileRule = {
  id: "sealed-record-changed",
  scope: "file",
  family: "history",
  silent: "never",
  level: "error",
  summary: "A record that was signed off stays as it was, or says who changed it, when and why.",
  protects:
    "A report that left the house rests on the record as it was signed; a grade that was changed afterwards without a word makes both worthless.",
  lookAlike:
    "A mistake that was put right after the signature: carcase seal --amend says who did so and why. Comments, layout and the order of keys are no change; a default of the visit is one.",
  source: practice(
    "good documentation practice: a signed record is amended with name, day and reason, and never overwritten",
  ),
  bad: {
    case: `seals: [{by: A. Berg, at: 2026-04-21T18:20, sha256: ${"d7a8fbb307d7809469ca9abcb0082e4f".repeat(2)}}]`,
  },
  good: { case: "note: not signed off yet" },
  check(one, report) {
    if ("organ" in one || "results" in one) {
      const { state, seal, seals } = sealedStateOf(one);
      if (state !== "broken" || seal === undefined) return;
      report(
        `changed since ${seal.by} signed it on ${seal.at.slice(0, 10)}. Undo the change, or say who made it and why: carcase seal --amend --by NAME --because TEXT ${one.file}`,
        ["seals", seals.length - 1],
      );
    }
  },
};
