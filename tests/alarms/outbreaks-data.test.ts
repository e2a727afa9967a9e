/** The published outbreaks as data: whole sources, the rounds, no error of the format. No alarm is run here. */
import { readdirSync, readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { parse } from "yaml";
import { readCases } from "../../src/cases/index.ts";
import { every } from "../every.ts";
import { beforeLooking } from "./rounds.ts";

const base = "tests/fixtures/outbreaks";
const ids = readdirSync(base, { withFileTypes: true })
  .filter((entry) => entry.isDirectory())
  .map((entry) => entry.name)
  .sort();

/** Pictures of which four independent descriptions could not be read; the README of the fixtures says what was sought. */
const fewer: Readonly<Record<string, number>> = { "foot-and-mouth-heart": 2, anthrax: 2 };

type Fields = Readonly<Record<string, unknown>>;

const sources = new Map<string, Fields>(
  ids.map((id) => [id, parse(readFileSync(`${base}/${id}/source.yaml`, "utf8"))]),
);

const pictures = new Map<string, string[]>();
for (const [id, { picture, round }] of sources) {
  if (round !== 1) continue;
  const name = String(picture);
  pictures.set(name, [...(pictures.get(name) ?? []), id]);
}

const texts = [
  "authors",
  "title",
  "journal",
  "read",
  "country",
  "outbreak",
  "picture",
  "disease",
  "because",
  "pigs",
];

every("an outbreak names its source in full", sources, ([id, source]) => {
  expect(id).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/);
  for (const field of texts) expect(source[field], field).toEqual(expect.stringMatching(/\S/));
  expect(String(source.year)).toMatch(/^(\d{4}|unknown)$/);
  expect(["natural", "experimental"]).toContain(source.infection);
  expect(["of the source", "invented"]).toContain(source.dates);
  expect(source.words).toEqual(expect.arrayContaining([expect.stringMatching(/\S/)]));
  for (const field of [source.from_memory ?? []].flat()) expect(Object.keys(source)).toContain(field);
});

every("an expected alarm names a disease, and only an expected one", sources, ([, { expected }]) => {
  const { alarm, which, ...rest } = expected as { alarm: unknown; which: unknown[] };
  expect(rest).toEqual({});
  expect(["yes", "no"]).toContain(alarm);
  expect(which.length > 0).toBe(alarm === "yes");
});

every("a picture of the first round has at least four descriptions", pictures, ([name, of]) => {
  expect(of.length).toBeGreaterThanOrEqual(fewer[name] ?? 4);
});

every("is of a round, and work only where that round was counted before anybody looked", sources, (one) => {
  const { round, half } = one[1];
  expect(half).toBe(beforeLooking.get(Number(round))?.half);
});

it("what was counted before anybody looked is no more than there was to count", () => {
  for (const [round, { half, before_looking: counted }] of beforeLooking) {
    if (half === "work") expect(counted).toBeDefined();
    const of = [...sources.values()].filter((source) => source.round === round).length;
    const [raised = 0, all = 0] = [0, 1].map((at) => (counted?.must[at] ?? 0) + (counted?.need_not[at] ?? 0));
    expect(raised).toBeLessThanOrEqual(all);
    expect(all).toBeLessThanOrEqual(of);
  }
});

every("an expectation that the criteria overrule says why", sources, ([, source]) => {
  const { by_criteria: by, by_criteria_because: because, round } = source;
  if (by === undefined) return expect(because).toBeUndefined();
  // Rounds 1 and 2 were typed before the criteria; a later one is overruled by what was added to them since, or by a second
  // reader who did not know what the first expected.
  if (Number(round) > 2)
    expect(because).toMatch(/after the (?:seventh|ninth|tenth|eleventh) round|second reader/);
  expect(by).toBe((source.expected as { alarm: unknown }).alarm === "yes" ? "no" : "yes");
  expect(because).toEqual(expect.stringMatching(/\b[A-Z]\d\b/));
});

const typed = (id: string) => readdirSync(`${base}/${id}`).filter((name) => name !== "source.yaml");

every("an outbreak has pigs, and a visit at most", ids, (id) => {
  const names = typed(id);
  expect(names.filter((name) => !/^(pig-\d\d|visit)\.yaml$/.test(name))).toEqual([]);
  expect(names.some((name) => name.startsWith("pig-"))).toBe(true);
});

const files = ids.flatMap((id) => typed(id).map((name) => `${base}/${id}/${name}`));

every("a typed file has no error of the format", files, (file) => {
  const { cases, visits, unreadable } = readCases([file]);
  expect(unreadable).toEqual([]);
  expect([...cases, ...visits].flatMap((one) => one.faults.map((fault) => fault.message))).toEqual([]);
});

every("names of cases and visits are unique", ["case", "visit"], (key) => {
  const names = files
    .map((file) => parse(readFileSync(file, "utf8"))[key])
    .filter((name) => name !== undefined);
  expect(names.length).toBeGreaterThan(0);
  expect(names.filter((name, index) => names.indexOf(name) !== index)).toEqual([]);
});
