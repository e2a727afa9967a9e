/** What a case inherits from the defaults of its visit, and where it is said to stand. */
import { describe, expect, it } from "vitest";
import { readCases, valueAt } from "../../src/cases/index.ts";
import { withoutFormatFaults } from "../../src/commands/sound-cases.ts";
import { explainCase } from "../../src/explain/index.ts";
import { organById } from "../../src/knowledge/index.ts";
import { lintCases } from "../../src/lint/index.ts";
import { put, temporaryFolder } from "./temporary.ts";

const visit = (defaults: string): string => `format: 1
visit: v-1
date: 2026-04-20
defaults:
${defaults}
`;
const plain = `  protocol: respiratory
  examiner: R. Sallow
  pig: {group: g-1, age: 58 d}
  death: {manner: euthanised, method: barbiturate}
  opened: {at: 2026-04-20T09:40, ambient: 14 °C}
  safety: {protection: [gloves, mask]}
  respiratory: {turbinates: {section: premolar-1}}`;

function read(keys: string, defaults = plain) {
  const root = temporaryFolder();
  put(root, { "v/visit.yaml": visit(defaults), "v/p.yaml": `format: 1\ncase: p-1\n${keys}\n` });
  return readCases(["."], { from: root });
}

function theCase(keys: string, defaults = plain) {
  const [one] = read(keys, defaults).cases;
  if (one === undefined) throw new Error("no case");
  return one;
}

describe("a case of a visit with defaults", () => {
  it("has the facts of the visit", () => {
    const one = theCase("pig: {tag: '1'}");
    expect(one.record).toMatchObject({
      protocol: "respiratory",
      examiner: "R. Sallow",
      pig: { tag: "1", group: "g-1", age: "58 d" },
      death: { manner: "euthanised", method: "barbiturate" },
      opened: { at: "2026-04-20T09:40", ambient: "14 °C" },
      safety: { protection: ["gloves", "mask"] },
    });
    expect([one.protocol.id, one.ageClass, one.ageDays]).toEqual(["respiratory", "weaner", 58]);
  });

  it("says itself what is otherwise, and a blank key says nothing", () => {
    const one = theCase("protocol: enteric\nexaminer:\npig: {age: 20 d}\nopened: {ambient: , state: fresh}");
    expect(one.record).toMatchObject({
      protocol: "enteric",
      examiner: "R. Sallow",
      pig: { age: "20 d" },
      opened: { ambient: "14 °C", state: "fresh" },
    });
  });

  it("is read alone as before", () => {
    const root = temporaryFolder();
    put(root, { "p.yaml": "format: 1\ncase: p-1\n" });
    const [one] = readCases(["."], { from: root }).cases;
    expect([one?.inherited, one?.record]).toEqual([[], { format: 1, case: "p-1" }]);
  });

  it("leaves the text that was read alone", () => {
    const one = theCase("pig: {tag: '1'}");
    expect(one.document.value).toEqual({ format: 1, case: "p-1", pig: { tag: "1" } });
    expect(one.visit?.record.defaults?.pig).toEqual({ group: "g-1", age: "58 d" });
  });

  it.each([
    ["another death takes its method along", "death: {manner: found-dead}", ["death", "method"]],
    ["a class stands for the age", "pig: {class: stillborn}", ["pig", "age"]],
    ["a carcass that was closed was not opened", "closed: {at: 2026-04-20, because: x}", ["opened", "at"]],
    ["an unreadable value is not blank", "opened: {ambient: 14 F}", ["opened", "ambient"]],
    ["an unreadable manner is not the default", "death: {manner: shot}", ["death", "method"]],
  ])("inherits nothing that is not of it: %s", (_, keys, path) => {
    expect(valueAt(theCase(keys).record, path)).toBeUndefined();
  });

  it.each([["found-dead"], ["born-dead"]])("takes no method for a pig that was %s", (manner) => {
    expect(
      theCase(`death: {manner: ${manner}}`, "  death: {method: barbiturate}").record.death?.method,
    ).toBeUndefined();
  });

  it.each([
    ["", "blank", undefined],
    ["respiratory: {turbinates: }", "blank", undefined],
    ["respiratory: {turbinates: {left: {dorsal: , ventral: }, septum: }}", "blank", undefined],
    ["respiratory: {turbinates: {note: seen}}", "blank", undefined],
    ["respiratory: normal", "blank", undefined],
    ["respiratory: {rest: normal}", "blank", undefined],
    ["respiratory: {turbinates: {not_examined: snout not sawn}}", "not_examined", undefined],
    ["respiratory: {turbinates: {not_assessable: {because: absent}}}", "not_assessable", undefined],
    ["respiratory: {turbinates: normal}", "normal", "premolar-1"],
    ["respiratory: {turbinates: {state: normal}}", "normal", "premolar-1"],
    ["respiratory: {turbinates: {left: {dorsal: 1, ventral: 2}}}", "recorded", "premolar-1"],
    ["respiratory: {turbinates: {state: normal, section: premolar-2}}", "normal", "premolar-2"],
  ])("says where the snout was sawn only of one that was looked at: %s", (keys, status, section) => {
    const organ = organById("respiratory.turbinates");
    if (organ === undefined) throw new Error("no turbinates");
    const state = theCase(keys).organ(organ);
    expect([state.status, state.entry?.section]).toEqual([status, section]);
  });
});

