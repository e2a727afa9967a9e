/** Settings: which file holds, what its names mean, and what is said of names that mean nothing. */
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { readCases } from "../../src/cases/index.ts";
import { buildSettings, defaultSettings } from "../../src/cases/settings/settings.ts";
import { settingsFaults } from "../../src/cases/settings/settings-faults.ts";
import type { SettingsFile } from "../../src/generated/settings.types.ts";
import { reading } from "./reading.ts";
import { put, smallCase, temporaryFolder } from "./temporary.ts";

describe("the settings of a case", () => {
  it("are in the nearest carcase.yaml above it, within its repository", () => {
    const root = temporaryFolder();
    put(root, {
      "carcase.yaml": "format: 1\nprotocol: enteric\n",
      "a.yaml": smallCase("a"),
      "farm/deep/b.yaml": smallCase("b"),
      "farm/own/carcase.yaml": "format: 1\nprotocol: respiratory\n",
      "farm/own/c.yaml": smallCase("c", "protocol: perinatal\n"),
      "farm/own/d.yaml": smallCase("d"),
      "repository/.git/HEAD": "",
      "repository/e.yaml": smallCase("e"),
    });
    const { cases, unreadable } = readCases(["."], { from: root });
    expect(unreadable).toEqual([]);
    expect(cases.map((one) => [one.id, one.protocol.id, one.settings.file])).toEqual([
      ["a", "enteric", "carcase.yaml"],
      ["b", "enteric", "carcase.yaml"],
      ["c", "perinatal", "farm/own/carcase.yaml"],
      ["d", "respiratory", "farm/own/carcase.yaml"],
      ["e", "full", undefined],
    ]);
  });

  it("are those of --config for every case", () => {
    const root = temporaryFolder();
    put(root, {
      "carcase.yaml": "format: 1\nprotocol: enteric\n",
      "own.yaml": "format: 1\nprotocol: respiratory\nlevel: 0.9\n",
      "a/b.yaml": smallCase("b"),
    });
    const { cases } = readCases(["a"], { from: root, config: "own.yaml" });
    expect(cases.map((one) => [one.protocol.id, one.settings.level, one.settings.file])).toEqual([
      ["respiratory", 0.9, "own.yaml"],
    ]);
  });

  it.each([
    ["missing.yaml", "missing.yaml: there is no such file"],
    [".", ".: it is a folder; a case is a plain file"],
    ["bad.yaml", "bad.yaml:2: a tab is used to indent; use spaces"],
  ])("--config %s is refused, and the case is read all the same", (config, message) => {
    const root = temporaryFolder();
    put(root, { "a/b.yaml": smallCase("b"), "bad.yaml": "x:\n\ty: 1\n" });
    const { cases, unreadable } = readCases(["a"], { from: root, config });
    expect(cases).toHaveLength(1);
    expect(
      unreadable.map(({ file, line, message: text }) => `${file}${line === 0 ? "" : `:${line}`}: ${text}`),
    ).toEqual([message]);
  });

  it("with faults are said once, every fault at its place, and the defaults hold", () => {
    const root = temporaryFolder();
    put(root, {
      "carcase.yaml":
        "format: 1\nprotocol: fll\nscales: [maff, maff-1978]\nprotocols:\n  own: {extends: respiratry, add: [nervous.brian]}\n",
      "a.yaml": smallCase("a"),
      "b/c.yaml": smallCase("c"),
    });
    const { cases, unreadable } = readCases(["."], { from: root });
    expect(cases.map((one) => one.settings)).toEqual([defaultSettings, defaultSettings]);
    expect(
      unreadable.map(({ file, line, column, message }) => `${file}:${line}:${column} ${message}`),
    ).toEqual([
      'carcase.yaml:2:11 protocol: there is no protocol "fll". Did you mean full?',
      'carcase.yaml:3:10 scales[0]: there is no scale "maff". Did you mean maff-1978?',
      'carcase.yaml:5:18 protocols.own.extends: there is no protocol "respiratry". Did you mean respiratory?',
      'carcase.yaml:5:36 protocols.own.add[0]: there is no system or organ "nervous.brian". Did you mean nervous.brain?',
    ]);
  });

  it("name an unknown protocol of a case, and take the default for it", () => {
    const root = temporaryFolder();
    put(root, {
      "carcase.yaml": "format: 1\nprotocol: enteric\n",
      "a.yaml": smallCase("a", "protocol: entric\n"),
      "b.yaml": smallCase("b", "protocol: toString\n"),
    });
    const { cases } = readCases(["."], { from: root });
    expect(cases.map((one) => [one.unknownProtocol, one.protocol.id])).toEqual([
      ["entric", "enteric"],
      ["toString", "enteric"],
    ]);
  });

  it("are found from outside the folder of the cases", () => {
    const root = temporaryFolder();
    put(root, {
      "in/carcase.yaml": "format: 1\nprotocol: enteric\n",
      "in/a.yaml": smallCase("a"),
      "out/x": "",
    });
    const { cases } = readCases(["../in"], { from: join(root, "out") });
    expect(cases.map((one) => [one.file, one.protocol.id, one.settings.file])).toEqual([
      ["../in/a.yaml", "enteric", "../in/carcase.yaml"],
    ]);
  });
});

