import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { quantity } from "../../src/cases/index.ts";
import { autolysis } from "../../src/knowledge/index.ts";
import { sampleWorth, timeWorth } from "../../src/sampling/index.ts";
import { pig, pigAt, sampleAfter } from "./pig.ts";

const degrees = { "up-to-4": 4, "up-to-15": 15, "up-to-25": 25, "above-25": 26 } as const;
const kinds = {
  "gut-histology": ["intestine.jejunum", "histology"],
  histology: ["liver_pancreas.liver", "histology"],
  culture: ["liver_pancreas.liver", "culture"],
  pcr: ["liver_pancreas.liver", "pcr"],
  toxicology: ["liver_pancreas.liver", "toxicology"],
} as const;
const rows = Object.entries(degrees).flatMap(([band, at]) =>
  Object.entries(kinds).map(([kind, [from, test]]) => ({ band, at, kind, from, test })),
);

describe("the worth of a test after death", () => {
  it.each(rows)("$kind, $band: good to the minute of its limit, then reduced, then doubtful", (row) => {
    const limit = (quantity("duration", autolysis.limits[row.band]?.[row.kind]) ?? 0) * 60;
    const one = pigAt(String(row.at));
    const worth = (minutes: number): string =>
      timeWorth(one, sampleAfter(minutes, { from: row.from }), row.test).worth;
    expect(limit).toBeGreaterThan(0);
    expect(worth(limit)).toBe("good");
    expect(worth(limit + 1)).toBe("reduced");
    expect(worth(2 * limit)).toBe("reduced");
    expect(worth(2 * limit + 1)).toBe("doubtful");
  });

  it("of PCR lasts a week at 4 °C, when culture of the same piece is long doubtful", () => {
    const of = (test: "pcr" | "culture", at: string) =>
      timeWorth(pigAt(at), sampleAfter(120 * 60, {}), test).worth;
    expect([of("pcr", "4"), of("culture", "4"), of("pcr", "10")]).toEqual(["good", "doubtful", "doubtful"]);
  });

  it("stands in docs/autolysis.md as in the data", () => {
    const page = readFileSync("docs/autolysis.md", "utf8");
    for (const [band, limits] of Object.entries(autolysis.limits)) {
      const cells = new RegExp(`^\\| \`${band}\`.*$`, "m").exec(page)?.[0].split(" | ").slice(1) ?? [];
      expect(
        cells.map((cell) => cell.replace(/ \(.*| \|$/, "")),
        band,
      ).toEqual(Object.keys(kinds).map((kind) => limits[kind]));
    }
  });

  it("never rises with time, and never with warmth", () => {
    const order = ["good", "reduced", "doubtful"];
    const pigs = [0, 10, 20, 35].map((at) => pigAt(String(at)));
    fc.assert(
      fc.property(
        fc.constantFrom(...Object.values(kinds)),
        fc.integer({ min: 0, max: 12_000 }),
        fc.integer({ min: 0, max: 6_000 }),
        ([from, test], minutes, more) => {
          const rank = (index: number, later: number): number => {
            const one = pigs[index];
            if (one === undefined) throw new Error("no pig");
            return order.indexOf(timeWorth(one, sampleAfter(later, { from }), test).worth);
          };
          for (const index of [0, 1, 2]) {
            expect(rank(index, minutes)).toBeLessThanOrEqual(rank(index, minutes + more));
            expect(rank(index, minutes)).toBeLessThanOrEqual(rank(index + 1, minutes));
          }
        },
      ),
    );
  });

  it("of gut is doubtful after two hours whatever the settings allow", () => {
    const one = pigAt("4", "", "autolysis: {up-to-4: {gut-histology: 8}}");
    const gut = { from: "intestine.ileum" };
    expect(timeWorth(one, sampleAfter(120, gut), "histology").worth).toBe("good");
    expect(timeWorth(one, sampleAfter(121, gut), "histology").worth).toBe("doubtful");
  });

  it("is unknown without a temperature, a time of day or a limit for the test", () => {
    const cold = pig("death: {at: 2026-04-20T08:00}\nopened: {at: 2026-04-20T08:30}");
    const day = pig("death: {at: 2026-04-20}\nopened: {at: 2026-04-20T08:30, ambient: 10 °C}");
    expect(timeWorth(cold, sampleAfter(60, {}), "pcr").worth).toBe("unknown");
    expect(timeWorth(day, sampleAfter(60, {}), "pcr").worth).toBe("unknown");
    expect(timeWorth(pigAt("10"), sampleAfter(60, {}), "serology").worth).toBe("unknown");
  });

  it.each(["feed", "water", "bedding", "oral_fluid"])(
    "is unknown for %s: no clock of the carcass",
    (from) => {
      for (const test of ["pcr", "culture", "toxicology"] as const)
        expect(timeWorth(pigAt("30"), sampleAfter(6000, { from }), test)).toMatchObject({
          worth: "unknown",
          kind: undefined,
        });
    },
  );

  it("is unknown with universal time beside a time without zone, and known with two zones", () => {
    const at = (died: string, taken: string) =>
      timeWorth(
        pig(`death: {at: ${died}}\nopened: {at: 2026-04-20T09:00, ambient: 10 °C}`),
        { id: "01-A", from: "intestine.ileum", at: taken },
        "histology",
      );
    expect(at("2026-04-20T07:10Z", "2026-04-20T09:20").worth).toBe("unknown");
    expect(at("2026-04-20T07:10Z", "2026-04-20T09:20+02:00")).toMatchObject({ worth: "good", hours: 1 / 6 });
  });

  it("of fetal gut is that of its other organs", () => {
    const fetus = (age: string) =>
      pig(`pig: {${age}}\ndeath: {at: 2026-04-20T08:00}\nopened: {at: 2026-04-20T08:00, ambient: 10 °C}`);
    const gut = sampleAfter(240, { from: "intestine.ileum" });
    expect(timeWorth(fetus("class: aborted"), gut, "histology")).toMatchObject({
      kind: "histology",
      worth: "good",
    });
    expect(timeWorth(fetus("age: 58 d"), gut, "histology")).toMatchObject({
      kind: "gut-histology",
      worth: "doubtful",
    });
  });

  it("is full for blood drawn in life", () => {
    expect(timeWorth(pigAt("30"), sampleAfter(-90, { from: "blood" }), "pcr")).toMatchObject({
      worth: "good",
      hours: 0,
    });
  });

  it("counts to the opening when the sample has no time, and to gut_fixed for gut", () => {
    const one = pig(
      "death: {at: 2026-04-20T08:00}\nopened: {at: 2026-04-20T09:00, ambient: 10 °C}\nsteps: {gut_fixed: 2026-04-20T08:20}",
    );
    expect(timeWorth(one, { id: "01-A", from: "lymphoid.spleen", into: "formalin" }, "histology").hours).toBe(
      1,
    );
    const gut = { id: "01-B", from: "intestine.ileum", into: "formalin" } as const;
    expect(timeWorth(one, gut, "histology").hours).toBeCloseTo(1 / 3);
  });

  it("takes limits from the settings of the repository", () => {
    const own = pigAt("10", "", "autolysis: {up-to-15: {culture: 2}}");
    expect(timeWorth(own, sampleAfter(180, {}), "culture")).toMatchObject({ worth: "reduced", limit: 2 });
    expect(timeWorth(own, sampleAfter(180, {}), "pcr").worth).toBe("good");
  });
});

describe("a sample", () => {
  it("is worth what the worse of time and container leaves, with the reasons", () => {
    const worth = sampleWorth(
      pigAt("20"),
      sampleAfter(420, { into: "formalin", for: ["histology", "culture", "pcr"] }),
    );
    expect(worth.map((one) => [one.test, one.worth, one.reasons.length])).toEqual([
      ["histology", "reduced", 1],
      ["culture", "doubtful", 2],
      ["pcr", "reduced", 1],
    ]);
    expect(worth[0]?.reasons[0]).toContain("7 h after death between 15 and 25 °C, limit 6 h");
  });

  it("of a frozen carcass is not for histology, and its clock stands still", () => {
    const [histology, pcr] = sampleWorth(
      pigAt("-18", ", state: frozen"),
      sampleAfter(9000, { into: "frozen", for: ["histology", "pcr"] }),
    );
    expect(histology?.worth).toBe("doubtful");
    expect(pcr?.worth).toBe("unknown");
  });
});
