/** What is due, and how loud: must, wanted or on sign; one line a system; reasons that are given once and heard. */
import { describe, expect, it } from "vitest";
import { lintExample } from "./lay-example.ts";

const found = (text: string, visit?: string) =>
  lintExample({ case: text, ...(visit === undefined ? {} : { visit }) }).findings.map(
    ({ level, rule, path }) => `${level} ${rule} ${path}`,
  );

describe("a class that cannot be read", () => {
  it("is put right before anything is asked for that depends on it", () => {
    const blank = "lymphoid: {spleen: }\nurinary: \nselection: {treated: }";
    expect(found(`pig: {class: abort, age: }\n${blank}`)).toEqual(["error alarm-cannot-be-told pig.class"]);
    expect(found(`pig: {class: weaner, age: }\n${blank}`).length).toBeGreaterThan(2);
  });
});

describe("organs that are left blank", () => {
  it.each([
    ["a must", "lymphoid: {spleen: }", ["error skipped-organ lymphoid.spleen"]],
    ["a wanted one", "liver_pancreas: {pancreas: }", []],
    ["two", "lymphoid: {spleen: , tonsil: }", ["error skipped-organ lymphoid"]],
    ["a must and a wanted one", "lymphoid: {spleen: , thymus: }", ["error skipped-organ lymphoid.spleen"]],
    ["a whole system", "urinary: ", ["error skipped-system urinary"]],
    ["the rest, said to be normal", "lymphoid: {spleen: , tonsil: , rest: normal}", []],
    ["the rest, with a reason", "lymphoid: {spleen: , tonsil: , rest: {not_examined: cut away}}", []],
    [
      "the rest, without a reason",
      "lymphoid: {spleen: , tonsil: , rest: {not_examined: }}",
      ["error not-examined-without-reason lymphoid.rest.not_examined"],
    ],
    [
      "the brain, where the skull stayed closed",
      "nervous: {meninges: {not_examined: skull left closed}, brain: }",
      [],
    ],
    ["the pars oesophagea of a weaner", "stomach: {pars_oesophagea: }", []],
    ["the pleural space, where the pleura is told", "serosa: {pleural_space: }", []],
    ["joints and brain of a pig that coughs", "locomotor: \nnervous: ", []],
    [
      "the joints of a lame pig",
      "selection: {signs: [lameness]}\nlocomotor: {joints: , muscles: normal}",
      ["error skipped-organ locomotor.joints"],
    ],
    [
      "the joints of a pig with polyserositis, though they are wanted alone",
      "serosa: {peritoneum: [{process: fibrin, distribution: diffuse, severity: mild}]}\ncardiovascular: {pericardium: [{process: fibrin, distribution: diffuse, severity: mild}]}\nsamples: \nlocomotor: ",
      ["warning polyserositis-joints-unseen locomotor.joints"],
    ],
    ["two systems", "urinary: \nstomach: ", ["error skipped-system stomach"]],
    [
      "an organ with a note alone, where its system is not empty",
      "urinary: {kidneys: {left: , right: , note: pale}}",
      ["error skipped-organ urinary.kidneys"],
    ],
    [
      "an organ that is not due, with a note and a size alone",
      "lymphoid: {other_nodes: {note: pale, size: 20 mm}}",
      ["error skipped-organ lymphoid.other_nodes"],
    ],
    [
      "two sides with a note alone",
      "urinary: {kidneys: {left: {note: pale}, right: {note: pale}}}",
      ["error skipped-organ urinary.kidneys.left"],
    ],
    ["an organ that is normal, with a note", "lymphoid: {other_nodes: {state: normal, note: small}}", []],
    [
      "the snout, by the word for its whole system",
      "respiratory: normal\ndiagnosis: ",
      ["error skipped-organ respiratory.turbinates"],
    ],
    [
      "the snout of a pig without signs of the nose, by the same word",
      "selection: {signs: [cough]}\nrespiratory: normal\ndiagnosis: ",
      [],
    ],
    [
      "what a skin complaint asks nothing of",
      "selection: {signs: [itching]}\nstomach: \nserosa: \nrespiratory: {pleura: }",
      [],
    ],
    [
      "the same in a pig that was found dead",
      "selection: {basis: found-dead, signs: [itching], onset: , typical: }\ndeath: {manner: found-dead, method: }\nstomach: ",
      ["error skipped-system stomach"],
    ],
    ["systems named as normal", "normal: [urinary, stomach]\nurinary: \nstomach: ", []],
    [
      "systems named as not examined",
      "not_examined: [{systems: [urinary, stomach], because: no time}]\nurinary: \nstomach: ",
      [],
    ],
    [
      "systems named as not examined, without a reason",
      "not_examined: [{systems: [urinary, stomach], because: }]\nurinary: \nstomach: ",
      ["error not-examined-without-reason not_examined[0].because"],
    ],
    [
      "a system named as normal that says otherwise below",
      "normal: [lymphoid]\nlymphoid: {spleen: {not_examined: lost}}",
      ["error normal-with-finding normal[0]"],
    ],
    [
      "a system named twice",
      "normal: [urinary]\nnot_examined: [{systems: [urinary], because: no time}]\nurinary: ",
      ["error normal-with-finding not_examined[0]"],
    ],
    [
      "the pars oesophagea of a weaner that was found dead",
      "death: {manner: found-dead, method: }\nselection: {basis: found-dead, onset: , typical: }\nstomach: {pars_oesophagea: }",
      ["error skipped-organ stomach.pars_oesophagea"],
    ],
  ])("%s", (_name, text, findings) => {
    expect(found(text).filter((one) => !/ (last-seen-alive-missing|visit|case-)/.test(one))).toEqual(
      findings,
    );
  });

  it("are told in one line that names all of them", () => {
    const [finding] = lintExample({ case: "lymphoid: {spleen: , tonsil: , thymus: }" }).findings;
    expect(finding?.message).toBe(
      'lymphoid: spleen and tonsil (often forgotten) are blank and were due. Write "rest: normal" under lymphoid if they were examined and are normal, "rest: {not_examined: why}" if not, or record each.',
    );
  });

  it("are excused where the visit says why they were left alone, and count as not examined", () => {
    const { findings, completeness } = lintExample({
      case: "upper_digestive: {teeth: , mouth: }",
      visit: "pigs: {left_closed: 'mouths and teeth: no jaw spreader'}",
    });
    expect(findings).toEqual([]);
    expect(completeness[0]).toMatchObject({ skipped: 0 });
    expect(completeness[0]?.not_examined).toBeGreaterThanOrEqual(2);
  });
});

