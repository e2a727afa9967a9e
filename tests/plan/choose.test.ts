import { createHash } from "node:crypto";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { choosingPigs, selectionRules } from "../../src/knowledge/index.ts";
import { draw, frameHash } from "../../src/plan/draw.ts";
import { isHeading } from "../../src/plan/frame.ts";
import { farmFrame, planChoose, planDiagnostic, tagsFrame } from "../../src/plan/index.ts";

const tags = (count: number) => tagsFrame(Array.from({ length: count }, (_, i) => `T${i + 1}`).join("\n"));

describe("the list", () => {
  it("is one tag a line, without blanks and empty lines, from any line ends", () => {
    expect(tagsFrame(" 2217 \r\n\r\n2218\n").map(({ tag }) => tag)).toEqual(["2217", "2218"]);
  });

  it.each([
    ["", "there is no tag in the list; write one tag a line"],
    ["a\nb\n a\n", /^line 3: the tag a stands in line 1 already/],
    ["\ntag\n1\n2\n", /^line 2: "tag" looks like the heading/],
    ["tag,pen\n1,a\n2,b\n", /^line 1: "tag,pen" has several columns/],
    ["1\n2;b\n", /^line 2: "2;b" has several columns/],
    ["1\tb", /^line 1: .* has several columns/],
  ])("%j is refused", (text, message) => {
    expect(() => tagsFrame(text)).toThrow(message);
  });

  it("headings: the worked examples", () => {
    for (const { line, heading } of choosingPigs.headings.examples)
      expect(isHeading(line), line).toBe(heading);
    expect(tagsFrame("1\npig\n")).toHaveLength(2);
  });

  const farm = { groups: { nursery: { head: 3, pens: 2 }, sows: { head: 2 } } };
  it("is the pigs of groups, counted through, or their pens", () => {
    expect(farmFrame(farm, { unit: "pigs" }).map(({ tag }) => tag)).toEqual([
      "nursery pig 1",
      "nursery pig 2",
      "nursery pig 3",
      "sows pig 1",
      "sows pig 2",
    ]);
    expect(farmFrame(farm, { unit: "pens", groups: ["nursery"] }).map(({ tag }) => tag)).toEqual([
      "nursery pen 1",
      "nursery pen 2",
    ]);
  });

  it.each([
    [{ unit: "pens" as const }, /the group sows has no pens:/],
    [{ unit: "pigs" as const, groups: ["nursry"] }, "there is no group nursry; did you mean nursery?"],
    [
      { unit: "pigs" as const, groups: ["toString"] },
      "there is no group toString; the farm file has nursery and sows",
    ],
  ])("of %j is refused", (options, message) => {
    expect(() => farmFrame(farm, options)).toThrow(message);
  });
});

describe("the draw", () => {
  it("takes each unit at most once, as many as asked, the same for the same seed and others for another", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 200 }), fc.nat(), fc.nat(1_000_000), (size, some, seed) => {
        const take = 1 + (some % size);
        const reserve = Math.min(3, size - take);
        const got = draw(tags(size), { take, reserve, seed });
        const all = [...got.chosen, ...got.reserve];
        expect([got.chosen.length, got.reserve.length]).toEqual([take, reserve]);
        expect(new Set(all).size).toBe(take + reserve);
        for (const place of all) expect(place >= 0 && place < size).toBe(true);
        expect(draw(tags(size), { take, reserve, seed })).toEqual(got);
      }),
    );
    expect(draw(tags(200), { take: 20, reserve: 0, seed: 1 })).not.toEqual(
      draw(tags(200), { take: 20, reserve: 0, seed: 2 }),
    );
  });

  it("does not change from one version to the next: seed 7, 3 of 20 and a reserve of 1", () => {
    expect(draw(tags(20), { take: 3, reserve: 1, seed: 7 })).toEqual({
      chosen: FIXED.chosen,
      reserve: FIXED.reserve,
    });
  });

  it("a larger reserve changes nothing of what was drawn before it", () => {
    const few = draw(tags(50), { take: 5, reserve: 0, seed: 11 });
    const more = draw(tags(50), { take: 5, reserve: 4, seed: 11 });
    expect(more.chosen).toEqual(few.chosen);
  });

  it("gives every pair the same chance: 2 of 5 over 20 000 seeds, chi-squared on 9 degrees of freedom below 27.9", () => {
    const counts = new Map<string, number>();
    for (let seed = 0; seed < 20_000; seed++) {
      const key = [...draw(tags(5), { take: 2, reserve: 0, seed }).chosen].sort().join();
      counts.set(key, (counts.get(key) ?? 0) + 1);
    }
    expect(counts.size).toBe(10);
    const chiSquared = [...counts.values()].reduce((sum, n) => sum + (n - 2000) ** 2 / 2000, 0);
    // The 0.999 point; the seeds are fixed, so this never fails by chance.
    expect(chiSquared).toBeLessThan(27.9);
  });

  it("draws from each group when asked", () => {
    const frame = farmFrame({ groups: { a: { head: 40 }, b: { head: 10 } } }, { unit: "pigs" });
    const { chosen, reserve } = draw(frame, { take: 4, reserve: 1, seed: 3, each: true });
    const groups = (places: readonly number[]) => places.map((place) => frame[place]?.group).join("");
    expect([groups(chosen), groups(reserve)]).toEqual(["aaaabbbb", "ab"]);
    expect(() => draw(frame, { take: 11, reserve: 0, seed: 3, each: true })).toThrow(
      new RangeError("11 cannot be drawn from b, which holds 10; ask for fewer"),
    );
  });

  it("names the list by the SHA-256 of a clean tag file", () => {
    const file = "2217\n2218\n";
    expect(frameHash(tagsFrame("2217\r\n\n  2218"))).toBe(createHash("sha256").update(file).digest("hex"));
  });
});

describe("the plan", () => {
  it("shows pigs in the order of the list, the reserve in the order drawn, and how to repeat it", () => {
    const plan = planChoose({ frame: tags(100), unit: "tags", take: 10, reserve: 3, seed: 5 });
    const lines = plan.table.rows.filter((row) => row.use === "examine").map((row) => Number(row.line));
    expect(lines).toEqual([...lines].sort((a, b) => a - b));
    expect(plan.table.rows.filter((row) => row.use === "reserve").map((row) => row.drawn)).toEqual([1, 2, 3]);
    expect(plan.sentences.join(" ")).toContain(`seed 5; generator xoshiro128**`);
    expect(plan.sentences.join(" ")).toContain(String(plan.answer.list_sha256));
  });

  it("the rules for a diagnostic necropsy say what the linter checks", () => {
    const plan = planDiagnostic();
    const rule = (id: string) => choosingPigs.diagnostic.find((one) => one.id === id)?.do ?? "";
    expect(rule("acute")).toContain(selectionRules.acute_within);
    expect(rule("enough")).toMatch(/three or four/);
    expect(selectionRules.pigs_per_syndrome).toBe(3);
    for (const id of ["typical", "untreated", "apart", "reserve", "comparison"])
      expect(rule(id)).not.toBe("");
    expect(plan.cautions.join(" ")).toContain("gives no prevalence");
    expect(plan.table.rows).toHaveLength(choosingPigs.diagnostic.length);
  });
});

/** Computed outside the project from the published definitions of both generators; a change would make old draws unrepeatable. */
const FIXED = { chosen: [9, 12, 10], reserve: [0] };
