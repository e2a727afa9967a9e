/** The files that `carcase new` writes: they fit the format, ask for what is due and for nothing else. */
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { begin, type PigWish, type VisitWish, WishFault } from "../../src/begin/index.ts";
import { readCases } from "../../src/cases/index.ts";
import { protocols, signFamilies, vocabulary } from "../../src/knowledge/index.ts";
import { necropsySteps } from "../../src/knowledge/knife.ts";
import { lintCases } from "../../src/lint/index.ts";
import { requiredFacts } from "../../src/record/index.ts";
import { put, temporaryFolder } from "../cases/temporary.ts";
import { every } from "../every.ts";

const ill = (signs: readonly string[] | undefined): PigWish => ({ basis: "clinical", signs });
const healthy: PigWish = { basis: "comparison", signs: ["none"] };

function begun(more: Partial<VisitWish>, before: Readonly<Record<string, string>> = {}) {
  const root = temporaryFolder();
  put(root, before);
  const folder = join(root, "alder-farm/2026-04-20");
  const wish: VisitWish = {
    folder,
    farm: { id: "alder-farm", folder: join(root, "alder-farm") },
    date: "2026-04-20",
    pigs: [ill(["sneezing"])],
    taken: [],
    ...more,
  };
  const { files, ...said } = begin(wish);
  for (const { file, text } of files) put("/", { [file.slice(1)]: text });
  const texts = new Map(files.map(({ file, text }) => [file.slice(root.length + 1), text]));
  return { ...said, texts, root, archive: readCases([root]) };
}

const ages = [
  { age: "5 d" },
  { age: "58 d" },
  { age: "150 d" },
  { age: "900 d" },
  { class: "stillborn" },
  {},
];
const signs = [...new Map(vocabulary.sign.map((sign) => [signFamilies([sign]).join(), sign])).values()];
const protocolsAndAges = [...protocols.keys()].flatMap((protocol) => ages.map((age) => ({ protocol, age })));
/** Every protocol at every age, each with a sign of another family in turn; and every family in a weaner. */
const kinds = [
  ...protocolsAndAges.map((one, index) => ({ ...one, sign: signs[index % signs.length] ?? "none" })),
  ...signs.map((sign) => ({ protocol: "full", age: { age: "58 d" }, sign })),
].map((one) => ({ ...one, id: `${one.protocol} ${JSON.stringify(one.age)} ${one.sign}` }));

