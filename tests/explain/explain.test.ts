/** Everything that has a name can be explained, with its source; other names are answered with the nearest. */
import { describe, expect, it } from "vitest";
import { explain, kindCalled, kinds, lists, nearestNames, topics } from "../../src/explain/index.ts";
import { explainJson, explainListJson } from "../../src/formats/explain/json.ts";
import { explainKindsText, explainListText, explainText } from "../../src/formats/explain/text.ts";
import { makeStyle } from "../../src/formats/page/style.ts";
import { alarmPatterns, indicators, organs, protocols } from "../../src/knowledge/index.ts";
import { scales } from "../../src/knowledge/scales.ts";
import { rules } from "../../src/lint/index.ts";
import { every } from "../every.ts";

const plain = makeStyle(false);
const names = (kind: string): string[] => topics.filter((one) => one.kind === kind).map((one) => one.name);

describe("what can be explained", () => {
  it("is every rule, scale, protocol, organ, indicator and alarm", () => {
    expect(names("rule")).toEqual([...rules.map((rule) => rule.id), "unreadable"]);
    expect(names("scale")).toEqual([...scales.keys()]);
    expect(names("protocol")).toEqual([...protocols.keys()]);
    expect(names("organ")).toEqual(organs.map((organ) => organ.id));
    expect(names("indicator")).toEqual([...indicators.keys()]);
    expect(names("alarm")).toEqual(alarmPatterns.map((alarm) => alarm.id));
    for (const kind of kinds) expect(names(kind).length, kind).toBeGreaterThan(0);
  });

  const called = (topic: (typeof topics)[number]): string => `${topic.kind} ${topic.name}`;
  every(
    "has a title, sections and a source",
    topics,
    (topic) => {
      const found = explain(topic.name).find((one) => one.kind === topic.kind && one.name === topic.name);
      if (found === undefined) throw new Error("not found under its own name");
      const text = explainText([found], plain);
      expect(found.title.length).toBeGreaterThan(1);
      expect(found.sections.flatMap((section) => section.lines).join("")).not.toBe("");
      // Of a disease each statement has its own, or the words from memory.
      if (topic.kind === "disease") expect(text).toMatch(/\[\d+\]|\[from memory\]/);
      else expect(text).toContain("Source: ");
      expect(text).not.toMatch(/undefined|NaN|\[object|\.\.\s|Write \.|\(\)|: *\./);
      if (topic.kind !== "indicator" && topic.kind !== "disease") expect(found.source).not.toBeNull();
      expect(Object.keys(JSON.parse(explainJson([found])).explanations[0])).toEqual([
        "kind",
        "name",
        "title",
        "sections",
        "source",
      ]);
    },
    called,
  );

  it("is counted by kind on one screen", () => {
    const lines = explainKindsText(topics, plain, 80).trimEnd().split("\n");
    expect(lines.length).toBeLessThanOrEqual(22);
    expect(lines.filter((line) => line.length > 80)).toEqual([]);
    const page = lines.join(" ").replaceAll(/ +/g, " ");
    for (const [kind, list] of lists) expect(page).toContain(` ${list} (${names(kind).length})`);
    expect(page).toContain("carcase explain KIND");
  });

  it.each([...lists])("is listed by kind, one line each: %s", (kind, list) => {
    expect([kindCalled(list), kindCalled(kind)]).toEqual([kind, kind]);
    // The word that lists a kind names nothing else.
    expect(explain(list)).toEqual([]);
    const [head, ...lines] = explainListText(kind, topics, plain, 80).trimEnd().split("\n");
    expect(head).toBe(`${list} (${lines.length})`);
    expect(lines.map((line) => line.trim().split("  ")[0])).toEqual(names(kind));
    expect(lines.filter((line) => line.length > 80)).toEqual([]);
  });

  it("is the same for scripts", () => {
    const all = JSON.parse(explainListJson(topics));
    expect(all.topics).toHaveLength(topics.length);
    expect(all.kinds.map((one: { kind: string }) => one.kind)).toEqual(kinds);
    for (const { kind, list, count } of all.kinds)
      expect([lists.get(kind), names(kind).length]).toEqual([list, count]);
  });
});

it("says how long tissue keeps by the words that the settings have", () => {
  const lines = (name: string): string =>
    explain(name)
      .filter(({ kind }) => kind === "time limit")
      .flatMap(({ sections }) => sections.flatMap((section) => section.lines))
      .join("\n");
  expect(lines("gut-histology")).toContain("between 4 and 15 °C: 30 min");
  expect(lines("gut-histology")).toContain("autolysis: {up-to-15: {gut-histology: 0.5}}");
  expect(lines("up-to-15")).toContain("culture: 12 h");
});

describe("a name", () => {
  const found = (name: string): string[] => explain(name).map((one) => `${one.kind} ${one.name}`);

  it("may belong to several things", () => {
    expect(found("respiratory")).toEqual([
      "protocol respiratory",
      "system respiratory",
      "sign family respiratory",
      "sample set respiratory",
    ]);
  });

  it.each([
    ["lungs", "organ respiratory.lungs"],
    ["Lungs", "organ respiratory.lungs"],
    ["SKIPPED_ORGAN", "rule skipped-organ"],
    ["[treated-pig]", "rule treated-pig"],
    ["cough", "sign cough"],
    ["consolidation", "process consolidation"],
    ["livor mortis", "term livor"],
    ["random", "distribution random"],
    ["blank", "record word blank"],
    ["foot-and-mouth disease", "disease foot-and-mouth-disease"],
    ["captive bolt", "method of death captive-bolt"],
    ["random", "selection basis random"],
    ["tag", "fact pig.tag"],
    ["unreadable", "rule unreadable"],
    ["gut-histology", "time limit gut-histology"],
    ["up-to-15", "time limit up-to-15"],
    ["feed", "sample material feed"],
    ["oral fluid", "sample material oral_fluid"],
    ["plain-tube", "container plain-tube"],
    ["EDTA tube", "container edta-tube"],
    ["cytology", "test cytology"],
  ])("%s leads to %s", (name, expected) => {
    expect(found(name)).toContain(expected);
  });

  it.each([
    ["skiped-organ", "skipped-organ"],
    ["pig-treated", "treated-pig"],
    ["turbinate", "turbinates"],
    ["maff-1979", "maff-1978"],
    ["lung", "lungs"],
    ["vesickle", "vesicle"],
    ["dottori", "dottori-2007"],
    ["proceses", "processes"],
  ])("%s is answered with %s first or near the top", (name, expected) => {
    expect(explain(name)).toEqual([]);
    expect(nearestNames(name)).toContain(expected);
  });

  it.each(["", "   ", "zzzzzzzzz", "x".repeat(5000), "__proto__", "constructor"])("%j is nothing", (name) => {
    expect(explain(name)).toEqual([]);
    expect(nearestNames(name).length).toBeLessThanOrEqual(4);
  });
});

describe("a rule", () => {
  it("says how to change its level and how to accept a finding, unless it is locked", () => {
    const open = explainText(explain("treated-pig"), plain);
    expect(open).toContain("rules: {treated-pig: note}");
    expect(open).toContain("- {rule: treated-pig, at: ");
    const locked = explainText(explain("alarm-sign-recorded"), plain);
    expect(locked).toContain("cannot be changed");
    expect(locked).not.toContain("rules: {");
  });

  it("keeps lines of text to the width of a page", () => {
    for (const topic of topics)
      for (const one of explain(topic.name))
        for (const section of one.sections.filter(({ yaml }) => yaml !== true))
          for (const line of explainText([{ ...one, sections: [section] }], plain).split("\n"))
            if (line.trim().split(" ").length > 1) expect(line.length, line).toBeLessThanOrEqual(110);
  });
});
