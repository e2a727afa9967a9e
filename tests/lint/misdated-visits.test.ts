/** The date of a visit against its pigs: one line at the date, or one at the pig; and nothing that only follows from it. */
import { describe, expect, it } from "vitest";
import { lintExample } from "./lay-example.ts";

const ids = ["01", "02", "03"].map((number) => `birch-2026-04-20-${number}`);

/** Findings of a visit of three pigs with something laid over the visit and over each pig. */
function lint(visit: string, pigs: readonly [string, string, string] = ["", "", ""]): string[] {
  const laid = pigs.map((text, at) => `case: ${ids[at]}\npig: {tag: '90${at}'}\n${text}`);
  return lintExample({
    visit: `cases: [${ids.join(", ")}]\npigs: {comparison: compared with the pigs of the March visit}\n${visit}`,
    case: laid[0] ?? "",
    others: laid.slice(1),
  }).findings.map(({ rule, file, path }) => `${rule} ${file.split("/").at(-1)} ${path}`);
}

const times = (day: string): string => `death: {at: ${day}T09:10}\nopened: {at: ${day}T09:40}\nsamples: `;

describe("a visit of three pigs", () => {
  it("gives no finding as it is", () => {
    expect(lint("")).toEqual([]);
  });

  it("dated after its pigs gets one line, and none about readings and folder", () => {
    expect(lint("date: 2026-05-20")).toEqual(["opened-before-visit visit.yaml date"]);
  });

  it("dated long before its pigs gets one line, and none about readings, groups and folder", () => {
    expect(lint("date: 2026-04-02")).toEqual(["case-day-off-visit visit.yaml date"]);
  });

  it("dated in another year gets one line", () => {
    expect(lint("date: 2025-04-20")).toEqual(["year-off-visit visit.yaml date"]);
  });

  it("with one pig opened before it blames the pig", () => {
    expect(lint("", ["", times("2026-04-18"), ""])).toEqual(["opened-before-visit pig-02.yaml opened.at"]);
  });

  it("with one pig opened long after it blames the pig", () => {
    expect(lint("", ["", "", times("2026-05-20")])).toEqual(["case-day-off-visit pig-03.yaml opened.at"]);
  });
});

describe("a visit of one pig", () => {
  const single = (visit: string): string[] =>
    lintExample({ visit }).findings.map(({ rule, path }) => `${rule} ${path}`);

  it("in a folder of another day is not told of readings that agree with the folder", () => {
    expect(single("date: 2026-04-15").filter((one) => /reading|folder/.test(one))).toEqual([
      "visit-date-off-folder date",
    ]);
  });

  it("is told of a reading that agrees with neither", () => {
    const readings = "environment: [{group: nursery-2, at: 2026-04-02T08:30, ammonia: 14 ppm}]";
    expect(single(readings)).toEqual(["reading-off-visit environment[0].at"]);
  });
});

describe("times of two clocks", () => {
  it.each([
    ["08:15Z", 0],
    ["08:15", 1],
    ["08:15+02:00", 1],
  ])("opened at %s, died at 08:50 without a zone: %i out of order", (time, count) => {
    const text = `death: {at: 2026-04-20T08:50}\nopened: {at: 2026-04-20T${time}}\nsamples: `;
    const found = lintExample({ case: text }).findings.filter(({ rule }) => rule === "dates-out-of-order");
    expect(found).toHaveLength(count);
  });
});

describe("samples that are late alike", () => {
  const sample = (id: string, from: string, test: string, at: string): string =>
    `{id: 01-${id}, from: ${from}, into: chilled, for: [${test}], at: 2026-04-20T${at}}`;
  const late = (...samples: string[]): string[] =>
    lintExample({
      case: `death: {at: 2026-04-18T09:10}\nopened: {at: 2026-04-20T09:40, ambient: 14 °C, state: fresh, note: lay outside}\nsamples: [${samples.join(", ")}]`,
    }).findings.flatMap(({ rule, path, message }) => (rule === "culture-late" ? [`${path} ${message}`] : []));

  it("share one line at the samples", () => {
    const found = late(
      sample("A", "lymphoid.spleen", "culture", "09:50"),
      sample("B", "liver_pancreas.liver", "culture", "09:50"),
      sample("C", "urinary.kidneys", "culture", "09:50"),
    );
    expect(found).toHaveLength(1);
    expect(found[0]).toMatch(/^samples samples: 01-A, 01-B and 01-C were taken /);
  });

  it("alone keep their place", () => {
    const [one = ""] = late(sample("A", "lymphoid.spleen", "culture", "09:50"));
    expect(one).toMatch(/^samples\[0\]\.for samples\[0\]\.for: 01-A was taken /);
  });
});