/** Settings of a text that fits the schema. */
function settings(text: string): SettingsFile {
  const { messages, record } = reading(`format: 1\n${text}`, "settings");
  expect(messages).toEqual([]);
  return record as unknown as SettingsFile;
}

const faults = (text: string): string[] => settingsFaults(settings(text)).map(({ message }) => message);

describe("names in settings", () => {
  it.each([
    ["protocol: slaughter", ['protocol: there is no protocol "slaughter". Did you mean slaughter-check?']],
    [
      "protocol: zzz",
      [
        'protocol: there is no protocol "zzz". There are enteric, full, neurological, perinatal, respiratory and slaughter-check.',
      ],
    ],
    [
      "protocols: {a: {add: [brain]}}",
      ['protocols.a.add[0]: there is no system or organ "brain". Did you mean nervous.brain?'],
    ],
    [
      "protocols: {a: {add: [nervus, nervous, base]}}",
      ['protocols.a.add[0]: there is no system or organ "nervus". Did you mean nervous?'],
    ],
    [
      "protocols: {a: {leave_out: [base]}}",
      [
        'protocols.a.leave_out[0]: there is no system or organ "base". Write an organ as system.organ, such as nervous.brain.',
      ],
    ],
    [
      "protocols: {a: {facts: [pig.wieght, all]}}",
      ['protocols.a.facts[0]: there is no fact "pig.wieght". Did you mean pig.weight?'],
    ],
    [
      "protocols: {a: {extends: zzzzzz}}",
      [/^protocols\.a\.extends: there is no protocol "zzzzzz"\. There are .*/],
    ],
    [
      "protocols: {a: {extends: a}}",
      ["protocols.a.extends: it extends itself; let one of them extend another protocol, or none."],
    ],
    [
      "protocols: {a: {extends: b}, b: {extends: c}, c: {extends: a}, d: {extends: a}}",
      [
        "protocols.a.extends: a, b and c extend each other in a circle; let one of them extend another protocol, or none.",
      ],
    ],
    [
      "protocols: {full: {extends: respiratory}, respiratory: {extends: full}}",
      [
        "protocols.full.extends: full and respiratory extend each other in a circle; let one of them extend another protocol, or none.",
      ],
    ],
    ["indicators: {x: {title: t}}", ["indicators.x: write either score, finding or result."]],
    [
      "indicators: {x: {title: t, score: {scale: maff-1978, at_least: 1}, finding: {organ: respiratory.lungs}}}",
      ["indicators.x: write either score, finding or result."],
    ],
    [
      "indicators: {x: {title: t, score: {scale: maff-1978}}}",
      ["indicators.x.score: write either at_least or above."],
    ],
    [
      "indicators: {x: {title: t, score: {scale: maff-1987, above: 1}}}",
      ['indicators.x.score.scale: there is no scale "maff-1987". Did you mean maff-1978?'],
    ],
    [
      "indicators: {x: {title: t, finding: {organ: lungs}}}",
      ['indicators.x.finding.organ: there is no organ "lungs". Did you mean respiratory.lungs?'],
    ],
    [
      "indicators: {x: {title: t, finding: {organ: respiratory}}}",
      [/^indicators\.x\.finding\.organ: there is no organ "respiratory"/],
    ],
    [
      "indicators: {x: {title: t, finding: {organ: respiratory.lungs, process: [consolidation, absces]}}}",
      ['indicators.x.finding.process[1]: there is no process "absces". Did you mean abscess?'],
    ],
    ["rules: {toString: off}", []],
    ["protocols: {full: {extends: full}, mine: {extends: full}, none: {}}", []],
  ] as const)("%s", (text, expected) => {
    const found = faults(text);
    expect(found).toHaveLength(expected.length);
    for (const [index, message] of expected.entries())
      expect(found[index]).toMatch(message instanceof RegExp ? message : exactly(message));
  });
});

