/** What plan compare promises is what compare then shows: pigs drawn anew, by another generator of pens, and compared as cases. */
import { describe, expect, it } from "vitest";
import type { Case } from "../../src/cases/index.ts";
import { compareCases } from "../../src/compare/index.ts";
import { type CompareQuestion, planCompare } from "../../src/plan/index.ts";
import { betaQuantile, seededRandom } from "../../src/statistics/index.ts";
import { farmOf, type Pig } from "./farm.ts";

const runs = 300;
const dates = ["2026-01-01", "2026-06-01"] as const;
const random = seededRandom(20261130);
const share = (): number => (random.bits() + 0.5) / 2 ** 32;

/** Pigs that are there twice, free and affected, so that any draw is a choice among them. */
function pool(
  pigsOf: (visit: number) => readonly Partial<Pig>[],
): (yes: (visit: number, pig: number) => boolean) => Case[] {
  const made = dates.map((date, visit) => ({
    date,
    pigs: pigsOf(visit).flatMap((pig) => [0, 3].map((grade) => ({ ...pig, grade }))),
  }));
  const { cases } = farmOf(Object.fromEntries(made.map(({ date, pigs }) => [date, pigs])));
  const places = new Map(cases.map((one) => [one.file, one]));
  return (yes) =>
    made.flatMap(({ date, pigs }, visit) =>
      Array.from({ length: pigs.length / 2 }, (_, pig) => {
        const one = places.get(`alder/${date}/pig-${2 * pig + (yes(visit, pig) ? 1 : 0)}.yaml`);
        if (one === undefined) throw new Error("no such pig");
        return one;
      }),
    );
}

function expectAgreement(question: CompareQuestion, shown: number): void {
  const power = Number(planCompare({ ...question, over: [1] }).answer.power);
  expect(power).toBeGreaterThan(0.2);
  const spread = Math.sqrt(power * (1 - power) * (1 / runs + 1 / 2000));
  expect(Math.abs(shown / runs - power)).toBeLessThan(4 * spread);
}

const shownIn = (cases: readonly Case[], asked: object): boolean =>
  compareCases(cases, asked).blocks[0]?.comparisons[0]?.shown ?? false;
const indicator = { indicators: ["snout-grade-2-up"] };
const scale = { scales: ["maff-1978"] };

describe("what plan compare promises", () => {
  it("by pens, of shares and of grades", () => {
    const [pens, each, rho] = [8, 3, 0.2];
    const chosen = pool(() =>
      Array.from({ length: pens * each }, (_, pig) => ({ pen: 1 + Math.floor(pig / each) })),
    );
    let [shares, grades] = [0, 0];
    for (let run = 0; run < runs; run++) {
      const own = [0.7, 0.2].map((p) =>
        Array.from({ length: pens }, () =>
          betaQuantile(share(), (p * (1 - rho)) / rho, ((1 - p) * (1 - rho)) / rho),
        ),
      );
      const cases = chosen((visit, pig) => share() < (own[visit]?.[Math.floor(pig / each)] ?? 0));
      if (shownIn(cases, indicator)) shares += 1;
      if (shownIn(cases, scale)) grades += 1;
    }
    const asked = { fromEachPen: each, correlation: rho, pens: [pens] };
    expectAgreement({ from: 0.7, to: 0.2, ...asked }, shares);
    expectAgreement({ grades: [30, 0, 0, 70], thenGrades: [80, 0, 0, 20], ...asked }, grades);
  });

  it.each([
    [
      [8, 4],
      [4, 8],
    ],
    [
      [6, 6],
      [6, 6],
    ],
  ])("of groups: %j and %j pigs", (now, then) => {
    const groups = [now, then].map((sizes) =>
      sizes.flatMap((size, group) => Array<number>(size).fill(group)),
    );
    const chosen = pool((visit) => (groups[visit] ?? []).map((group) => ({ group: `nursery-${group + 1}` })));
    const chance = [
      [0.9, 0.6],
      [0.3, 0.1],
    ];
    let shown = 0;
    for (let run = 0; run < runs; run++)
      if (
        shownIn(
          chosen((visit, pig) => share() < (chance[visit]?.[groups[visit]?.[pig] ?? 0] ?? 0)),
          indicator,
        )
      )
        shown += 1;
    expectAgreement({ from: [0.9, 0.6], to: [0.3, 0.1], pigs: now, thenPigs: then }, shown);
  });
});
