/** What stands on the sheet of a pig: what is due and no more, in the order of the knife, and nothing that must not be cut. */
import { describe, expect, it } from "vitest";
import { pigSheets, tallySheet as tallyHtml } from "../../src/formats/sheet/html-sheet.ts";
import { documentOf } from "../../src/formats/sheet/page.ts";
import { organById } from "../../src/knowledge/index.ts";
import { organsByKnife } from "../../src/knowledge/knife.ts";
import { languages, pigSheet, tallySheet, wordsIn } from "../../src/sheet/index.ts";
import { every } from "../every.ts";
import { caseOf, tablePig } from "./made.ts";

const english = wordsIn("en");
const sheetOf = (yaml: string) => pigSheet(tablePig(yaml), english);
const title = (id: string): string => organById(id)?.definition.title ?? id;
const organsOf = (sheet: ReturnType<typeof sheetOf>): string[] =>
  sheet.steps.flatMap(({ organs, wanted }) => [...organs, ...wanted]);
const samplesOf = (yaml: string): string[] =>
  (sheetOf(yaml).samples ?? []).flatMap(({ from, into }) =>
    from.split("; ").map((one) => `${one.replace(/, \d+ pieces$/, "")} ${into}`),
  );

const pigs = {
  sneezer: "pig: {age: 58 d}\nselection: {basis: clinical, signs: [sneezing]}",
  scourer: "pig: {age: 30 d}\nselection: {basis: clinical, signs: [diarrhoea]}",
  nervous: "pig: {age: 40 d}\nselection: {basis: clinical, signs: [convulsions]}",
  healthy: "pig: {age: 58 d}\nselection: {basis: comparison, signs: [none]}",
  fetus: "pig: {class: aborted}\nselection: {basis: clinical}",
  dead: "pig: {age: 100 d}\nselection: {basis: found-dead}\ndeath: {manner: found-dead}",
  slaughtered: "protocol: slaughter-check\npig: {age: 24 wk}\ndeath: {manner: slaughtered}",
};
const stopped = `${pigs.sneezer}\nalarm_check: {before_knife: {vesicles: seen}}`;

describe("the organs", () => {
  every(
    "are those due, once each, in the order of the knife within must and wanted",
    Object.entries(pigs),
    ([, yaml]) => {
      const one = caseOf(yaml);
      const sheet = sheetOf(yaml);
      expect(organsOf(sheet).sort()).toEqual(one.due.map(({ definition }) => definition.title).sort());
      const byKnife = (list: readonly string[]): string[] =>
        organsByKnife.map(({ definition }) => definition.title).filter((name) => list.includes(name));
      const must = sheet.steps.flatMap(({ organs }) => organs);
      const wanted = sheet.steps.flatMap((step) => step.wanted);
      expect(must).toEqual(byKnife([...one.must].map(({ definition }) => definition.title)));
      expect(wanted).toEqual(byKnife(wanted));
    },
    ([name]) => name,
  );

  it("of a healthy pig are those of the ill ones as well", () => {
    const healthy = pigSheet(tablePig(pigs.healthy, [caseOf(pigs.sneezer)]), english);
    const must = healthy.steps.flatMap(({ organs }) => organs);
    expect(must).toContain(title("respiratory.turbinates"));
    expect(sheetOf(pigs.healthy).steps.flatMap(({ organs }) => organs)).not.toContain(
      title("respiratory.turbinates"),
    );
  });

  it("of a carcass that was closed are none", () => {
    const sheet = pigSheet(
      tablePig(
        "pig: {age: 58 d}\nselection: {basis: comparison, signs: [none]}\nclosed: {at: 2026-03-14T09:00, because: swollen throat}",
        [caseOf(pigs.sneezer)],
      ),
      english,
    );
    expect(sheet.steps).toEqual([]);
    expect(sheet.samples).toBeUndefined();
  });
});

describe("the samples", () => {
  it("follow the signs", () => {
    expect(samplesOf(pigs.sneezer)).toContain("Nares dry swab");
    expect(samplesOf(pigs.sneezer)).not.toContain("Jejunum formalin");
    for (const organ of ["Jejunum", "Ileum", "Spiral colon"])
      expect(samplesOf(pigs.scourer)).toContain(`${organ} formalin`);
    for (const from of [
      "Cerebrospinal fluid transport medium",
      "Meninges dry swab",
      "Brain formalin",
      "Brain chilled",
    ])
      expect(samplesOf(pigs.nervous)).toContain(from);
    expect(samplesOf(pigs.healthy)).toEqual(["Blood plain tube"]);
  });

  it("of a fetus are those of an abortion, without blood", () => {
    expect(samplesOf(pigs.fetus)).toContain("Placenta formalin");
    expect(samplesOf(pigs.fetus).filter((name) => name.startsWith("Blood"))).toEqual([]);
  });

  it("of a pig found dead need no sign", () =>
    expect(samplesOf(pigs.dead)).toContain("Stomach content frozen"));

  it("are asked of no pig on the line", () => expect(sheetOf(pigs.slaughtered).samples).toBeUndefined());

  it("come in the order of the knife, each once", () => {
    const list = samplesOf(pigs.nervous);
    expect(new Set(list).size).toBe(list.length);
    const order = [
      "Cerebrospinal fluid plain tube",
      "Spleen chilled",
      "Tonsil formalin",
      "Meninges dry swab",
      "Brain formalin",
      "Stomach content frozen",
    ];
    expect(list.filter((name) => order.includes(name))).toEqual(order);
  });
});

