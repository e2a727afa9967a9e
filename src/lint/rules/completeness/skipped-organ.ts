/** Organs that must be examined, blank where others of their system are recorded: one line a system. */
import { type Case, formatPath, type Path, pathOf } from "../../../cases/index.ts";
import type { PlacedOrgan } from "../../../knowledge/index.ts";
import { askedOfNormal, blankSystems, placedStates, statesOf } from "../../../record/index.ts";
import { listing } from "../../../words/listing.ts";
import { type CaseRule, practice } from "../../rule.ts";

export const skippedOrgan: CaseRule = {
  id: "skipped-organ",
  scope: "case",
  family: "completeness",
  level: "error",
  summary:
    "Every organ that must be examined is normal, described, not examined with a reason, or not assessable with the cause.",
  protects:
    "An organ that was forgotten cannot be told from a normal one a week later; blank is never normal.",
  lookAlike:
    "An organ that was lost, rotten or left in the carcass: write not_examined or not_assessable with the reason; blank alone is asked about.",
  source: practice(
    "common practice of systematic necropsy; what is a must follows from protocol, age class, sex, signs and manner of death",
  ),
  bad: { case: "lymphoid: {spleen: }" },
  good: { case: "lymphoid: {spleen: {not_examined: lost with the gut}}" },
  check(one, report) {
    for (const { organ, state } of placedStates(one)) {
      if (state !== one.organ(organ)) continue;
      const [at, told = []] = toldAlone(one, organ) ?? [];
      if (at !== undefined)
        report(
          `${formatPath(at)}: only ${listing(told)} ${told.length > 1 ? "are" : "is"} written, which says neither that it is normal nor what was found, and counts as blank. Write state: normal beside it, or findings: [{process: …, ${told[0]}: …}].`,
          at,
          "key",
        );
    }
    for (const { id, whole, must: all } of blankSystems(one)) {
      const must = all.filter((organ) => toldAlone(one, organ) === undefined);
      const [first] = must;
      if (first === undefined || whole) continue;
      if (must.length === 1)
        report(
          `${first.id} is blank and was due${aside(first)}. Write ${asNormal(one, first)}, a finding, or not_examined with the reason.`,
          pathOf(first.id),
          "key",
        );
      else {
        const asked = must.filter((organ) => askedOfNormal(one, organ).length > 0);
        const also = asked.map((organ) => `; a normal ${organ.key} is ${asNormal(one, organ)}`).join("");
        report(
          `${id}: ${listing(must.map((organ) => organ.key + aside(organ)))} are blank and were due. Write "rest: normal" under ${id} if they were examined and are normal, "rest: {not_examined: why}" if not, or record each${also}.`,
          pathOf(id),
          "key",
        );
      }
    }
  },
};

/** How a normal organ is written: by one word, or with what must be observed of it. */
function asNormal(one: Case, organ: PlacedOrgan): string {
  const asked = askedOfNormal(one, organ);
  return asked.length === 0 ? "normal" : `{state: normal, ${asked.join(", ")}}`;
}

const aside = (organ: PlacedOrgan): string =>
  organ.definition.forgotten === true ? " (often forgotten)" : "";

/** What is told of an organ, or of a side, that is called neither normal nor anything else, and where. */
function toldAlone(one: Case, organ: PlacedOrgan): [Path, string[]] | undefined {
  if (one.organ(organ).status !== "blank") return undefined;
  for (const { path, entry } of statesOf(one, organ)) {
    const told = ["note", "size", "weight"].filter((key) => entry?.[key] !== undefined);
    if (told.length > 0) return [path, told];
  }
  return undefined;
}
