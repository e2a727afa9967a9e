/** Normal, said of many organs at once: what counts, what is refused, and what is gone with a carcass that was closed. */
import { describe, expect, it } from "vitest";
import { readCases } from "../../src/cases/index.ts";
import { organById } from "../../src/knowledge/index.ts";
import { lintCases } from "../../src/lint/index.ts";
import { put, temporaryFolder } from "./temporary.ts";

const head = `format: 1
case: p-1
protocol: full
examiner: R. Sallow
pig: {tag: "1", group: g-1, age: 58 d, sex: female, weight: 17.5 kg}
selection: {basis: comparison, signs: [none], treated: no}
death: {manner: euthanised, method: barbiturate, at: 2026-04-20T09:10}
opened: {at: 2026-04-20T09:40, state: fresh}
`;
const looked = `alarm_check:
  before_knife: {vesicles: none, skin_haemorrhage: none, throat_swelling: none, bloody_orifices: none}
  at_knife: {dark_spleen: none, bloody_nodes: none, petechiae: none, button_ulcers: none, bloody_fluid: none, pale_heart: none}
`;

function read(keys: string) {
  const root = temporaryFolder();
  put(root, { "p.yaml": head + keys });
  return readCases(["."], { from: root });
}
const lint = (keys: string) => lintCases(read(keys));
function stateOf(id: string, keys: string) {
  const organ = organById(id);
  const [one] = read(keys).cases;
  if (organ === undefined || one === undefined) throw new Error("no case");
  return one.organ(organ);
}

/** Four ways to say that the heart was looked at and is normal. */
const ways = [
  "cardiovascular: {heart: normal}\n",
  "cardiovascular: normal\n",
  "cardiovascular: {rest: normal}\n",
  "normal: [cardiovascular]\n",
  "normal: [cardiovascular.heart]\n",
];

describe("normal, said of many", () => {
  it.each(ways)("is the same statement of an organ: %s", (way) => {
    expect(stateOf("cardiovascular.heart", way).status).toBe("normal");
  });

  it.each([
    [
      "a sign that was seen",
      looked.replace("pale_heart: none", "pale_heart: seen"),
      "alarm-check-contradicted",
    ],
    [
      "a diagnosis",
      'diagnosis: {morphologic: ["Heart: myocarditis, multifocal, acute, moderate"]}\n',
      "diagnosis-without-lesion",
    ],
  ])("is contradicted in each form by %s", (_, says, rule) => {
    for (const way of ways)
      expect(
        lint(way + says).findings.map((one) => one.rule),
        way,
      ).toContain(rule);
  });

  it("counts by system, and organ by organ where organs are named", () => {
    const [all] = lint("cardiovascular: {rest: normal}\n").completeness;
    const [some] = lint("normal: [cardiovascular.heart]\n").completeness;
    expect([all?.examined, all?.by_system]).toEqual([4, 4]);
    expect([some?.examined, some?.by_system]).toEqual([1, 0]);
  });

  it.each([
    ["respiratory: {rest: normal}\n", "blank"],
    ["normal: [respiratory]\n", "blank"],
    ["normal: [respiratory.turbinates]\n", "normal"],
    ["respiratory: normal\n", "blank"],
  ])("is no answer for a snout that was to be sawn: %s", (keys, status) => {
    expect(stateOf("respiratory.turbinates", keys).status).toBe(status);
    expect(stateOf("locomotor.joints", "normal: [locomotor]\n").status).toBe("blank");
    const root = temporaryFolder();
    put(root, { "p.yaml": head.replace("[none]", "[sneezing]") + keys });
    const said = lintCases(readCases(["."], { from: root })).findings.map(({ message }) => message);
    expect(said.join("\n")).toMatch(/turbinates/);
  });

  it.each([
    [
      "normal: [lymphoid.tonsil]\nlymphoid: {tonsil: [{process: abscess, size: 4 mm, distribution: focal}]}\n",
    ],
    ["normal: [lymphoid.tonsil]\nlymphoid: {tonsil: {not_examined: head kept}}\n"],
    ["normal: [lymphoid]\nlymphoid: {tonsil: [{process: abscess, size: 4 mm, distribution: focal}]}\n"],
    ["normal: [urinary]\nnot_examined: [{systems: [urinary], because: back left closed}]\n"],
  ])("is refused where the record says otherwise: %s", (keys) => {
    expect(lint(keys).findings.map((one) => one.rule)).toContain("normal-with-finding");
  });

  it("names an organ of a system whose others were left alone", () => {
    const keys = "normal: [respiratory.lungs]\nrespiratory: {rest: {not_examined: neck left closed}}\n";
    expect(stateOf("respiratory.lungs", keys).status).toBe("normal");
    expect(stateOf("respiratory.trachea", keys).status).toBe("not_examined");
    expect(lint(keys).findings.map((one) => one.rule)).not.toContain("normal-with-finding");
  });

  it.each(ways.slice(1, 4))("is gone when the carcass was closed early: %s", (way) => {
    const closed = "closed: {at: 2026-04-20T09:50, because: throat swollen}\n";
    expect(stateOf("cardiovascular.heart", way + closed).status).toBe("blank");
  });

  it.each([
    ["lungs", "Did you mean respiratory.lungs?"],
    ["tonsils", "Did you mean lymphoid.tonsil?"],
    ["urinray", "Did you mean urinary?"],
    ["pig", "or an organ such as respiratory.lungs"],
    ["all", "or an organ such as respiratory.lungs"],
  ])("has no word for the whole pig, and says what was meant: %s", (word, says) => {
    const { findings } = lint(`normal: [${word}]\n`);
    const [fault] = findings.filter(({ rule }) => rule === "case-format");
    expect([fault?.line, fault?.message]).toEqual([9, expect.stringContaining(says)]);
    expect(fault?.message.length).toBeLessThan(300);
  });
});

describe("keys that are left blank", () => {
  it.each([
    ["stomach_content: ", "lost"],
    ["stomach_content: {milk: }", "lost"],
    ["stomach_content: {note: looked at, milk: }", undefined],
    ["stomach_content: {not_examined: }", undefined],
    ["stomach_content: {milk: yes}", undefined],
  ])("are answered by the rest, and an organ of which more is said is not: %s", (content, reason) => {
    const state = stateOf("stomach.stomach_content", `stomach: {${content}, rest: {not_examined: lost}}\n`);
    expect(state.reason).toBe(reason);
  });
});
