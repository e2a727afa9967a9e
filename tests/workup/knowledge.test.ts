/** Every disease file: its words are those of the format, whom it names exists, its sources are told, and its examples fit. */
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import { definitions } from "../../src/knowledge/definitions.ts";
import { type Disease, diseases } from "../../src/knowledge/diseases.ts";
import { alarmPatterns, organById, sampleRules, systems } from "../../src/knowledge/index.ts";
import { fitOf, hasCore, isExcluded } from "../../src/workup/index.ts";
import { readAlarmFiles } from "../alarms/alarm-archive.ts";
import { every } from "../every.ts";
import { unknownWords } from "../patterns/unknown-words.ts";

const folder = new URL("../../src/knowledge/diseases/", import.meta.url);
const all = [...diseases.values()];
const systemIds: readonly string[] = systems.map(({ id }) => id);
const alarmIds: readonly string[] = alarmPatterns.map(({ id }) => id);
const agents = readAgents();

it("is one file a disease, named after its id, and 70 at least", () => {
  const files = readdirSync(folder).filter((name) => name.endsWith(".yaml"));
  expect(files.sort()).toEqual(all.map(({ id }) => `${id}.yaml`).sort());
  expect(all.length).toBeGreaterThanOrEqual(70);
});

every("conditions use words of the case format", all, ({ statements }) => {
  expect(statements.flatMap(({ when }) => (when === undefined ? [] : unknownWords(when)))).toEqual([]);
});

every("systems, alarms, agents, tests, samples and containers exist", all, (one) => {
  const unknown = [
    ...one.systems.filter((id) => !systemIds.includes(id)),
    ...one.alarms.filter((id) => !alarmIds.includes(id)),
    ...agentsOf(one).filter((id) => agents !== undefined && !agents.has(id)),
    ...one.confirm.flatMap(({ test, sample, into }) => [
      ...(test in definitions.test ? [] : [test]),
      ...sample.filter(
        (id) => organById(id) === undefined && !systemIds.includes(id) && !(id in sampleRules.materials),
      ),
      ...(into === undefined || into in definitions.container ? [] : [into]),
    ]),
  ];
  expect(unknown).toEqual([]);
});

every(
  "of each alarm, the diseases that it has excluded exist and are no forms",
  alarmPatterns,
  ({ rules_out }) => {
    expect(rules_out.filter((id) => !diseases.has(id) || diseases.get(id)?.form_of !== undefined)).toEqual(
      [],
    );
  },
);

every("diseases that it is confused with and goes with exist", all, ({ id, confused_with, goes_with }) => {
  const named = [...confused_with, ...(goes_with ?? [])].map(({ disease }) => disease);
  expect(named.filter((name) => !diseases.has(name))).toEqual([]);
  expect(named).not.toContain(id);
});

every("says by the gross picture what makes one think of it", all, ({ statements }) => {
  const core = statements.filter(({ strength }) => strength === "typical" || strength === "hallmark");
  expect(core.filter(({ when }) => when !== undefined).length).toBeGreaterThan(0);
  expect(statements.filter(({ when }) => when !== undefined).length).toBeGreaterThanOrEqual(3);
});

describe("the worked examples", () => {
  const examples = all.flatMap((disease) =>
    disease.examples.map((example) => ({ id: `${disease.id}: ${example.name}`, disease, example })),
  );
  every("fit the disease, or do not, as they say", examples, ({ disease, example }) => {
    const { unreadable, visits, cases } = readAlarmFiles({
      visit: example.visit ?? {},
      cases: example.cases,
    });
    expect(unreadable).toEqual([]);
    expect([...visits, ...cases].flatMap((one) => one.faults.map((fault) => fault.message))).toEqual([]);
    const [visit] = visits;
    if (visit === undefined) throw new Error("no visit");
    const fit = fitOf(disease, visit);
    expect(hasCore(fit) && !isExcluded(fit), fit.against.map((one) => one.statement.says).join(", ")).toBe(
      example.expect === "fits",
    );
  });
  it("has one that fits for each disease", () => {
    const without = all.filter(({ examples: own }) => own.every(({ expect }) => expect !== "fits"));
    expect(without.map(({ id }) => id)).toEqual([]);
  });
});

const agentsOf = ({ agents: own, confirm }: Disease): string[] => [
  ...own,
  ...confirm.flatMap(({ agent }) => agent ?? []),
];

/** The ids of agents.yaml. */
function readAgents(): ReadonlySet<string> | undefined {
  const file = new URL("../../src/knowledge/agents.yaml", import.meta.url);
  if (!existsSync(file)) return undefined;
  const { agents: list } = parse(readFileSync(file, "utf8")) as { agents: Record<string, unknown> };
  return new Set(Object.keys(list));
}
