/** What a case says of an organ, in all forms in which it can be said. */
import { describe, expect, it } from "vitest";
import { organState } from "../../src/cases/model/organ-state.ts";
import { organById } from "../../src/knowledge/index.ts";
import { readingCase } from "./reading.ts";

function stateOf(id: string, keys: string) {
  const organ = organById(id);
  const { messages, raw } = readingCase(keys);
  if (organ === undefined || raw === undefined || messages.length > 0)
    throw new Error(`${id}: ${messages.join()}`);
  return organState(raw, organ);
}

describe("the state of an organ", () => {
  it.each([
    ["", "blank"],
    ["liver_pancreas: ", "blank"],
    ["liver_pancreas: {pancreas: normal}", "blank"],
    ["liver_pancreas: {liver: }", "blank"],
    ["liver_pancreas: {liver: {}}", "blank"],
    ["liver_pancreas: {liver: {note: looked at}}", "blank"],
    ["liver_pancreas: {liver: {weight: 900 g, size: 20 cm, photos: [a.jpg], tracing: a.svg}}", "blank"],
    ["liver_pancreas: {liver: {findings: }}", "blank"],
    ["liver_pancreas: {liver: {state: }}", "blank"],
    ["liver_pancreas: normal", "normal"],
    ["liver_pancreas: {liver: normal}", "normal"],
    ["liver_pancreas: {liver: {state: normal, weight: 900 g}}", "normal"],
    ["liver_pancreas: {liver: {not_examined: left in the pig}}", "not_examined"],
    ["liver_pancreas: {liver: {not_examined: }}", "not_examined"],
    ["liver_pancreas: {liver: {not_examined: x, findings: [{process: oedema}]}}", "not_examined"],
    ["liver_pancreas: {liver: {not_assessable: {because: autolysed}}}", "not_assessable"],
    ["liver_pancreas: {liver: {not_assessable: }}", "not_assessable"],
    ["liver_pancreas: {liver: [{process: milk-spots}]}", "recorded"],
    ["liver_pancreas: {liver: {findings: [{process: milk-spots}]}}", "recorded"],
    ["liver_pancreas: {liver: {grades: {own: 2}}}", "recorded"],
    ["liver_pancreas: {liver: {grades: }}", "blank"],
  ])("liver: %s is %s", (keys, status) => {
    expect(stateOf("liver_pancreas.liver", keys).status).toBe(status);
  });

  it.each([
    ["{left: normal, right: normal}", "normal", ["normal", "normal"]],
    ["{left: normal}", "recorded", ["normal"]],
    ["{left: normal, right: }", "recorded", ["normal", "blank"]],
    ["{left: [{process: cyst}], right: normal}", "recorded", ["recorded", "normal"]],
    ["{left: , right: }", "blank", ["blank", "blank"]],
    [
      "{left: {not_examined: lost}, right: {not_examined: lost}}",
      "not_examined",
      ["not_examined", "not_examined"],
    ],
    ["{left: {not_assessable: {because: absent}}, right: normal}", "recorded", ["not_assessable", "normal"]],
    ["{state: normal, weight: 40 g}", "normal", []],
    ["[{process: petechiae}]", "recorded", []],
    ["normal", "normal", []],
  ])("kidneys: %s is %s", (written, status, sides) => {
    const state = stateOf("urinary.kidneys", `urinary: {kidneys: ${written}}`);
    expect([state.status, state.sides.map((one) => one.state.status)]).toEqual([status, sides]);
    expect(state.sides.map((one) => one.state.path)).toEqual(
      state.sides.map(({ side }) => ["urinary", "kidneys", side]),
    );
  });

  it("takes left and right of an organ that is not paired for observations", () => {
    const state = stateOf("respiratory.turbinates", "respiratory: {turbinates: {left: {dorsal: 1}}}");
    expect([state.status, state.sides]).toEqual(["recorded", []]);
  });

  it("tells an organ that is normal by its system from one that is normal by itself", () => {
    const bySystem = stateOf("urinary.bladder", "urinary: normal");
    expect([bySystem.bySystem, bySystem.path]).toEqual([true, ["urinary"]]);
    const byItself = stateOf("urinary.bladder", "urinary: {bladder: normal}");
    expect([byItself.bySystem, byItself.path]).toEqual([false, ["urinary", "bladder"]]);
  });

  it("gives reasons and the paths of findings", () => {
    expect(stateOf("liver_pancreas.liver", "liver_pancreas: {liver: {not_examined: lost}}").reason).toBe(
      "lost",
    );
    const assessable = stateOf(
      "liver_pancreas.liver",
      "liver_pancreas: {liver: {not_assessable: {because: damaged, why: saw}}}",
    );
    expect([assessable.because, assessable.reason]).toEqual(["damaged", "saw"]);
    expect(
      stateOf(
        "liver_pancreas.liver",
        "liver_pancreas: {liver: [{process: scar}, {process: cyst}]}",
      ).findings.map(({ path }) => path),
    ).toEqual([
      ["liver_pancreas", "liver", 0],
      ["liver_pancreas", "liver", 1],
    ]);
    expect(
      stateOf("liver_pancreas.liver", "liver_pancreas: {liver: {findings: [{process: scar}]}}").findings[0]
        ?.path,
    ).toEqual(["liver_pancreas", "liver", "findings", 0]);
  });

  it("never reads what an object inherits", () => {
    const organ = organById("liver_pancreas.liver");
    if (organ === undefined) throw new Error("no liver");
    expect(organState(Object.create({ liver_pancreas: "normal" }), organ).status).toBe("blank");
    expect(organState({ liver_pancreas: Object.create({ liver: "normal" }) }, organ).status).toBe("blank");
  });
});
