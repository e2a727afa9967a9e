/** The same for a complete case of every protocol and age class, made from the knowledge files. */
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import { readCases } from "../../src/cases/index.ts";
import { defaultSettings } from "../../src/cases/settings/settings.ts";
import { type AgeClass, ageClasses } from "../../src/knowledge/index.ts";
import { completeCase } from "./complete-case.ts";
import { lintBeside, mutate, names } from "./mutate.ts";
import { omissionsOf } from "./omissions.ts";

const file = "made/made-1.yaml";
const unborn: readonly AgeClass[] = ["mummy", "aborted", "stillborn"];
/** No unborn pig has fits; beside a stillbirth they are those of its dam. */
const nervous = (ageClass: AgeClass): string[] => [
  ...(unborn.includes(ageClass) ? ["stillbirth"] : []),
  "convulsions",
  "lameness",
];
const wishes = [...defaultSettings.protocols.values()].flatMap((protocol) =>
  (Object.keys(ageClasses.classes) as AgeClass[]).map((ageClass) => ({
    protocol,
    ageClass,
    sex: "female" as const,
    signs: protocol.id === "neurological" ? nervous(ageClass) : ["none"],
  })),
);

describe("omission mutants of every protocol and age class", () => {
  let caught = 0;
  let total = 0;

  it.each(wishes.map((wish) => [wish.protocol.id, wish.ageClass, wish] as const))(
    "%s, %s",
    (_protocol, _class, wish) => {
      const text = completeCase(wish);
      // No pig born dead goes over a slaughter line: the record is complete, and that is the one thing said of it.
      const contradiction = unborn.includes(wish.ageClass) && wish.protocol.manners !== undefined;
      expect(lintBeside(text, file).map(({ rule }) => rule)).toEqual(
        contradiction ? ["protocol-contradicts-death"] : [],
      );
      const bytes = new TextEncoder().encode(text);
      const one = readCases(["-"], { input: { bytes, name: file } }).cases[0];
      expect(one).toBeDefined();
      const record: unknown = parse(text);
      const missed: string[] = [];
      for (const omission of one === undefined ? [] : omissionsOf(one)) {
        if (omission.onlyBlank === true) continue;
        total++;
        if (names(lintBeside(mutate(record, omission, "key taken out"), file), omission)) caught++;
        else missed.push(omission.names[0] ?? "");
      }
      expect(missed).toEqual([]);
    },
  );

  it("are counted", () => {
    console.log(`omission mutants of all protocols and age classes found: ${caught} of ${total}`);
    expect(total).toBeGreaterThan(1500);
    expect(caught).toBe(total);
  });
});
