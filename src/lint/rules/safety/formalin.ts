/** How formalin was handled, against what was put into it. */
import { formalinSamples } from "../../../record/index.ts";
import { count } from "../../../words/listing.ts";
import { type CaseRule, practice, type RuleRow, verified } from "../../rule.ts";

interface Handling extends RuleRow {
  /** What the case records of it; undefined when it says nothing. */
  readonly handled: "indoors" | "none" | undefined;
  /** @returns undefined where that is in order */
  says(samples: number): string | undefined;
}

const rows: readonly Handling[] = [
  {
    id: "formalin-indoors",
    level: "warning",
    summary: "Formalin is handled in the open air or under extraction.",
    protects:
      "Formaldehyde is toxic, sensitises and may cause cancer; 29 CFR 1910.1048 allows 0.75 ppm over eight hours, and an open pot passes it.",
    lookAlike:
      "Prefilled pots that were opened for seconds in a room with the fan on: that is extraction where the air is drawn off, and indoors where it is not.",
    source: verified("29 CFR 1910.1048 (b), (c)"),
    bad: { case: "safety: {formalin: indoors}" },
    good: { case: "safety: {formalin: extraction}" },
    handled: "indoors",
    says: () =>
      "formalin was handled indoors. Go outside or work under extraction, use prefilled pots, and keep the lids on.",
  },
  {
    id: "formalin-handling-unrecorded",
    level: "note",
    summary:
      "If samples went into formalin and there is a safety entry, it says where the formalin was handled.",
    protects: "Whoever stood at the table is owed an answer if the cough starts later.",
    lookAlike:
      "A colleague poured the formalin elsewhere: write where that was; without an entry under safety nothing is asked at all.",
    source: practice("common practice of occupational safety: exposure to formalin is recorded"),
    bad: { case: "safety: {protection: [gloves, cut-proof-glove, eye-protection, mask]}" },
    good: {
      case: "safety: {protection: [gloves, cut-proof-glove, eye-protection, mask], formalin: open-air}",
    },
    handled: undefined,
    says: (samples) =>
      samples > 0
        ? `${count(samples, "sample")} in formalin, and nothing says where it was handled. Write open-air, extraction or indoors.`
        : undefined,
  },
  {
    id: "formalin-denied",
    level: "warning",
    summary: "A case with samples in formalin does not say that none was used.",
    protects:
      "One of the two entries is wrong: either the sample was never fixed, or the exposure is not recorded.",
    lookAlike:
      "Pieces that went into formalin at the laboratory: here they were chilled, so write into: chilled; none is then true.",
    source: practice("common practice of recording: two entries on one thing agree"),
    bad: { case: "safety: {formalin: none}" },
    good: { case: "safety: {formalin: open-air}" },
    handled: "none",
    says: (samples) =>
      samples > 0
        ? `none, but ${count(samples, "sample")} went into formalin. Say where it was handled, or correct the sample.`
        : undefined,
  },
];

export const formalinRules: readonly CaseRule[] = rows.map(({ handled, says, ...row }) => ({
  ...row,
  scope: "case",
  family: "safety",
  check(one, report) {
    const { safety } = one.record;
    if (safety === undefined || safety.formalin !== handled) return;
    const wrong = says(formalinSamples(one));
    if (wrong !== undefined)
      report(`safety.formalin: ${wrong}`, ["safety", "formalin"], handled === undefined ? "key" : "value");
  },
}));
