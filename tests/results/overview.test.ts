/** What is open, for how long, and what came. */
import { describe, expect, it } from "vitest";
import { moment, readCases } from "../../src/cases/index.ts";
import { resultsOverview } from "../../src/results/index.ts";
import { put, temporaryFolder } from "../cases/temporary.ts";

const pig = (id: string, samples: string): string =>
  `format: 1\ncase: v-${id}\nopened: {at: 2026-04-20T09:00}\nsamples: ${samples}\n`;

function overview(results: string | undefined, today: string) {
  const root = temporaryFolder();
  put(root, {
    "visit.yaml":
      "format: 1\nvisit: v\ndate: 2026-04-20\ncases: [v-1, v-2]\nparcels: [{samples: [1-A], sent: 2026-04-22T16:00}]\n",
    "1.yaml": pig(
      "1",
      "[{id: 1-A, from: respiratory.lungs, for: [pcr, culture]}, {id: 1-B, from: respiratory.lungs, for: [histology, archive], at: 2026-04-20T10:00}]",
    ),
    "2.yaml": pig("2", "[{id: 2-A, from: respiratory.lungs, for: [pcr]}]"),
    ...(results !== undefined && { "results.yaml": `format: 1\nresults: v\nentries: ${results}\n` }),
  });
  const [one] = resultsOverview(readCases(["."], { from: root }).visits, moment(today) ?? never());
  return one ?? never();
}
const never = (): never => {
  throw new Error("nothing was read");
};

describe("tests that were asked", () => {
  it("wait from the day the parcel left, else from the sample, else from the opening; what is kept waits for nothing", () => {
    const { asked, answered, open } = overview(undefined, "2026-05-02");
    expect([asked, answered]).toEqual([4, 0]);
    expect(open.map(({ sample, test, since, days }) => [sample, test, since, days])).toEqual([
      ["1-B", "histology", "2026-04-20", 12],
      ["2-A", "pcr", "2026-04-20", 12],
      ["1-A", "pcr", "2026-04-22", 10],
      ["1-A", "culture", "2026-04-22", 10],
    ]);
  });

  it("are answered by a result of the same sample and test, by a pool for each of its samples, and by not-testable", () => {
    const { open, answered, strays, arrived } = overview(
      "[{pool: [1-A, 2-A], test: pcr, agent: prrsv, interpretation: negative, date: 2026-04-29}, {sample: 1-A, test: culture, interpretation: not-testable}, {sample: 9-Z, test: pcr, agent: prrsv, interpretation: positive}, {sample: 1-B, test: pcr, agent: pcv2, interpretation: positive}]",
      "2026-05-02",
    );
    expect(answered).toBe(3);
    expect(open.map(({ sample, test }) => `${sample} ${test}`)).toEqual(["1-B histology"]);
    expect(strays).toBe(1);
    expect(arrived.map(({ samples, cases, pool, days }) => [samples, cases, pool, days])).toEqual([
      [["1-A", "2-A"], ["v-1", "v-2"], true, 7],
      [["1-A"], ["v-1"], false, null],
      [["9-Z"], [], false, null],
      [["1-B"], ["v-1"], false, null],
    ]);
  });

  it("have waited no days on a day before they left", () => {
    expect(overview(undefined, "2026-04-01").open.every(({ days }) => days === 0)).toBe(true);
  });
});
