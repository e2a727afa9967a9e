/** One voice while an alarm is open: nothing more is asked for. After the call, no advice on samples. */
import { describe, expect, it } from "vitest";
import { type Example, rules } from "../../src/lint/index.ts";
import { asking } from "../../src/lint/rule.ts";
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
/** What contradicts itself on the carcass. */
const seen = ["autolysed-gut-normal", "carcass-state-implausible"];
/** Across the archive, and what the reader finds. */
const archive = rules
  .filter(({ scope, family }) => scope === "archive" && asking.has(family))
  .map(({ id }) => id);
const formats = rules
  .filter(({ scope, family }) => scope === "format" && asking.has(family))
  .map(({ id }) => id);

describe("rules on samples", () => {
  it("are silent while an alarm is open, but for those on answers that came back", () => {
    expect(onSamples.length).toBeGreaterThan(60);
    expect(onSamples.filter((id) => speaks(id, alarm)).sort()).toEqual([...answers, ...seen].sort());
  });

  it("speak after the call, but for those that ask for more samples", () => {
    expect(onSamples.filter((id) => !speaks(id, called)).sort()).toEqual([...sets].sort());
  });
});

/** What contradicts itself, and answers that came back: each says of itself that it is no question. */
const never = rules
  .filter(
    ({ silent, scope, family }) =>
      silent === "never" && asking.has(family) && !["archive", "format"].includes(scope),
  )
  .map(({ id }) => id);
const ofVisit = rules.find(({ id }) => id === "alarm-in-herd");
const asked = rules.filter(({ family }) => asking.has(family)).map(({ id }) => id);

describe("rules that ask for more", () => {
  it("are silent while an alarm is open, but for those that find what contradicts itself", () => {
    expect(asked.length).toBeGreaterThan(150);
    expect(asked.filter((id) => speaks(id, alarm)).sort()).toEqual([...never, ...archive, ...formats].sort());
  });

  it("ask for no organ, pig, brain or sample of a bare carcass with a vesicle", () => {
    const { findings } = lintExample({
      case: `${alarm}\nexternal: {ears: , snout: [{process: vesicle}]}\nlymphoid: \nnervous: \nsamples: \nopened: \nselection: \ndiagnosis: `,
      visit: "pigs: {few: }\ncomplaint: \nenvironment: ",
    });
    expect([...new Set(findings.map(({ rule }) => rule.split("-")[0]))]).toEqual(["alarm"]);
  });

  it("ask the visit for no further pig, and do not call an accepted entry unused", () => {
    const { findings } = lintExample({
      case: `${alarm}\naccepted: [{rule: treated-pig, because: the whole room is on it}]`,
      visit: "pigs: {few: }\ncomplaint: ",
    });
    expect(findings.filter(({ rule }) => !rule.startsWith("alarm-"))).toEqual([]);
  });

  it("ask no other pig of the visit for organs, but say what is wrong in its record, unless the alarm is one of the visit as a whole", () => {
    const other = "case: birch-2026-04-20-02\npig: {tag: '902'}\nlymphoid: {spleen: }\nselection: {onset: }";
    const cases = "cases: [birch-2026-04-20-01, birch-2026-04-20-02]";
    const ofOther = (example: Example) =>
      lintExample(example)
        .findings.filter(({ file }) => file.endsWith("pig-02.yaml"))
        .map(({ rule }) => rule);
    const both = ofOther({ case: "", others: [other], visit: cases });
    expect(both).toContain("skipped-organ");
    expect(both.length).toBeGreaterThan(1);
    const left = both.filter((rule) => rule !== "skipped-organ");
    expect(ofOther({ case: alarm, others: [other], visit: cases })).toEqual(left);
    const alarms = ofVisit?.bad;
    expect(alarms).toBeDefined();
    const whole = ofOther({ ...alarms, others: [...(alarms?.others ?? []), other] });
    for (const rule of both) expect(whole).not.toContain(rule);
  });

  it("ask for organs and samples where a disease is only to be excluded, and no stop stands", () => {
    const plaques =
      "external: {skin: [{process: plaque, shape: round, colour: purple, distribution: multifocal, severity: marked}]}\nurinary: {kidneys: [{process: petechiae, distribution: diffuse}]}";
    const of = (more: string) =>
      lintExample({ case: `${plaques}\nlymphoid: {spleen: }\n${more}` }).findings.map(({ rule }) => rule);
    const found = of("");
    for (const rule of ["alarm-exclude", "skipped-organ", "lesion-not-sampled"])
      expect(found).toContain(rule);
    const stop = of(alarm);
    for (const rule of ["skipped-organ", "lesion-not-sampled"]) expect(stop).not.toContain(rule);
  });

  it("say a disease once, by the strongest alarm of the pig, and the weaker one again when the authority lifts that", () => {
    const of = (more: string) =>
      lintExample({
        case: `external: {skin: [{process: plaque, colour: purple, distribution: multifocal}]}\nurinary: {kidneys: [{process: petechiae}]}\nlymphoid: {renal_nodes: [{process: haemorrhage}]}\n${more}`,
      })
        .findings.map(({ rule }) => rule)
        .filter((rule) => ["alarm-pattern", "alarm-exclude"].includes(rule));
    expect(of("")).toEqual(["alarm-pattern"]);
    const lifted = (name: string) =>
      `authority: [{at: 2026-04-22, stands: excluded, for: [${name}], sample: PCR of blood}]`;
    expect(of(lifted("petechiae-and-haemorrhagic-nodes"))).toEqual(["alarm-exclude"]);
    expect(of(lifted("petechiae-and-haemorrhagic-nodes, round-skin-plaques-and-spotted-kidneys"))).toEqual(
      [],
    );
  });
});
