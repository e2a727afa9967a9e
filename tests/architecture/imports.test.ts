/** The house stands on its own rules: imports run downwards only, and each room keeps to its trade. */
import { readdirSync, readFileSync } from "node:fs";
import { dirname, join, relative } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";

const source = fileURLToPath(new URL("../../src", import.meta.url));

/** A room may import from rooms with a lower number; 0 may import from nothing but generated code and words. */
const floors: Record<string, number> = {
  generated: 0,
  words: 0,
  statistics: 0,
  knowledge: 1,
  cases: 2,
  notes: 2,
  phrases: 3,
  schemas: 3,
  record: 3,
  score: 4,
  drawings: 1,
  figures: 2,
  report: 7.5,
  measure: 4,
  patterns: 4,
  alarms: 5,
  sampling: 4,
  seals: 5,
  lint: 6,
  fix: 6,
  herd: 6,
  agree: 6,
  plan: 6,
  samples: 6,
  tally: 6,
  workup: 6,
  compare: 7,
  explain: 7,
  begin: 7,
  reading: 7,
  results: 7,
  sending: 7,
  sheet: 7,
  migrate: 7,
  history: 7,
  interview: 8,
  formats: 8,
  tables: 8.5,
  commands: 9,
  "index.ts": 9,
};

interface Import {
  readonly from: string;
  readonly to: string;
}

const files = readdirSync(source, { recursive: true, encoding: "utf8" }).filter((name) => /\.ts$/.test(name));
const room = (file: string): string => file.split("/")[0] ?? "";
const written = files.filter((file) => room(file) !== "generated" && file !== "lint/rules/index.ts");

const imports: Import[] = written.flatMap((file) => {
  const text = readFileSync(join(source, file), "utf8");
  const specifiers = [...text.matchAll(/(?:from|import)\s*\(?\s*"([^"]+)"/g)].map((match) => match[1] ?? "");
  return specifiers.map((to) => ({
    from: file,
    to: to.startsWith(".") ? relative(source, join(source, dirname(file), to)) : to,
  }));
});
const inside = imports.filter(({ to }) => room(to) in floors);

describe("the house", () => {
  it("has a floor for every room", () => {
    expect(files.length).toBeGreaterThan(50);
    expect(files.filter((file) => !(room(file) in floors))).toEqual([]);
  });

  it("imports downwards only", () => {
    const upwards = inside.filter(({ from, to }) => {
      if (room(from) === room(to)) return false;
      return (
        (floors[room(to)] ?? 0) >= (floors[room(from)] ?? 0) && !["generated", "words"].includes(room(to))
      );
    });
    expect(upwards).toEqual([]);
  });

  it("statistics knows no pigs: it imports nothing of ours", () => {
    expect(inside.filter(({ from, to }) => room(from) === "statistics" && room(to) !== "statistics")).toEqual(
      [],
    );
  });

  it("cases knows no rules, scores or herds", () => {
    const known = new Set(["cases", "knowledge", "generated", "words"]);
    expect(inside.filter(({ from, to }) => room(from) === "cases" && !known.has(room(to)))).toEqual([]);
  });

  it("nothing but commands touches the process or the terminal", () => {
    const touching = written.filter((file) => {
      const text = readFileSync(join(source, file), "utf8").replaceAll(/\/\*[\s\S]*?\*\/|\/\/.*/g, "");
      return (
        room(file) !== "commands" &&
        /\bprocess\.(?:std|env|exit|argv|cwd|on\b)|\bconsole\.|node:process/.test(text)
      );
    });
    expect(touching).toEqual([]);
  });

  it("writes files in one place, and lines in another", () => {
    const calling = (call: RegExp): string[] =>
      written.filter((file) => call.test(readFileSync(join(source, file), "utf8")));
    expect(calling(/\bprocess\.std(?:out|err)\.write\b/)).toEqual(["commands/streams.ts"]);
    expect(calling(/\b(?:renameSync|appendFile|createWriteStream|copyFile)/)).toEqual([
      "commands/write-file.ts",
    ]);
    expect(calling(/\bwriteFile/).sort()).toEqual(["commands/streams.ts", "commands/write-file.ts"]);
  });

  it("has no way round: no file imports in a circle", () => {
    const graph = new Map<string, string[]>();
    for (const { from, to } of inside) graph.set(from, [...(graph.get(from) ?? []), to]);
    const state = new Map<string, "open" | "done">();
    const circles: string[] = [];
    const visit = (file: string, trail: string[]): void => {
      if (state.get(file) === "done") return;
      if (state.get(file) === "open") {
        circles.push([...trail.slice(trail.indexOf(file)), file].join(" -> "));
        return;
      }
      state.set(file, "open");
      for (const next of graph.get(file) ?? []) visit(next, [...trail, file]);
      state.set(file, "done");
    };
    for (const file of written) visit(file, []);
    expect(circles).toEqual([]);
  });
});