describe("the files of a new visit", () => {
  every("have no error of format, and blank what lint asks for", kinds, ({ protocol, age, sign }) => {
    const { archive, texts } = begun({
      protocol,
      ...age,
      head: "420",
      group: "g-1",
      pigs: [ill([sign]), healthy],
    });
    expect(archive.unreadable).toEqual([]);
    const { findings } = lintCases(archive);
    expect(findings.filter(({ rule }) => rule === "case-format")).toEqual([]);
    // Only blanks are found, and each at a key that is there to be filled in.
    const [first, second] = archive.cases;
    if (first === undefined || second === undefined) throw new Error("no cases");
    const text = texts.get("alder-farm/2026-04-20/pig-01.yaml") ?? "";
    for (const organ of first.must) expect(text, organ.id).toMatch(new RegExp(`^  ${organ.key}:`, "m"));
    for (const { path } of requiredFacts(first)) {
      const key = String(path.at(-1));
      const visit = texts.get("alder-farm/2026-04-20/visit.yaml") ?? "";
      if (key !== "examiner") expect(text + visit, path.join(".")).toMatch(new RegExp(`\\b${key}: `));
    }
  });

  it("say nothing of a pig that was not said: no organ is normal, no fact answered", () => {
    const { archive } = begun({ pigs: [ill(["sneezing"]), healthy], group: "g-1", age: "58 d" });
    for (const one of archive.cases)
      for (const organ of one.due) expect(one.organ(organ).status).toBe("blank");
    const { completeness } = lintCases(archive);
    expect(completeness.map(({ examined, not_examined: left }) => [examined, left])).toEqual([
      [0, 0],
      [0, 0],
    ]);
  });

  it("stand in the order of the knife, and a healthy pig is ten lines without its comments", () => {
    const { texts } = begun({ pigs: [ill(["sneezing"]), healthy], group: "g-1", age: "58 d" });
    const text = texts.get("alder-farm/2026-04-20/pig-01.yaml") ?? "";
    const tops = [...text.matchAll(/^(\w+):/gm)].map(([, key]) => key);
    expect(tops).toEqual([
      ...["format", "case", "pig", "selection", "death", "opened", "alarm_check", "normal", "external"],
      ...["respiratory", "lymphoid", "serosa", "intestine", "cardiovascular", "liver_pancreas"],
      ...["urinary", "stomach"],
    ]);
    const blocks = text.split(/^(?=\w+:)/m).filter((block) => block.includes("\n  rest:"));
    const steps = blocks.map((block) => {
      const system = block.slice(0, block.indexOf(":"));
      const keys = [...block.matchAll(/^ {2}(\w+):/gm)].map(([, key]) => `${system}.${key}`);
      expect(keys.pop()).toBe(`${system}.rest`);
      return keys.map((id) =>
        necropsySteps.findIndex(({ organs }) => organs.some((organ) => organ.id === id)),
      );
    });
    expect(steps.map((one) => one.toSorted((x, y) => x - y))).toEqual(steps);
    const firsts = steps.map(([first = -1]) => first);
    expect(firsts.toSorted((x, y) => x - y)).toEqual(firsts);
    expect(steps.flat()).not.toContain(-1);
    const healthyPig = texts.get("alder-farm/2026-04-20/pig-02.yaml") ?? "";
    expect(healthyPig.split("\n").filter((line) => line !== "" && !line.startsWith("#"))).toHaveLength(10);
    expect(healthyPig).toMatch(/normal:\nrespiratory: \{turbinates: , rest: \}\n$/);
  });

  it("repeat no fact of the visit in a pig", () => {
    const { texts } = begun({
      pigs: [healthy],
      group: "g-1",
      age: "58 d",
      method: "barbiturate",
      protocol: "enteric",
    });
    const pig = texts.get("alder-farm/2026-04-20/pig-01.yaml") ?? "";
    expect(pig).not.toMatch(/g-1|58 d|barbiturate|enteric|ambient/);
    expect(texts.get("alder-farm/2026-04-20/visit.yaml")).toContain(
      "defaults:\n  protocol: enteric\n  pig: {group: g-1, age: 58 d}\n  death: {manner: euthanised, method: barbiturate}\n  opened: {ambient: }\n",
    );
  });

  it("hold what the signs ask of an organ, and what a death leaves to be asked", () => {
    const lungs = begun({ pigs: [ill(["cough"])], age: "20 wk" }).texts.get(
      "alder-farm/2026-04-20/pig-01.yaml",
    );
    expect(lungs).toMatch(/ {2}lungs:\n {4}consolidation: \{left_cranial: , left_middle: ,/);
    const { texts } = begun({ pigs: [{ basis: "found-dead", signs: undefined }], age: "20 wk" });
    expect(texts.get("alder-farm/2026-04-20/pig-01.yaml")).toContain(
      "death: {manner: found-dead, at: , note: }",
    );
    expect(texts.get("alder-farm/2026-04-20/visit.yaml")).not.toContain("death");
  });

  it("go on where a visit is: with its defaults, its numbers and its farm", () => {
    const { texts, unnamed } = begun(
      { taken: [1, 2], pigs: [healthy], group: "g-2" },
      {
        "alder-farm/farm.yaml":
          "format: 1\nfarm: a\ngroups:\n  g-1: {head: 9}\n  g-2: {head: 9, class: adult}\n",
        "alder-farm/2026-04-20/visit.yaml":
          "format: 1\nvisit: v-1\ndate: 2026-04-20\ndefaults: {opened: {ambient: 14 °C}}\ncases: [v-1-01, v-1-02]\n",
      },
    );
    expect([...texts.keys()]).toEqual(["alder-farm/2026-04-20/pig-03.yaml"]);
    expect(unnamed?.cases).toEqual(["v-1-03"]);
    const [pig = ""] = texts.values();
    expect(pig).toContain("case: v-1-03\nexaminer:\npig: {tag: , group: g-2, age: , sex: }\n");
    expect(pig).toContain("death: {manner: , method: , at: }\nopened: {at: , state: }\n");
  });

  it.each([
    [{ age: "58" }, "pig.age", "has no unit"],
    [{ pigs: [ill(["sneezng"])] }, "selection.signs.0", "Did you mean sneezing?"],
    [{ protocol: "ful" }, "protocol", "there are enteric, full"],
    [{ method: "hammer" }, "death.method", "barbiturate"],
    [{ group: "two words" }, "pig.group", "Did you mean two-words?"],
  ])("are not made of what does not fit: %j", (more, path, says) => {
    let fault: unknown;
    try {
      begun(more);
    } catch (error) {
      fault = error;
    }
    expect(fault).toBeInstanceOf(WishFault);
    expect((fault as WishFault).path.join(".")).toBe(path);
    expect((fault as WishFault).message).toContain(says);
  });

  it("put in quotes what YAML would read otherwise", () => {
    const { archive } = begun({
      pigs: [{ basis: "random", signs: undefined, tag: "0217" }],
      complaint: 'cough: worse at night, #3 "old" room',
      veterinarian: "no",
    });
    expect(archive.unreadable).toEqual([]);
    expect(archive.cases[0]?.record.pig?.tag).toBe("0217");
    expect(archive.visits[0]?.record).toMatchObject({
      complaint: 'cough: worse at night, #3 "old" room',
      veterinarian: "no",
    });
  });
});
