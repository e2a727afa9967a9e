/** Results of the laboratory are counted as other shares are: of whom, with which limits, and pools apart. */
import { describe, expect, it } from "vitest";
import { readCases } from "../../src/cases/index.ts";
import { compareCases } from "../../src/compare/index.ts";
import { herdEstimates } from "../../src/herd/index.ts";
import { put, temporaryFolder } from "../cases/temporary.ts";

type Said = "positive" | "negative" | "inconclusive";
const entry = (sample: string, said: Said, more = ""): string =>
  `  - {sample: ${sample}, test: serology, agent: prrsv, interpretation: ${said}${more}}\n`;

function herd(
  entries: string,
  { pigs = 20, basis = "random", settings = "" }: { pigs?: number; basis?: string; settings?: string } = {},
) {
  const root = temporaryFolder();
  const files = Array.from({ length: pigs }, (_, at): [string, string] => [
    `pig-${at + 1}.yaml`,
    `format: 1\ncase: v-${at + 1}\npig: {group: g, age: 60 d}\nselection: {basis: ${basis}}\nsamples: [{id: ${at + 1}-S, from: blood}]\n`,
  ]);
  put(root, {
    "carcase.yaml": `format: 1\n${settings}`,
    "visit.yaml": "format: 1\nvisit: v\ndate: 2026-04-20\n",
    "results.yaml": `format: 1\nresults: v\nentries:\n${entries}`,
    ...Object.fromEntries(files),
  });
  return readCases([root]);
}
const singles = (positive: number, negative: number): string =>
  Array.from({ length: positive + negative }, (_, at) =>
    entry(`${at + 1}-S`, at < positive ? "positive" : "negative"),
  ).join("");
const only = (...given: Parameters<typeof herd>) => {
  const [one, ...others] = herdEstimates(herd(...given)).results ?? [];
  expect(others).toEqual([]);
  if (one === undefined) throw new Error("nothing was counted");
  return one;
};

describe("positive of tested", () => {
  it("has the exact interval where pigs were drawn at random from one group, and none where they were not", () => {
    const drawn = only(singles(3, 17));
    expect([drawn.affected, drawn.examined, drawn.reach]).toEqual([3, 20, "prevalence"]);
    expect(drawn.lower).toBeCloseTo(0.0321, 4);
    expect(drawn.upper).toBeCloseTo(0.3789, 4);
    const chosen = only(singles(3, 17), { basis: "clinical" });
    expect([chosen.affected, chosen.lower, chosen.upper, chosen.reach]).toEqual([
      3,
      null,
      null,
      "these-pigs",
    ]);
  });

  it("counts a pig once, leaves out what is neither, and knows wider and narrower agents", () => {
    const one = only(
      `${entry("1-S", "negative")}${entry("1-S", "positive", ", note: repeated")}${entry("2-S", "inconclusive")}${entry("3-S", "negative")}  - {sample: 4-S, test: serology, agent: prrsv-1, interpretation: positive}\n`.replace(
        "prrsv-1, interpretation: positive",
        "prrsv, interpretation: positive",
      ),
    );
    expect([one.affected, one.examined, one.not_graded, one.not_examined]).toEqual([2, 3, 1, 16]);
    const narrow = herdEstimates(
      herd(
        `${entry("1-S", "negative")}  - {sample: 2-S, test: serology, agent: prrsv-1, interpretation: positive}\n  - {sample: 3-S, test: serology, agent: prrsv-1, interpretation: negative}\n`,
      ),
    ).results;
    // A positive for type 1 is one for the virus; a negative for the virus is one for type 1, and not the other way round.
    expect(narrow?.map(({ indicator, affected, examined }) => [indicator, affected, examined])).toEqual([
      ["serology:prrsv", 1, 2],
      ["serology:prrsv-1", 1, 3],
    ]);
  });

  it("is corrected by what the settings say of the test", () => {
    const one = only(singles(3, 17), {
      settings: "tests: {serology: {prrsv: {sensitivity: 0.9, specificity: 0.95}}}\n",
    });
    // (0.15 + 0.95 - 1) / (0.9 + 0.95 - 1)
    expect(one.true_prevalence?.prevalence).toBeCloseTo(0.1 / 0.85, 10);
    expect(one.affected).toBe(3);
  });

  it("tells pools apart, with the share of pigs where they are equal and drawn at random", () => {
    const pool = (from: number, size: number, said: Said): string =>
      `  - {pool: [${Array.from({ length: size }, (_, at) => `${from + at}-S`).join(", ")}], test: serology, agent: prrsv, interpretation: ${said}}\n`;
    const equal = [0, 1, 2, 3].map((at) => pool(at * 5 + 1, 5, at === 0 ? "positive" : "negative")).join("");
    const { pools, examined } = only(equal);
    expect(examined).toBe(0);
    expect(pools).toMatchObject({ pools: 4, positive: 1, size: 5, withheld: null });
    expect(pools?.prevalence).toBeCloseTo(1 - 0.75 ** 0.2, 10);
    expect(only(equal, { basis: "clinical" }).pools).toMatchObject({ prevalence: null, positive: 1 });
    expect(only(pool(1, 5, "negative") + pool(6, 4, "negative")).pools).toMatchObject({
      size: null,
      prevalence: null,
      withheld: "the pools are not of one size",
    });
  });

  it("can be asked by name, in herd and compare, and as an indicator of the settings", () => {
    const archive = herd(singles(3, 17), {
      settings: "indicators: {prrs: {title: PRRS antibody, result: {agent: prrsv}}}\n",
    });
    const { estimates } = herdEstimates(archive, { indicators: ["serology:prrsv", "prrs"] });
    expect(estimates.map(({ title, affected }) => [title, affected])).toEqual([
      ["PRRS virus, serology", 3],
      ["PRRS antibody", 3],
    ]);
    expect(() => herdEstimates(archive, { indicators: ["serology:prrs"] })).toThrow("Did you mean");
    const farm = readCases(["cases-example/alder-farm"]);
    const compared = JSON.stringify(compareCases(farm, { indicators: ["pcr:mycoplasma-hyopneumoniae"] }));
    expect(compared).toContain('"question":"pcr:mycoplasma-hyopneumoniae"');
    expect(JSON.stringify(compareCases(farm))).not.toContain('"pcr:');
  });
});
