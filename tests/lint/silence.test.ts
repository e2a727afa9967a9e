/** No private advice on samples while an alarm is open, and none on what to take once the authority was called. */
import { describe, expect, it } from "vitest";
import { rules } from "../../src/lint/index.ts";
import { lintExample } from "./lay-example.ts";

const alarm = "alarm_check: {before_knife: {vesicles: seen}}";
const called = "authority: [{at: 2026-04-20T09:00, stands: reported}]";

/** Whether a rule speaks of its own bad example, with more in the case. */
const speaks = (id: string, more: string): boolean => {
  const rule = rules.find((one) => one.id === id);
  if (rule === undefined) throw new Error(`no rule ${id}`);
  const { findings } = lintExample({ ...rule.bad, case: `${rule.bad.case ?? ""}\n${more}` }, { only: [id] });
  return findings.length > 0;
};

const onSamples = rules
  .filter(({ family, id }) => ["sampling", "timing"].includes(family) || id === "sample-organ-not-examined")
  .map(({ id }) => id);

const sets = [
  "lesion-not-sampled",
  "one-organ-sampled",
  "lung-pieces-few",
  "polyserositis-lung-only",
  "enteric-set-incomplete",
  "joint-only-fixed",
  "meningitis-without-fluid",
  "brain-not-halved",
  "abortion-set-small",
  "abortion-without-placenta",
  "toxin-gene-not-asked",
  "toxicology-without-source",
];
const answers = ["toxin-test-material", "toxin-test-misdated"];

describe("rules on samples", () => {
  it("are silent while an alarm is open, but for those on answers that came back", () => {
    expect(onSamples.length).toBeGreaterThan(60);
    expect(onSamples.filter((id) => speaks(id, alarm)).sort()).toEqual(answers);
  });

  it("speak after the call, but for those that ask for more samples", () => {
    expect(onSamples.filter((id) => !speaks(id, called)).sort()).toEqual([...sets].sort());
  });
});