describe("what is wrong with a default", () => {
  it("is told once, where it stands, with the cases that inherit it", () => {
    const root = temporaryFolder();
    put(root, {
      "v/visit.yaml": visit("  opened: {ambient: 140 °C}"),
      "v/p-1.yaml": "format: 1\ncase: p-1\n",
      "v/p-2.yaml": "format: 1\ncase: p-2\n",
      "v/p-3.yaml": "format: 1\ncase: p-3\nopened: {ambient: 150 °C}\n",
    });
    const { findings } = lintCases(readCases(["."], { from: root }), { only: ["temperature-implausible"] });
    expect(findings.map(({ file, line, column, path }) => [file, line, column, path])).toEqual([
      ["v/p-3.yaml", 3, 19, "opened.ambient"],
      ["v/visit.yaml", 5, 21, "defaults.opened.ambient"],
    ]);
    expect(findings[1]?.message).toMatch(/ Inherited by 2 cases\.$/);
  });

  it.each([
    ["  opened: {ambient: 14 F}", "opened.ambient", "Did you mean -10 °C?"],
    ["  respiratory: {turbinates: {section: P1}}", "respiratory.turbinates.section", "premolar-1"],
    ["  section: premolar-1", "section", "respiratory: {turbinates: {section: …}}"],
    ["  ambient: 14 °C", "ambient", "opened: {ambient: …}"],
    ["  examinor: X", "examinor", "Did you mean examiner?"],
    ["  selection: {treated: no}", "selection", "a fact of each pig"],
    ["  alarm_check: {}", "alarm_check", "a fact of each pig"],
  ])("has its line and what to write, and no case is counted without it: %s", (defaults, path, says) => {
    const archive = read("pig: {tag: '1'}", defaults);
    const { archive: left, faults } = withoutFormatFaults(archive);
    expect(left.cases).toEqual([]);
    expect(faults.map((fault) => [fault.file, fault.line])).toEqual([["v/visit.yaml", 5]]);
    expect(faults[0]?.message).toContain(`defaults.${path}`);
    expect(faults[0]?.message).toContain(says);
  });

  it("is not told as missing as well", () => {
    const all = (defaults: string) =>
      lintCases(read("opened: {state: fresh, at: 2026-04-22T10:00}", defaults), { only: ["fact-missing"] })
        .findings.map(({ message }) => message)
        .join();
    expect(all("  opened: {place: barn}")).toContain("opened.ambient is blank");
    expect(all("  opened: {ambient: 14 F}")).not.toContain("opened.ambient");
  });

  it("can be a protocol that does not exist", () => {
    const { findings } = lintCases(read("", "  protocol: respirator"), { only: ["protocol-unknown"] });
    expect(findings.map(({ file, line, message }) => [file, line, message])).toEqual([
      [
        "v/visit.yaml",
        5,
        'protocol: there is no protocol "respirator". Did you mean respiratory? Inherited by p-1.',
      ],
    ]);
  });
});

describe("explain of a case", () => {
  it("says what the visit gives, and at which line", () => {
    const { title, sections } = explainCase(theCase("pig: {tag: '1', sex: female}\nexaminer: B. Second"));
    expect(title).toBe("respiratory protocol; 58 d, weaner; signs: not recorded");
    const given = sections.find(({ heading }) => heading === "From the defaults of the visit")?.lines ?? [];
    expect(given[0]).toBe("protocol: respiratory (v/visit.yaml, line 5)");
    expect(given).toContain("safety.protection: gloves, mask (v/visit.yaml, line 10)");
    expect(given.join()).not.toContain("examiner");
    expect(sections.at(-1)?.lines.join()).toContain("nares");
  });
});
