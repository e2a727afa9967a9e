/** A carcass that was closed on suspicion: one line in its file, and nothing after it is due. */
import { describe, expect, it } from "vitest";
import { readCases } from "../../src/cases/index.ts";
import { lintText } from "../../src/formats/lint/text.ts";
import { makeStyle } from "../../src/formats/page/style.ts";
import { herdEstimates } from "../../src/herd/index.ts";
import { lintCases } from "../../src/lint/index.ts";
import { scoreCases } from "../../src/score/index.ts";
import { put, temporaryFolder } from "../cases/temporary.ts";

const head = `format: 1
case: closed-1
examiner: R. Sallow
pig: {tag: "901", group: g-1, age: 58 d, sex: female}
selection: {basis: clinical, signs: [fever], onset: 36 h, treated: no, typical: yes}
death: {manner: euthanised, method: barbiturate, at: 2026-04-20T09:10}
alarm_check: {before_knife: {vesicles: none, skin_haemorrhage: none, throat_swelling: none, bloody_orifices: none}}
closed: {at: 2026-04-20T09:50, because: the throat felt thick}
`;

const lint = (text: string) => {
  const root = temporaryFolder();
  put(root, { "pig.yaml": text });
  return lintCases(readCases(["."], { from: root }));
};

describe("a carcass that was closed on suspicion", () => {
  it("is asked for no organ, observation, sample or fact of a later step", () => {
    expect(lint(head).findings).toEqual([]);
  });

  it("is asked for all of it without that line", () => {
    const rules = new Set(lint(head.replace(/closed: .*\n/, "")).findings.map(({ rule }) => rule));
    expect([...rules]).toEqual(expect.arrayContaining(["fact-missing", "skipped-system"]));
  });

  it.each([
    ["examiner: R. Sallow\n", "fact-missing"],
    ["death: {manner: euthanised, method: barbiturate, at: 2026-04-20T09:10}\n", "fact-missing"],
  ])("is still asked for what comes before: %s", (line, rule) => {
    expect(lint(head.replace(line, "")).findings.map((one) => one.rule)).toContain(rule);
  });

  it.each([
    [
      "lymphoid: {spleen: {state: normal, findings: [{process: infarct, distribution: focal, size: 8 mm}]}}\n",
      "normal-with-finding",
    ],
    ["external: {skin: [{process: pallor, distribution: diffuse, colour: red}]}\n", "process-impossible"],
    ["opened: {at: 2026-04-20T08:00}\n", "dates-out-of-order"],
    ["opened: {at: 2026-04-20T10:00}\n", "dates-out-of-order"],
  ])("is checked in what is recorded: %s", (line, rule) => {
    expect(lint(head + line).findings.map((one) => one.rule)).toContain(rule);
  });

  it.each(["closed: {at: 2026-04-20T09:50}", "closed: {because: later}", "closed: yes"])(
    "says what was seen: %s",
    (line) => {
      const { findings } = lint(head.replace(/closed: .*/, line));
      expect(findings.filter(({ path }) => path.startsWith("closed"))).toHaveLength(1);
    },
  );

  it("has a line of its own in place of the count", () => {
    const result = lint(head);
    expect(result.completeness[0]).toMatchObject({ due: 0, closed: true });
    expect(
      lintText(result, {
        style: makeStyle(false),
        quiet: false,
        width: Number.POSITIVE_INFINITY,
        passedOver: [],
      }),
    ).toContain("closed-1  closed on suspicion\n");
  });

  it("counts in the herd as not examined, and its scores say why", () => {
    const root = temporaryFolder();
    put(root, { "pig.yaml": head });
    const { cases } = readCases(["."], { from: root });
    const { estimates } = herdEstimates(cases);
    expect(estimates.length).toBeGreaterThan(5);
    expect(estimates.filter((one) => one.examined !== 0 || one.not_examined !== 1)).toEqual([]);
    const [scored] = scoreCases(cases).cases;
    expect(scored?.scores.map(({ value, reason }) => [value, reason])).toContainEqual([
      null,
      "not examined: closed on suspicion (the throat felt thick)",
    ]);
  });
});