describe("systems that are named at the top", () => {
  const { case: _, file: __, ...whole } = lintExample({ case: "{}" }).completeness[0] ?? {};
  const counted = (text: string) => {
    const { case: _id, file: _file, ...counts } = lintExample({ case: text }).completeness[0] ?? {};
    return counts;
  };

  it.each([
    ["normal", "normal: [urinary, stomach]\nurinary: \nstomach: ", "urinary: normal\nstomach: normal"],
    [
      "not examined",
      "not_examined: [{systems: [urinary, stomach], because: no time}]\nurinary: \nstomach: ",
      "urinary: {kidneys: , renal_pelvis: , ureters: , bladder: , urine: , rest: {not_examined: no time}}\nstomach: {pars_oesophagea: , glandular_part: , stomach_content: , rest: {not_examined: no time}}",
    ],
  ])("count as %s like systems that say so themselves", (_word, listed, own) => {
    expect(counted(listed)).toEqual(counted(own));
    expect(counted(listed)).not.toEqual(whole);
  });

  it("are offered in the one line that tells of all of them", () => {
    expect(lintExample({ case: "urinary: \nstomach: " }).findings.map(({ message }) => message)).toEqual([
      'nothing is recorded of: stomach (glandular_part and stomach_content); urinary system (kidneys and bladder). Write "normal: [stomach, urinary]" at the top of the case for those that were examined and are normal, and "not_examined: [{systems: [stomach, urinary], because: why}]" for the others.',
    ]);
  });

  it("are refused where there is no such system", () => {
    expect(found("normal: [everything]")).toEqual(["error case-format normal[0]"]);
  });
});

describe("one cause is one line", () => {
  it("facts of one group", () => {
    const [finding, ...others] = lintExample({ case: "pig: {tag: , weight: , sex: }" }).findings;
    expect(others).toEqual([]);
    expect(finding?.message).toBe(
      'pig: tag, sex and weight are blank. Write tag: "2217", sex: female, weight: 17.5 kg there, as it was.',
    );
  });

  it("lobes of one lung", () => {
    const text = "respiratory: {lungs: {consolidation: {accessory: , left_caudal: }}}";
    expect(found(text)).toEqual(["error lobe-missing respiratory.lungs.consolidation"]);
  });

  it("three cases of a visit that have no file", () => {
    const cases = ["01", "02", "03", "04"].map((number) => `birch-2026-04-20-${number}`).join(", ");
    expect(found("{}", `cases: [${cases}]`)).toEqual(["error visit-case-absent cases[1]"]);
  });

  it("four stretches of gut of a pig with diarrhoea", () => {
    const left = ["jejunum", "ileum", "caecum", "spiral_colon"].map(
      (key) => `${key}: {not_examined: no time}`,
    );
    const text = `selection: {signs: [diarrhoea]}\nintestine: {${left.join(", ")}}`;
    expect(found(text).filter((one) => one.includes("enteric-gut-unseen"))).toHaveLength(1);
  });
});