describe("the cautions", () => {
  it("speak of the saw where there is one, and of abortion where there may be one", () => {
    const says = (yaml: string, step: string): boolean =>
      english.cautions(step).every((caution) => sheetOf(yaml).cautions.includes(caution));
    expect([pigs.sneezer, pigs.fetus].map((yaml) => says(yaml, "skull-opened"))).toEqual([true, false]);
    expect([pigs.sneezer, pigs.fetus].map((yaml) => says(yaml, "bladder-and-genitals"))).toEqual([
      false,
      true,
    ]);
    for (const yaml of Object.values(pigs)) expect(says(yaml, "before-knife")).toBe(true);
  });
});

describe("an open alarm", () => {
  every(
    "comes first in each language, and while it stops nothing is asked that would be cut",
    languages,
    (language) => {
      const words = wordsIn(language);
      const sheet = pigSheet(tablePig(stopped), words);
      expect([sheet.steps, sheet.samples, sheet.looks.at]).toEqual([[], undefined, []]);
      const html = pigSheets([sheet], "a4", words);
      const body = html.slice(html.indexOf("</header>"));
      expect(body.indexOf(words.say("stop"))).toBeGreaterThan(0);
      expect(body.slice(0, body.indexOf(words.say("stop")))).toMatch(
        /^<\/header>\s*<div class="notice"><h2>$/,
      );
      expect(body).toContain(words.name("diseases", "foot-and-mouth disease"));
      expect(body).not.toContain(words.say("samples"));
    },
  );

  it("that must be excluded first keeps the samples in", () => {
    const sheet = sheetOf(
      `pig: {class: adult, sex: male}\nselection: {basis: clinical, signs: [lameness]}\ngenital: {testes: [{process: abscess, distribution: focal, size: 40 mm, side: left}]}`,
    );
    expect(sheet.notices.map(({ head }) => head)).toEqual([english.say("exclude")]);
    expect(sheet.isStopped).toBe(false);
    expect(pigSheets([sheet], "a4", english)).toContain(english.say("stay"));
  });
});

describe("the page", () => {
  const hostile = '<script>alert("1")</script>&\u202E';

  it("holds no markup from a file, no script and nothing from outside", () => {
    const pig = {
      ...tablePig(pigs.sneezer),
      id: hostile,
      tag: hostile,
      complaint: hostile,
      examiner: hostile,
    };
    for (const html of [
      pigSheets([pigSheet(pig, english)], "a4", english),
      tallyHtml(tallySheet([pig], english), "letter", english),
    ]) {
      expect(html).not.toMatch(/<script|\u202E|\son\w+=|url\(|@import|<(?:link|img|iframe)\b/i);
      expect(html.replaceAll('xmlns="http://www.w3.org/2000/svg"', "")).not.toContain("http");
    }
  });

  it("has its tag and language", () => {
    expect(documentOf("a < b", [], "letter", wordsIn("de"))).toContain('<html lang="de">');
    expect(documentOf("a < b", [], "letter", wordsIn("de"))).toContain("<title>a &lt; b</title>");
  });

  it("has only greys", () => {
    const html = pigSheets([pigSheet(tablePig(pigs.sneezer), english)], "a4", english);
    const colours = [...html.matchAll(/#([0-9a-f]{3}|[0-9a-f]{6})\b/gi)].map(([, hex = ""]) => hex);
    expect(colours.length).toBeGreaterThan(5);
    expect(
      colours.filter((hex) => new Set(hex.length === 3 ? hex : (hex.match(/../g) ?? [])).size > 1),
    ).toEqual([]);
  });
});

describe("the tally", () => {
  it("has a row a pig and says once what all share", () => {
    const pig = tablePig(pigs.slaughtered);
    const sheet = tallySheet(
      [
        { ...pig, id: "a-07", tag: "12" },
        { ...pig, id: "a-08" },
      ],
      english,
    );
    expect(sheet.rows).toEqual([
      { number: "07", tag: "12" },
      { number: "08", tag: "" },
    ]);
    expect(sheet.facts.find(({ key }) => key === "age")?.value).toBe("24 wk");
  });
});
