import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { keyIn, Pseudonyms } from "../../src/tables/index.ts";
import { key } from "./exported.ts";

const pseudonyms = new Pseudonyms(key);
const daysBetween = (a: string, b: string): number => (Date.parse(b) - Date.parse(a)) / 86_400_000;

describe("a pseudonym", () => {
  it("is the same for the same name, key, kind and place, and for nothing else", () => {
    const name = pseudonyms.name("tag", "alder-farm", "4127");
    expect(new Pseudonyms(key).name("tag", "alder-farm", "4127")).toBe(name);
    const others = [
      pseudonyms.name("tag", "alder-farm", "4128"),
      pseudonyms.name("tag", "maple-farm", "4127"),
      pseudonyms.name("tag", undefined, "4127"),
      pseudonyms.name("pen", "alder-farm", "4127"),
      new Pseudonyms("7d".repeat(32)).name("tag", "alder-farm", "4127"),
    ];
    expect(new Set([name, ...others]).size).toBe(6);
  });

  it("holds nothing of the name: consonants behind its kind", () => {
    fc.assert(
      fc.property(fc.string(), (name) => {
        expect(pseudonyms.name("case", undefined, name)).toMatch(/^case-[bcdfghjkmnpqrstv]{16}$/);
      }),
    );
  });

  it("does not change when more names are met than are remembered", () => {
    const first = pseudonyms.name("case", undefined, "x");
    for (let index = 0; index < 25_000; index++) pseudonyms.name("case", undefined, `y-${index}`);
    expect(pseudonyms.name("case", undefined, "x")).toBe(first);
  });
});

describe("days", () => {
  it("of one farm keep what lies between them, and none stays where it was", () => {
    fc.assert(
      fc.property(
        fc.string(),
        fc.date({ min: new Date("1990-01-01"), max: new Date("2090-01-01"), noInvalidDate: true }),
        fc.integer({ min: 0, max: 4000 }),
        (farm, from, days) => {
          const written = from.toISOString().slice(0, 10);
          const later = new Date(from.getTime() + days * 86_400_000).toISOString().slice(0, 10);
          const moved = pseudonyms.moved(farm, written);
          expect(daysBetween(moved, pseudonyms.moved(farm, later))).toBe(days);
          expect(Math.abs(daysBetween(written, moved))).toBeGreaterThanOrEqual(1);
          expect(Math.abs(daysBetween(written, moved))).toBeLessThanOrEqual(182);
        },
      ),
    );
  });

  it("keep the time of day, move apart by farm, and stay where that is asked for", () => {
    expect(pseudonyms.moved("alder-farm", "2026-03-14T09:10+01:00")).toMatch(
      /^\d{4}-\d\d-\d\dT09:10\+01:00$/,
    );
    const farms = Array.from({ length: 40 }, (_, index) => pseudonyms.moved(`farm-${index}`, "2026-03-14"));
    expect(new Set(farms).size).toBeGreaterThan(20);
    expect(new Pseudonyms(key, { keepDays: true }).moved("alder-farm", "2026-03-14")).toBe("2026-03-14");
  });
});

describe("a key", () => {
  it("is 64 hexadecimal digits and no passphrase", () => {
    expect(keyIn(`${key}\n`)).toBe(key);
    for (const text of ["", "secret", key.slice(1), `${key}0`, `${key} ${key}`, "g".repeat(64)])
      expect(keyIn(text)).toBeUndefined();
  });
});
