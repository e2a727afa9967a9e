/** Pigs of one visit: names in other letters, aborted litters, and what was left closed in all of them. */
import { describe, expect, it } from "vitest";
import { lintExample } from "./lay-example.ts";

const id = (number: number): string => `birch-2026-04-20-0${number}`;

/** Findings of some rules in a visit of so many pigs, each with a text laid over it. */
function lint(pigs: readonly string[], visit: string, ...rules: readonly string[]): string[] {
  const laid = pigs.map((text, at) => `case: ${id(at + 1)}\n${text}`);
  return lintExample({
    visit: `cases: [${pigs.map((_, at) => id(at + 1)).join(", ")}]\n${visit}`,
    case: laid[0] ?? "",
    others: laid.slice(1),
  })
    .findings.filter(({ rule }) => rules.includes(rule))
    .map(({ rule, path }) => `${rule} ${path}`);
}

describe("a name in other letters", () => {
  const three = (litters: readonly string[]): string[] =>
    litters.map((litter, at) => `pig: {tag: '90${at}', pen: ${at + 1}, litter: ${litter}}`);

  it("is one tag", () => {
    const tags = (second: string): string[] =>
      lint(["pig: {tag: A901}", `pig: {tag: ${second}}`], "", "duplicate-tag");
    expect(tags("a901")).toEqual(["duplicate-tag pig.tag"]);
    expect(tags("a902")).toEqual([]);
  });

  it("is one litter", () => {
    const rule = "clinical-pigs-one-litter";
    expect(lint(three(["S-1", "s-1", "s 1"]), "pigs: {few: }", rule)).toEqual([`${rule} pigs.few`]);
    expect(lint(three(["S-1", "s-1", "s-2"]), "pigs: {few: }", rule)).toEqual([]);
  });

  it("is one reader", () => {
    const read = (name: string): string[] =>
      lint(["", `examiner: ${name}\npig: {tag: '902'}`], "", "two-readers");
    expect(read("r. sallow")).toEqual([]);
    expect(read("R Sallow")).toEqual([]);
    expect(read("T. Fern")).toEqual(["two-readers pigs.readers"]);
  });

  it("is one bag", () => {
    const bags = (first: string, second: string): string[] =>
      lint(
        [
          `samples: [{id: 01-A, from: intestine.ileum, into: chilled, for: [pcr], bag: ${first}}, {id: 01-B, from: liver_pancreas.liver, into: chilled, for: [culture], bag: ${second}}]`,
        ],
        "",
        "gut-with-other-organs",
      );
    expect(bags("A", "a")).toEqual(["gut-with-other-organs samples[0].bag"]);
    expect(bags("A", "b")).toEqual([]);
  });
});

describe("aborted fetuses", () => {
  const fetus = (litter: string, number: number): string =>
    `pig: {tag: "${litter}-${number}", group: sows, litter: ${litter}, age: , class: aborted, weight: 900 g, crown_rump: 24 cm}
selection: {basis: clinical, signs: [abortion], onset: , typical: }
death: {manner: born-dead, method: }
samples: [{id: 0${number}-A, from: intestine.ileum, into: formalin, for: [histology], at: 2026-04-20T12:20}, {id: 0${number}-B, from: liver_pancreas.liver, into: chilled, for: [culture], at: 2026-04-20T22:20}]`;
  const rules = [
    "abortion-set-small",
    "clinical-pigs-one-litter",
    "few-pigs-for-syndrome",
    "no-healthy-comparison",
    "gut-histology-lost",
    "culture-late",
  ];

  it("of one litter are told once, without a healthy mate and without villi", () => {
    const litter = [1, 2, 3].map((number) => fetus("S-1", number));
    expect(lint(litter, "pigs: {few: , comparison: }", ...rules)).toEqual([
      ...Array(3).fill("culture-late samples[1].for"),
      "abortion-set-small cases",
    ]);
  });

  it("late for culture ask for a fresher fetus, not for a pig that is killed", () => {
    const { findings } = lintExample({ case: fetus("S-1", 1) });
    const late = findings.find(({ rule }) => rule === "culture-late");
    expect(late?.message).toContain("a fresher fetus");
    expect(late?.message).not.toContain("killed");
  });
});

describe("an organ that nobody saw", () => {
  const closed =
    "nervous: {brain: {not_examined: skull left closed}, meninges: {not_examined: skull left closed}}";
  const rotten =
    "nervous: {brain: {not_assessable: {because: autolysed, why: soft}}, meninges: {not_examined: skull left closed}}";
  const pigs = (...all: readonly string[]): string[] =>
    all.map((text, at) => `pig: {tag: '90${at}'}\nupper_digestive: {teeth: normal}\n${text}`);
  const left = (text: string, ...all: readonly string[]): string[] =>
    lint(pigs(...all), `pigs: {left_closed: ${text}}`, "organ-never-examined");

  it.each([
    ["", 1],
    ["'jaws: no signs of the mouth'", 1],
    ["brains were not opened", 1],
    ["'skulls: no saw'", 0],
    ["heads stayed at the plant", 0],
  ])("is told unless it is named: %s", (text, count) => {
    expect(left(text, closed, closed, closed)).toHaveLength(count);
  });

  it("was not seen in a rotten pig either", () => {
    expect(left("", closed, rotten, closed)).toHaveLength(1);
    expect(left("", rotten, rotten, rotten)).toHaveLength(1);
    expect(left("", closed, "", closed)).toHaveLength(0);
  });
});
