/** What is due, and how loud: must, wanted or on sign; one line a system; reasons that are given once and heard. */
import { describe, expect, it } from "vitest";
import { lintExample } from "./lay-example.ts";

const found = (text: string, visit?: string) =>
  lintExample({ case: text, ...(visit === undefined ? {} : { visit }) }).findings.map(
    ({ level, rule, path }) => `${level} ${rule} ${path}`,
  );

describe("organs that are left blank", () => {
  it.each([
    ["a must", "lymphoid: {spleen: }", ["error skipped-organ lymphoid.spleen"]],
    ["a wanted one", "liver_pancreas: {pancreas: }", ["note wanted-organ-blank liver_pancreas.pancreas"]],
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
    [
      "the pars oesophagea of a weaner",
      "stomach: {pars_oesophagea: }",
      ["note wanted-organ-blank stomach.pars_oesophagea"],
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
      'lymphoid: spleen and tonsil (often forgotten) are blank and were due; thymus is wanted. Write "rest: normal" under lymphoid if they were examined and are normal, "rest: {not_examined: why}" if not, or record each.',
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

describe("one cause is one line", () => {
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
