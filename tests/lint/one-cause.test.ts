/** One cause is said once, and at the cause: a mistyped year, a slip of the opening, a gut opened early, a late carcass. */
import { describe, expect, it } from "vitest";
import { hiddenCharacter } from "../../src/words/hidden-characters.ts";
import { visible } from "../../src/words/visible.ts";
import { lintExample } from "./lay-example.ts";

const found = (text: string) =>
  lintExample({ case: text }).findings.map(({ rule, path }) => `${rule} ${path}`);
const sample = (id: string, from: string, rest: string): string => `{id: 01-${id}, from: ${from}, ${rest}}`;
const only = (text: string, ...rules: string[]) =>
  found(text).filter((one) => rules.includes(one.split(" ")[0] ?? ""));

describe("times", () => {
  it("a mistyped year is named, and nothing that follows from it", () => {
    expect(found("death: {at: 2025-04-20T09:10}")).toEqual(["year-off-visit death.at"]);
  });

  it("three samples before the opening blame the opening", () => {
    const samples = ["lymphoid.spleen", "lymphoid.tonsil", "respiratory.lungs", "urinary.kidneys"].map(
      (from, at) => sample("ABCD"[at] ?? "", from, `into: chilled, for: [archive], at: 2026-04-20T09:5${at}`),
    );
    const text = `opened: {at: 2026-04-20T21:40, note: in the pen}\nsamples: [${samples.join(", ")}]`;
    expect(only(text, "dates-out-of-order")).toEqual(["dates-out-of-order opened.at"]);
  });

  it.each(["faeces", "oral_fluid", "respiratory.nares", "external.ears", "urinary.urine"])(
    "%s may be taken before the opening",
    (from) => {
      const text = `samples: [${sample("A", from, "into: chilled, for: [archive], at: 2026-04-20T09:00")}]`;
      expect(only(text, "dates-out-of-order")).toEqual([]);
    },
  );

  it("a piece of lung may not", () => {
    const text = `samples: [${sample("A", "respiratory.lungs", "into: chilled, for: [archive], at: 2026-04-20T09:00")}]`;
    expect(only(text, "dates-out-of-order")).toEqual(["dates-out-of-order samples[0].at"]);
  });
});

describe("a gut that was opened early", () => {
  const cultures = (into: string): string =>
    `steps: {gut_opened: 2026-04-20T10:00}\nsamples: [${["A", "B"].map((id) => sample(id, "lymphoid.spleen", `into: ${into}, for: [culture], at: 2026-04-20T10:20`)).join(", ")}]`;

  it("gets one line for all samples", () => {
    expect(only(cultures("chilled"), "culture-after-gut-opened")).toEqual([
      "culture-after-gut-opened samples",
    ]);
  });

  it("gets none for what lies in formalin", () => {
    expect(only(cultures("formalin"), "culture-after-gut-opened")).toEqual([]);
  });
});

describe("reasons", () => {
  it.each([" ", "...", "-"])("%j is none", (because) => {
    const text = `selection: {treated: {with: amoxicillin, last: 12 h}}\naccepted: [{rule: treated-pig, because: ${JSON.stringify(because)}}]`;
    expect(only(text, "treated-pig", "accepted-without-reason")).toHaveLength(2);
  });
});

describe("characters that nobody sees", () => {
  it.each(["\u{e0041}", "\uffff", "x\ufe0f"])("%j is refused and shown as a code", (text) => {
    expect(hiddenCharacter.test(text)).toBe(true);
    expect(visible(text)).toContain("\\u{");
  });

  it.each(["⚕️", "❤️", "1️⃣"])("%s stays as it is", (text) => {
    expect(hiddenCharacter.test(text)).toBe(false);
    expect(visible(text)).toBe(text);
  });
});
