/** Quantities, moments, age classes and paths. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { classOfAge } from "../../src/cases/model/age-class.ts";
import { isAfter, type Moment, moment } from "../../src/cases/model/moment.ts";
import { formatPath, pathOf, pathsMeet, valueAt } from "../../src/cases/model/path.ts";
import { type QuantityKind, quantity } from "../../src/cases/model/quantity.ts";
import { runs } from "../random.ts";

describe("quantity", () => {
  it.each<[QuantityKind, string | undefined, number | undefined]>([
    ["age", "58 d", 58],
    ["age", "8 wk", 56],
    ["age", "8.5wk", 59.5],
    ["age", "12 h", 0.5],
    ["age", "2 mo", 60.875],
    ["age", "2 a", 730.5],
    ["age", "58\u00a0d", 58],
    ["duration", "36 h", 36],
    ["duration", "30 min", 0.5],
    ["duration", "2 d", 48],
    ["mass", "17.5 kg", 17.5],
    ["mass", "850 g", 0.85],
    ["length", "2.5 cm", 25],
    ["temperature", "-4.5 °C", -4.5],
    ["temperature", "14°C", 14],
    ["mass", undefined, undefined],
    ["mass", "", undefined],
    ["mass", "17.5", undefined],
    ["mass", "17,5 kg", undefined],
    ["mass", "17.5 lb", undefined],
    ["mass", "58 d", undefined],
    ["age", "5 constructor", undefined],
    ["age", "5 hasownproperty", undefined],
    ["age", "kg 5", undefined],
    ["mass", "1 kg 2 kg", undefined],
  ])("%s %j is %s", (kind, text, value) => {
    expect(quantity(kind, text)).toBe(value);
  });
});

const at = (text: string): Moment => {
  const found = moment(text);
  if (found === undefined) throw new Error(text);
  return found;
};

describe("moment", () => {
  it.each([
    "2026-02-30",
    "2025-02-29",
    "2026-04-31T10:00",
    "2026-13-01",
    "2026-00-10",
    "2026-01-00",
    "2026-03-14T24:00",
    "2026-03-14T10:60",
    "2026-03-14T10:10:60",
    "0026-03-14",
    "2026-3-14",
    "14.03.2026",
    "2026-03-14 10:00",
    "",
    "yesterday",
    "36 h",
  ])("%j is none", (text) => {
    expect(moment(text)).toBeUndefined();
  });

  it("knows leap days", () => {
    expect(moment("2024-02-29")).toMatchObject({ dayOnly: true, utc: undefined });
    expect(moment(undefined)).toBeUndefined();
  });

  it("takes zones off", () => {
    expect(at("2026-03-14T09:10+01:00").utc).toBe(at("2026-03-14T08:10Z").utc);
    expect(at("2026-03-14T09:10-05:30").utc).toBe(at("2026-03-14T14:40Z").utc);
  });

  it("agrees with the calendar on every day", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1900, max: 2100 }),
        fc.integer({ min: 1, max: 12 }),
        fc.integer({ min: 1, max: 31 }),
        (year, month, day) => {
          const text = `${year}-${String(month).padStart(2, "0")}-${String(day).padStart(2, "0")}`;
          const lengths = [
            31,
            (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0 ? 29 : 28,
            31,
            30,
            31,
            30,
            31,
            31,
            30,
            31,
            30,
            31,
          ];
          expect(moment(text) !== undefined).toBe(day <= (lengths[month - 1] ?? 0));
        },
      ),
    );
  });

  it.each([
    ["2026-03-14T09:10", "2026-03-14T09:09", true],
    ["2026-03-14T09:10", "2026-03-14T09:10", false],
    ["2026-03-14", "2026-03-14T09:10", false],
    ["2026-03-14T09:10", "2026-03-14", false],
    ["2026-03-15", "2026-03-14T23:59", true],
    // With both zones known, the zones count.
    ["2026-03-14T09:10+01:00", "2026-03-14T08:30Z", false],
    ["2026-03-14T08:30Z", "2026-03-14T09:10+01:00", true],
    // With one of them missing, both are the farm's clock.
    ["2026-03-14T09:10-05:00", "2026-03-14T09:40", false],
    ["2026-03-14T09:40", "2026-03-14T09:10-05:00", true],
    ["2026-03-14T00:30+02:00", "2026-03-13", true],
    ["2026-03-13T23:30-08:00", "2026-03-13", false],
  ])("%s after %s: %s", (first, second, after) => {
    expect(isAfter(at(first), at(second))).toBe(after);
  });
});

describe("age class", () => {
  it.each([
    [undefined, undefined],
    [0, "suckling"],
    [27, "suckling"],
    [27.9, "suckling"],
    [28, "weaner"],
    [83.9, "weaner"],
    [84, "finisher"],
    [269, "finisher"],
    [270, "adult"],
    [6000, "adult"],
    [99999, undefined],
    [-1, undefined],
  ])("of %s days is %s", (days, name) => {
    expect(classOfAge(days)).toBe(name);
  });
});

describe("path", () => {
  it.each([
    [[], ""],
    [["pig", "age"], "pig.age"],
    [["samples", 0, "id"], "samples[0].id"],
    [["groups", "a.b"], 'groups."a.b"'],
    [["a[0]"], '"a[0]"'],
    [["two words", "größe"], '"two words".größe'],
    [["", '"'], '""."\\""'],
  ])("%j is written %s", (path, text) => {
    expect(formatPath(path)).toBe(text);
  });

  it("is written differently for every path", () => {
    const step = fc.oneof(
      fc.nat(9),
      fc.string({ unit: fc.constantFrom("a", ".", "[", "]", '"', "0", " ", "\\"), maxLength: 4 }),
    );
    fc.assert(
      fc.property(fc.array(step, { maxLength: 4 }), fc.array(step, { maxLength: 4 }), (a, b) => {
        expect(formatPath(a) === formatPath(b)).toBe(JSON.stringify(a) === JSON.stringify(b));
      }),
      { numRuns: runs(2000) },
    );
  });

  it("meets what lies above and below it", () => {
    expect(pathsMeet(["a"], ["a", "b"])).toBe(true);
    expect(pathsMeet(["a", "b"], ["a"])).toBe(true);
    expect(pathsMeet([], ["a"])).toBe(true);
    expect(pathsMeet(["a", 0], ["a", 1])).toBe(false);
    expect(pathOf("pig.age")).toEqual(["pig", "age"]);
  });

  it("finds values, and never inherited ones", () => {
    expect(valueAt({ a: [{ b: 1 }] }, ["a", 0, "b"])).toBe(1);
    expect(valueAt({ a: 1 }, ["a", "b"])).toBeUndefined();
    expect(valueAt({}, ["toString"])).toBeUndefined();
    expect(valueAt("text", ["length"])).toBeUndefined();
  });
});