const exactly = (text: string): RegExp => new RegExp(`^${text.replaceAll(/[.*+?^${}()|[\]\\]/g, "\\$&")}$`);

describe("protocols of settings", () => {
  const protocol = (text: string, name: string) => {
    const value = settings(text);
    expect(settingsFaults(value)).toEqual([]);
    return buildSettings(value, "carcase.yaml").protocols.get(name);
  };

  it("extend, add and leave out", () => {
    expect(
      protocol(
        "protocols: {own: {extends: respiratory, add: [nervous.brain], leave_out: [external], title: Own}}",
        "own",
      ),
    ).toMatchObject({
      id: "own",
      title: "Own",
      due: [...(defaultSettings.protocols.get("respiratory")?.due ?? []), "nervous.brain"],
      leave_out: ["external"],
      follow_signs: true,
    });
  });

  it("extend each other in any order", () => {
    const text =
      "protocols: {a: {extends: b, add: [nervous.brain]}, b: {extends: slaughter-check, add: [urinary.bladder], follow_signs: true}}";
    const due = defaultSettings.protocols.get("slaughter-check")?.due ?? [];
    expect(protocol(text, "a")).toMatchObject({
      due: [...due, "urinary.bladder", "nervous.brain"],
      follow_signs: true,
      observations: "optional",
    });
    expect(protocol(text, "b")?.due).toEqual([...due, "urinary.bladder"]);
  });

  it("leave out what the protocol that they extend leaves out", () => {
    const text =
      "protocols: {a: {extends: b, leave_out: [urinary]}, b: {extends: full, leave_out: [external.tail]}}";
    expect(protocol(text, "a")?.leave_out).toEqual(["external.tail", "urinary"]);
    expect(protocol(text, "b")?.leave_out).toEqual(["external.tail"]);
  });

  it("change one that ships under its own name", () => {
    expect(
      protocol("protocols: {full: {leave_out: [external.tail], facts: [pig.age]}}", "full"),
    ).toMatchObject({
      due: ["base"],
      leave_out: ["external.tail"],
      facts: ["pig.age"],
      title: "Full necropsy",
    });
  });

  it("start from nothing when they extend nothing", () => {
    expect(protocol("protocols: {own: {add: [nervous]}}", "own")).toMatchObject({
      due: ["nervous"],
      leave_out: [],
      title: "own",
    });
  });

  it("leave those that ship as they are", () => {
    buildSettings(settings("protocols: {full: {add: [nervous.brain]}}"), undefined);
    expect(defaultSettings.protocols.get("full")?.due).toEqual(["base"]);
  });
});

describe("scales and indicators of settings", () => {
  it("are those that ship, or those chosen and added", () => {
    const own = buildSettings(
      settings(
        "scales: [maff-1978]\nindicators: {pleurisy: {title: mine, finding: {organ: respiratory.pleura}}, more: {title: m, finding: {organ: respiratory.lungs}}}\n",
      ),
      "x",
    );
    expect(own.scales).toEqual(["maff-1978"]);
    expect(own.indicators.get("pleurisy")?.title).toBe("mine");
    expect(own.indicators.size).toBe(defaultSettings.indicators.size + 1);
    expect(defaultSettings.scales).toBeUndefined();
    expect(buildSettings(settings("scales: []"), "x").scales).toEqual([]);
  });
});
