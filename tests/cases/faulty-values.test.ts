/** Whatever is wrong in one place of a case, every rule can still be asked of the rest. */
import { readFileSync } from "node:fs";
import fc from "fast-check";
import { expect, it } from "vitest";
import { parse, stringify } from "yaml";
import { type Path, valueAt } from "../../src/cases/index.ts";
import { lintExample } from "../lint/lay-example.ts";
import { runs } from "../random.ts";

const read = (name: string): Record<string, unknown> =>
  parse(readFileSync(new URL(`../fixtures/birch-farm/2026-04-20/${name}.yaml`, import.meta.url), "utf8"));
const models = { case: read("pig-01"), visit: read("visit") };

function pathsOf(value: unknown, path: Path = []): Path[] {
  if (typeof value !== "object" || value === null) return [path];
  return [
    path,
    ...Object.entries(value).flatMap(([key, inner]) =>
      pathsOf(inner, [...path, Array.isArray(value) ? Number(key) : key]),
    ),
  ];
}

const places = (["case", "visit"] as const).flatMap((kind) =>
  pathsOf(models[kind])
    .filter((path) => path.length > 0 && path[0] !== "format")
    .map((path) => ({ kind, path })),
);
const inLists = places.filter(({ path }) => path.some((step) => typeof step === "number"));
const wrong = fc.constantFrom<unknown>("q q q", -77777, null, [], [null], {}, { qqq: 1 }, ["q q q"], [{}]);

it("asks every rule, and says of nothing that it is undefined", () => {
  const place = fc.oneof(fc.constantFrom(...places), fc.constantFrom(...inLists));
  fc.assert(
    fc.property(place, wrong, ({ kind, path }, value) => {
      const changed = structuredClone(models[kind]);
      const parent = valueAt(changed, path.slice(0, -1)) as Record<string | number, unknown>;
      parent[path.at(-1) ?? ""] = value;
      const top = String(path[0]);
      const { findings } = lintExample({ [kind]: stringify({ [top]: changed[top] }) });
      for (const { message } of findings) expect(message).not.toMatch(/\bundefined\b|\[object/);
    }),
    { numRuns: runs(250) },
  );
});
