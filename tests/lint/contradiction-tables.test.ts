/** Every row of the tables of contradictions, in both directions: the contradiction is found, its honest neighbour is not. */
import { readFileSync } from "node:fs";
import { dirname } from "node:path";
import { globSync } from "tinyglobby";
import { describe, expect, it } from "vitest";
import { readCases } from "../../src/cases/index.ts";
import { explain } from "../../src/explain/index.ts";
import {
  diagnosisLimits,
  impossibleFindings,
  impossibleInLife,
  impossibleSamples,
  organById,
  partRules,
  scaleIds,
  systems,
} from "../../src/knowledge/index.ts";
import { lintCases, rules } from "../../src/lint/index.ts";
import { goneRules } from "../../src/lint/rule-names.ts";
import { isMaterial } from "../../src/record/index.ts";
import schema from "../../src/schemas/case.schema.json" with { type: "json" };
import words from "../../src/schemas/vocabulary.schema.json" with { type: "json" };
import { every } from "../every.ts";
import { lintExample } from "./lay-example.ts";

const weaner = "pig: {age: 58 d, sex: female, weight: 17 kg}";
const unborn = "pig: {class: stillborn}";

/** What a rule says of a case that holds nothing else. */
const asked = (rule: string, text: string): string[] => {
  const pig = text.includes("pig:") ? "" : `${weaner}\n`;
  const bytes = new TextEncoder().encode(`format: 1\ncase: a\n${pig}${text}\n`);
  const { findings } = lintCases(readCases(["-"], { input: { bytes, name: "a.yaml" } }));
  // A slip of the test itself must not pass for silence.
  expect(findings.filter((one) => one.rule === "case-format").map(({ message }) => message)).toEqual([]);
  return findings.filter((one) => one.rule === rule).map(({ path }) => path);
};

/** One finding at an organ. */
const at = (organ: string, fields: string, pig = weaner): string => {
  const [system, key] = organ.split(".");
  const entry = `findings: [{process: ${fields}}]`;
  return `${pig}\n${system}: {${key}: {${entry}}}`;
};

interface Pair {
  readonly bad: string;
  readonly good: string;
}
type Rows = Readonly<Record<string, readonly [bad: string, ...good: string[]]>>;

/** Tests that every row of a table has its pair here, and what the rule says of both. */
function rowByRow(title: string, rule: string, table: object, rows: Rows): void {
  describe(title, () => {
    it("has a contradiction and an honest neighbour for each row", () => {
      expect(Object.keys(rows).sort()).toEqual(Object.keys(table).sort());
    });
    const pairs = Object.entries(rows).flatMap(([id, [bad, ...good]]) =>
      good.map((one) => ({ id, bad, good: one })),
    );
    every<Pair & { id: string }>("speaks of the contradiction", pairs, ({ bad }) => {
      expect(asked(rule, bad).length).toBeGreaterThan(0);
    });
    every<Pair & { id: string }>("is silent on the neighbour", pairs, ({ good }) => {
      expect(asked(rule, good)).toEqual([]);
    });
  });
}

rowByRow("impossible findings", "process-impossible", impossibleFindings.rows, {
  "consolidation-elsewhere": [
    at("lymphoid.spleen", "consolidation"),
    at("respiratory.lungs", "consolidation"),
  ],
  "collapse-of-solid-organ": [
    at("liver_pancreas.liver", "collapse"),
    at("respiratory.trachea", "collapse"),
    at("locomotor.vertebrae", "collapse"),
  ],
  "milk-spots-elsewhere": [at("urinary.kidneys", "milk-spots"), at("liver_pancreas.liver", "milk-spots")],
  "vegetation-elsewhere": [
    at("respiratory.lungs", "vegetation"),
    at("cardiovascular.heart", "vegetation"),
    at("external.feet", "vegetation"),
  ],
  "horn-without-skin": [
    at("respiratory.lungs", "hyperkeratosis"),
    at("stomach.pars_oesophagea", "hyperkeratosis"),
    at("upper_digestive.oesophagus", "hyperkeratosis"),
  ],
  "papules-inside": [
    at("lymphoid.spleen", "papules"),
    at("external.snout", "papules"),
    at("genital.vagina", "papules", "pig: {class: adult, sex: female}"),
  ],
  "vesicle-inside": [
    at("liver_pancreas.liver", "vesicle"),
    at("upper_digestive.mouth", "vesicle"),
    at("external.mammary_glands", "vesicle", "pig: {class: adult, sex: female}"),
  ],
  "froth-elsewhere": [
    at("liver_pancreas.liver", "froth"),
    at("respiratory.trachea", "froth, exudate: haemorrhagic"),
    at("external.snout", "froth"),
    at("stomach.stomach_content", "froth"),
  ],
  "uncollapsed-elsewhere": [
    at("lymphoid.spleen", "failure-to-collapse"),
    at("respiratory.lungs", "failure-to-collapse"),
  ],
  "watery-content-elsewhere": [
    at("serosa.peritoneum", "watery-content"),
    at("intestine.intestinal_content", "watery-content, colour: yellow"),
    at("intestine.caecum", "watery-content"),
    at("stomach.stomach_content", "watery-content"),
  ],
  "crust-inside": [
    at("respiratory.lungs", "crust"),
    at("external.ears", "crust"),
    at("respiratory.nares", "crust"),
    at("external.feet", "crust"),
  ],
  "slough-without-lining": [
    at("lymphoid.spleen", "slough"),
    at("external.skin", "slough"),
    at("intestine.jejunum", "slough"),
    at("upper_digestive.mouth", "slough"),
  ],
  "distension-of-solid-part": [
    at("lymphoid.spleen", "distension"),
    at("intestine.jejunum", "distension"),
    at("urinary.kidneys", "distension"),
    at("nervous.brain", "distension"),
    at("cardiovascular.heart", "distension"),
  ],
  "torsion-of-fixed-part": [
    at("cardiovascular.heart", "torsion"),
    at("lymphoid.spleen", "torsion"),
    at("liver_pancreas.liver", "torsion"),
    at("respiratory.lungs", "torsion"),
  ],
  "hernia-of-fixed-part": [
    at("lymphoid.renal_nodes", "hernia"),
    at("external.navel", "hernia"),
    at("nervous.brain", "hernia"),
    at("liver_pancreas.liver", "hernia"),
  ],
  "prolapse-inside": [
    at("lymphoid.thymus", "prolapse"),
    at("intestine.rectum", "prolapse"),
    at("nervous.spinal_cord", "prolapse"),
    at("cardiovascular.valves", "prolapse"),
  ],
  "fracture-without-bone": [
    at("respiratory.lungs", "fracture"),
    at("locomotor.vertebrae", "fracture"),
    at("liver_pancreas.liver", "fracture"),
    at("upper_digestive.teeth", "fracture"),
  ],
  "effusion-without-cavity": [
    at("lymphoid.tonsil", "effusion, exudate: serous"),
    at("locomotor.joints", "effusion, exudate: serous"),
    at("nervous.middle_ears", "effusion, exudate: serous"),
  ],
  "discharge-without-opening": [
    at("lymphoid.spleen", "discharge, exudate: serous"),
    at("external.navel", "discharge, exudate: serous"),
    at("respiratory.bronchi", "discharge, exudate: serous"),
  ],
  "surface-loss-without-surface": [
    at("liver_pancreas.liver", "erosion"),
    at("locomotor.joints", "erosion"),
    at("cardiovascular.valves", "ulcer"),
    at("urinary.kidneys", "ulcer"),
  ],
  "stenosis-without-lumen": [
    at("lymphoid.spleen", "stenosis"),
    at("intestine.rectum", "stenosis"),
    at("locomotor.vertebrae", "stenosis"),
  ],
  "deviation-of-soft-organ": [
    at("lymphoid.spleen", "deviation"),
    at("respiratory.turbinates", "deviation"),
    at("external.tail", "deviation"),
  ],
  "lesion-of-contents": [
    at("urinary.urine", "inflammation"),
    at("intestine.intestinal_content", "haemorrhage"),
    at("stomach.stomach_content", "foreign-body"),
  ],
  "milk-spots-before-worms": [
    at("liver_pancreas.liver", "milk-spots", "pig: {age: 1 d}"),
    at("liver_pancreas.liver", "milk-spots", "pig: {age: 20 d}"),
  ],
  "gut-worms-of-unborn": [
    at("intestine.jejunum", "parasites", unborn),
    at("intestine.jejunum", "parasites", "pig: {age: 5 d}"),
    at("liver_pancreas.liver", "parasites", unborn),
  ],
  "horn-of-unborn-stomach": [
    at("stomach.pars_oesophagea", "hyperkeratosis", "pig: {age: 1 d}"),
    at("stomach.pars_oesophagea", "hyperkeratosis", "pig: {age: 10 d}"),
  ],
  "tail-or-ear-bite-of-unborn": [
    at("external.tail", "scar", unborn),
    at("external.tail", "wound", unborn),
    at("external.tail", "scar"),
  ],
  "unseen-colour": [
    at("liver_pancreas.liver", "congestion, colour: unchanged"),
    at("liver_pancreas.liver", "abscess, colour: unchanged"),
  ],
  "red-pallor": [
    at("locomotor.muscles", "pallor, colour: dark-red"),
    at("locomotor.muscles", "pallor, colour: pink"),
  ],
  "icterus-not-yellow": [
    at("external.skin", "icterus, colour: pink"),
    at("external.skin", "icterus, colour: green"),
  ],
  "hyperaemia-not-red": [
    at("stomach.glandular_part", "hyperaemia, colour: tan"),
    at("stomach.glandular_part", "hyperaemia, colour: pink"),
  ],
  "white-haemorrhage": [
    at("lymphoid.spleen", "haemorrhage, colour: white"),
    at("lymphoid.spleen", "haemorrhage, colour: brown"),
  ],
  "pale-petechiae": [
    at("urinary.kidneys", "petechiae, colour: yellow"),
    at("urinary.kidneys", "petechiae, colour: brown"),
  ],
  "pale-collapse": [
    at("respiratory.lungs", "collapse, colour: white"),
    at("respiratory.lungs", "collapse, colour: pink", unborn),
  ],
  "dark-milk-spots": [
    at("liver_pancreas.liver", "milk-spots, colour: black"),
    at("liver_pancreas.liver", "milk-spots, colour: red"),
  ],
  "blue-horn": [
    at("stomach.pars_oesophagea", "hyperkeratosis, colour: blue"),
    at("stomach.pars_oesophagea", "hyperkeratosis, colour: green"),
  ],
  "bloodless-haemorrhagic-fluid": [
    at("serosa.peritoneum", "effusion, exudate: haemorrhagic, colour: green"),
    at("serosa.peritoneum", "effusion, exudate: haemorrhagic, colour: brown"),
  ],
  "bloodless-serosanguineous-fluid": [
    at("serosa.peritoneum", "effusion, exudate: serosanguineous, colour: white"),
    at("serosa.peritoneum", "effusion, exudate: serosanguineous, colour: yellow"),
  ],
  "white-haemorrhagic-inflammation": [
    at("intestine.jejunum", "inflammation, exudate: haemorrhagic, colour: white"),
    at("intestine.jejunum", "inflammation, exudate: haemorrhagic, colour: black"),
  ],
  "soft-consolidation": [
    at("respiratory.lungs", "consolidation, consistency: soft"),
    at("respiratory.lungs", "consolidation, consistency: friable"),
  ],
  "soft-fibrosis": [
    at("liver_pancreas.liver", "fibrosis, consistency: soft"),
    at("liver_pancreas.liver", "fibrosis, consistency: elastic"),
  ],
  "fluctuant-scar": [
    at("external.skin", "scar, consistency: fluctuant"),
    at("external.skin", "scar, consistency: soft"),
  ],
  "hard-fluid": [
    at("serosa.peritoneum", "effusion, consistency: gritty, exudate: serous"),
    at("external.subcutis", "oedema, consistency: gelatinous"),
  ],
  "hard-air": [
    at("respiratory.lungs", "emphysema, consistency: hard"),
    at("respiratory.lungs", "collapse, consistency: rubbery"),
  ],
  "fluid-milk-spots": [
    at("liver_pancreas.liver", "milk-spots, consistency: fluctuant"),
    at("liver_pancreas.liver", "milk-spots, consistency: soft"),
  ],
  "hard-vesicle": [
    at("external.snout", "vesicle, consistency: hard"),
    at("external.snout", "vesicle, consistency: firm"),
  ],
  "no-exudate": [
    at("serosa.peritoneum", "effusion, exudate: none"),
    at("serosa.peritoneum", "oedema, exudate: none"),
  ],
  "abscess-without-pus": [
    at("external.skin", "abscess, exudate: serous"),
    at("external.skin", "abscess, exudate: haemorrhagic"),
  ],
  "fibrin-of-another-kind": [
    at("serosa.peritoneum", "fibrin, exudate: granulomatous"),
    at("serosa.peritoneum", "fibrin, exudate: fibrinosuppurative"),
  ],
  "exudate-of-nothing": [
    at("locomotor.muscles", "pallor, exudate: suppurative"),
    at("locomotor.muscles", "pallor, exudate: none"),
  ],
  "catarrh-without-mucosa": [
    at("serosa.peritoneum", "exudate, exudate: catarrhal"),
    at("serosa.peritoneum", "exudate, exudate: mucopurulent"),
    at("intestine.jejunum", "inflammation, exudate: catarrhal"),
  ],
  "fresh-scar": [
    at("respiratory.lungs", "scar, duration: acute"),
    at("respiratory.lungs", "scar, duration: subacute"),
  ],
  "peracute-abscess": [
    at("respiratory.lungs", "abscess, duration: peracute"),
    at("respiratory.lungs", "abscess, duration: acute"),
  ],
  "acquired-malformation": [
    at("cardiovascular.heart", "malformation, duration: acute"),
    at("cardiovascular.heart", "malformation, duration: chronic"),
  ],
  "old-vesicle": [
    at("external.feet", "vesicle, duration: chronic"),
    at("external.feet", "vesicle, duration: subacute"),
  ],
  "transmural-without-wall": [
    at("lymphoid.spleen", "necrosis, distribution: transmural"),
    at("intestine.ileum", "necrosis, distribution: transmural"),
    at("cardiovascular.heart", "necrosis, distribution: transmural"),
  ],
  "two-sides-of-one": [
    at("intestine.jejunum", "haemorrhage, distribution: bilateral"),
    at("intestine.mesentery", "haemorrhage, distribution: unilateral"),
    at("lymphoid.renal_nodes", "haemorrhage, distribution: bilateral"),
  ],
  "sunken-lump": [
    at("external.skin", "papules, contour: depressed"),
    at("external.skin", "papules, contour: umbilicated"),
  ],
  "raised-collapse": [
    at("respiratory.lungs", "collapse, contour: raised"),
    at("respiratory.lungs", "collapse, contour: depressed"),
  ],
  "stalked-loss": [
    at("intestine.caecum", "ulcer, contour: pedunculated"),
    at("intestine.caecum", "ulcer, contour: raised"),
  ],
});

const pars = (fields: string): string => `stomach: {pars_oesophagea: {${fields}}}`;
const pleura = (fields: string): string => `respiratory: {pleura: {${fields}}}`;
const nose = (fields: string): string => `respiratory: {turbinates: {section: premolar-1, ${fields}}}`;
const lobes = (cranial: number, rest: number): string =>
  `consolidation: {left_cranial: ${cranial}, left_middle: ${rest}, left_caudal: ${rest}, right_cranial: ${rest}, right_middle: ${rest}, right_caudal: ${rest}, accessory: ${rest}}`;
const lung = (fields: string): string => `respiratory: {lungs: {${fields}}}`;
const tail = (fields: string): string => `external: {tail: {${fields}}}`;
const cord = (fields: string): string => `${unborn}\nplacental: {umbilical_cord: {${fields}}}`;
const sac = (fields: string): string => `cardiovascular: {pericardium: {${fields}}}`;
const liver = (fields: string): string => `liver_pancreas: {liver: {${fields}}}`;
const lesion = (fields: string): string => `findings: [{process: ${fields}}]`;
const conchae = (ventral: number): string =>
  `left: {dorsal: 0, ventral: ${ventral}}, right: {dorsal: 0, ventral: 0}`;
const measured = (fields: string): string => nose(`measured: {${fields}}`);
const parts = "observation-parts-disagree";

rowByRow("parts that exclude each other", parts, partRules.excludes, {
  "keratin-none": [
    pars(`keratin: 0, ${lesion("hyperkeratosis")}`),
    pars(`keratin: 5, ${lesion("hyperkeratosis")}`),
  ],
  "erosion-none": [
    pars(`erosion: 0, ${lesion("erosion")}`),
    pars(`erosion: 0, ulcer: 5, ${lesion("ulcer")}`),
  ],
  "ulcer-none": [pars(`ulcer: 0, ${lesion("ulcer")}`), pars(`ulcer: 0, ${lesion("scar")}`)],
  "milk-spots-none": [
    liver(`milk_spots: 0, ${lesion("milk-spots")}`),
    liver(`milk_spots: 0, ${lesion("fibrosis")}`),
  ],
  "pericarditis-none": [
    sac(`pericarditis: none, ${lesion("fibrin")}`),
    sac(`pericarditis: none, ${lesion("petechiae")}`),
  ],
  "pericarditis-none-but-exudate": [
    sac(`pericarditis: none, ${lesion("effusion, exudate: suppurative")}`),
    sac(`pericarditis: none, ${lesion("effusion, exudate: serous")}`),
  ],
  "pleurisy-none": [
    pleura(`pleurisy: {left: none, right: cranioventral}, ${lesion("adhesion, site: left caudal lobe")}`),
    pleura(`pleurisy: {left: none, right: cranioventral}, ${lesion("adhesion, site: right caudal lobe")}`),
    pleura(`pleurisy: {left: none, right: cranioventral}, ${lesion("adhesion")}`),
    pleura(`pleurisy: {left: none, right: none}, ${lesion("fibrin")}`),
    pleura(`pleurisy: {left: none}, ${lesion("adhesion")}`),
  ],
  "pleurisy-none-but-area": [
    pleura("pleurisy: {left: none, right: none}, adhering_area: 20"),
    pleura("pleurisy: {left: none, right: cranioventral}, adhering_area: 20"),
  ],
  "pleurisy-extensive-on-no-area": [
    pleura("pleurisy: {left: none, right: dorsocaudal-extensive}, adhering_area: 0"),
    pleura("pleurisy: {left: none, right: cranioventral}, adhering_area: 0"),
  ],
  "pleurisy-focal-and-extensive": [
    pleura("pleurisy: {left: [dorsocaudal-focal, dorsocaudal-extensive], right: none}"),
    pleura("pleurisy: {left: [cranioventral, dorsocaudal-extensive], right: dorsocaudal-focal}"),
  ],
  "septum-straight-yet-deviated": [
    nose(`septum: straight, ${lesion("deviation, site: septum")}`),
    nose(`septum: slight, ${lesion("deviation, site: septum")}`),
  ],
  "septum-straight-yet-offset": [
    nose("septum: straight, septum_offset: 9 mm"),
    nose("septum: straight, septum_offset: 1 mm"),
  ],
  "septum-crooked-yet-on-line": [
    nose("septum: marked, septum_offset: 0 mm"),
    nose("septum: slight, septum_offset: 0 mm"),
  ],
  "conchae-whole-yet-wasted": [
    nose(`${conchae(0)}, ${lesion("atrophy")}`),
    nose(`${conchae(1)}, ${lesion("atrophy")}`),
    nose(`left: {dorsal: 0, ventral: 0}, ${lesion("atrophy")}`),
  ],
  "measured-yet-estimated-none": [
    lung(`${lobes(0, 0)}, measured: {affected_percent: {left_cranial: 40}}`),
    lung(`${lobes(0, 0)}, measured: {affected_percent: {left_cranial: 6}}`),
    lung(`${lobes(0, 40)}, measured: {affected_percent: {left_middle: 30}}`),
  ],
  "estimated-yet-measured-none": [
    lung(`${lobes(40, 0)}, measured: {affected_percent: {left_cranial: 0}}`),
    lung(`${lobes(40, 0)}, measured: {affected_percent: {left_middle: 0}}`),
  ],
  "size-of-no-consolidation": [
    lung(`${lobes(0, 0)}, lesion_size: {left_cranial: coin-or-more}`),
    lung(`${lobes(10, 0)}, lesion_size: {left_cranial: coin-or-more}`),
  ],
  "lobes-none": [
    lung(`${lobes(0, 0)}, ${lesion("consolidation")}`),
    lung(`${lobes(5, 0)}, ${lesion("consolidation")}`),
    lung(`consolidation: {left_cranial: 0}, ${lesion("consolidation")}`),
    lung(`${lobes(0, 0)}, ${lesion("congestion")}`),
  ],
  "sunk-yet-floats": [lung(`${lobes(100, 100)}, float: floats`), lung(`${lobes(90, 100)}, float: floats`)],
  "tail-whole-yet-wounded": [tail(`wound: none, ${lesion("wound")}`), tail(`wound: none, ${lesion("scar")}`)],
  "wound-size-of-no-wound": [
    tail("wound: healed, wound_size: 12 mm"),
    tail("wound: open, wound_size: 12 mm"),
  ],
  "no-wound-yet-swollen": [
    tail("wound: none, wound_swollen: yes"),
    tail("wound: healed, wound_swollen: yes"),
    tail("wound: none, wound_swollen: no"),
  ],
  "ear-rim-none": [
    `external: {ears: {rim_wound: {left: 0, right: 0}, ${lesion("wound, site: rim of the left ear")}}}`,
    `external: {ears: {rim_wound: {left: 0, right: 0}, ${lesion("wound, site: at the tag")}}}`,
  ],
  "cord-whole-yet-torn": [
    cord(`cord: whole, ${lesion("rupture")}`),
    cord(`cord: broken, ${lesion("rupture")}`),
    cord(`cord: whole, ${lesion("haemorrhage")}`),
  ],
  "no-abscess-graded": [
    `external: {subcutis: {grades: {carcass-abscess: 0}, ${lesion("abscess")}}}`,
    `external: {subcutis: {grades: {carcass-abscess: 1}, ${lesion("abscess")}}}`,
  ],
  "no-papules-graded": [
    `external: {skin: {grades: {papular-dermatitis: 0}, ${lesion("papules")}}}`,
    `external: {skin: {grades: {papular-dermatitis: 0}, ${lesion("wound")}}}`,
  ],
  "node-of-normal-size-graded": [
    `lymphoid: {superficial_inguinal_nodes: {grades: {opriessnig-2004-nodes: 0}, ${lesion("enlargement")}}}`,
    `lymphoid: {superficial_inguinal_nodes: {grades: {opriessnig-2004-nodes: 0}, ${lesion("haemorrhage")}}}`,
  ],
  "no-pneumonia-graded": [
    lung(`grades: {hannan-1982: 0}, ${lesion("consolidation")}`),
    lung(`grades: {hannan-1982: 0}, ${lesion("oedema")}`),
  ],
  "no-pneumonia-graded-in-lobes": [
    lung(`grades: {pallares-2021: 0}, ${lobes(30, 0)}`),
    lung(`grades: {pallares-2021: 0}, ${lobes(1, 0)}`),
  ],
  "no-pleurisy-graded": [
    pleura("grades: {madec-kobisch-1982-pleurisy: 0}, pleurisy: {left: cranioventral, right: none}"),
    pleura("grades: {madec-kobisch-1982-pleurisy: 0}, pleurisy: {left: none, right: none}"),
  ],
  "stomach-graded-normal": [
    pars(`grades: {danish-stomach-grade: 0}, ${lesion("ulcer")}`),
    pars(`grades: {danish-stomach-grade: 6}, ${lesion("ulcer")}`),
  ],
  "stomach-graded-normal-yet-ulcer": [
    pars("grades: {danish-stomach-grade: 0}, ulcer: 20"),
    pars("grades: {danish-stomach-grade: 0}, ulcer: 0"),
  ],
});

rowByRow("shares of one area", parts, partRules.adds_up, {
  "pars-oesophagea": [
    pars("keratin: 0, erosion: 60, ulcer: 70"),
    pars("keratin: 100, erosion: 40, ulcer: 60"),
    pars("keratin: 90, erosion: 0, ulcer: 80"),
  ],
  lung: [
    lung("findings: [{process: consolidation, extent: 70 %}, {process: collapse, extent: 60 %}]"),
    lung("findings: [{process: consolidation, extent: 70 %}, {process: oedema, extent: 60 %}]"),
    lung("findings: [{process: consolidation, extent: 70 %}, {process: collapse, extent: 30 %}]"),
  ],
});

rowByRow("sides with their total", parts, partRules.totals, {
  "perimeter-ratio": [
    measured("perimeter_ratio: {left: 1.2, right: 1.4, total: 1.6}"),
    measured("perimeter_ratio: {left: 1.2, right: 1.4, total: 1.29}"),
    measured("perimeter_ratio: {left: 1.2, total: 1.6}"),
  ],
  "concha-area": [
    measured("concha_area_fraction: {left: 0.4, right: 0.5, total: 0.9}"),
    measured("concha_area_fraction: {left: 0.4, right: 0.5, total: 0.505}"),
  ],
  "free-area": [
    measured("free_area_percent: {left: 40, right: 50, total: 30}"),
    measured("free_area_percent: {left: 40, right: 50, total: 46}"),
  ],
});

rowByRow("counts", parts, partRules.counts, {
  "milk-spots": [
    liver(`milk_spots: 3, ${lesion("milk-spots, number: 12")}`),
    liver(`milk_spots: 12, ${lesion("milk-spots, number: 12")}`),
    liver(`milk_spots: 12, ${lesion("milk-spots, number: 4, site: left lobe")}`),
  ],
});

const joints = (opened: string, fields: string): string =>
  `locomotor: {joints: {opened: [${opened}], ${lesion(fields)}}}`;
rowByRow("what a list names", parts, partRules.named, {
  joints: [
    joints("right-elbow", "fibrin, site: left hock"),
    joints("right-elbow, left-hock", "fibrin, site: left hock"),
    joints("right-elbow", "enlargement, site: left hock"),
    joints("right-elbow", "fibrin, site: most joints"),
  ],
});

describe("weights of both sides", () => {
  const kidneys = (whole: string): string =>
    `urinary: {kidneys: {weight: ${whole}, left: {state: normal, weight: 50 g}, right: {state: normal, weight: 52 g}}}`;
  it("are the weight of the organ", () => {
    expect(asked(parts, kidneys("150 g"))).toEqual(["urinary.kidneys.weight"]);
    expect(asked(parts, kidneys("0.1 kg"))).toEqual([]);
    expect(
      asked(parts, "urinary: {kidneys: {weight: 150 g, left: {state: normal, weight: 50 g}, right: normal}}"),
    ).toEqual([]);
  });
});

const line = (text: string): string => `protocol: slaughter-check\n${text}`;
const six = lobes(0, 0).replace(", accessory: 0", "");
rowByRow("lists that must be whole", "list-half-filled", partRules.whole, {
  lobes: [line(lung(six)), line(lung(lobes(0, 0))), lung(six), line(lung("state: normal"))],
  "caudal-parts": [
    line(lung("caudal_cranial_part: {left: 0}")),
    line(lung("caudal_cranial_part: {left: 0, right: 0}")),
  ],
  "sizes-by-coin": [
    line(lung(`${lobes(10, 10)}, lesion_size: {left_cranial: below-coin}`)),
    line(lung(`${lobes(10, 0)}, lesion_size: {left_cranial: below-coin}`)),
    line(lung(`${lobes(10, 70)}, lesion_size: {left_cranial: below-coin}`)),
  ],
  conchae: [
    line(nose("left: {dorsal: 0, ventral: 1}")),
    line(nose(conchae(1))),
    line(nose("grades: {maff-1978: 1}")),
  ],
  pleurisy: [line(pleura("pleurisy: {left: none}")), line(pleura("pleurisy: {left: none, right: none}"))],
  ears: [
    line("external: {ears: {lost: {left: 5}}}"),
    line("external: {ears: {lost: {left: 5, right: 0}}}"),
    line("external: {ears: {rim_wound: {left: 5, right: 0}}}"),
  ],
});

rowByRow("what is worth nothing alone", "list-half-filled", partRules.together, {
  "section-of-snout": [
    line("respiratory: {turbinates: {grades: {maff-1978: 2}}}"),
    line("respiratory: {turbinates: {section: premolar-1, grades: {maff-1978: 2}}}"),
    line("respiratory: {turbinates: {findings: [{process: exudate, exudate: catarrhal}]}}"),
    line("respiratory: {turbinates: normal}"),
  ],
});

it("does without the accessory lobe where the practice scores six", () => {
  const example = { case: `protocol: slaughter-check\nrespiratory: {lungs: {consolidation: {accessory: }}}` };
  const only = { only: ["list-half-filled"] };
  const settings = "scales: [madec-kobisch-1982-six-lobes]";
  expect(lintExample(example, only).findings).toHaveLength(1);
  expect(lintExample({ ...example, settings }, only).findings).toEqual([]);
});

const diagnosed = (fields: string, text: string, more = ""): string =>
  `${at("liver_pancreas.liver", fields)}\ndiagnosis: {morphologic: ["Liver: ${text}"]${more}}`;
rowByRow("words against every finding", "diagnosis-against-finding", diagnosisLimits.against, {
  "mild-yet-marked": [
    diagnosed("necrosis, severity: marked", "necrosis, acute, mild"),
    diagnosed("necrosis, severity: moderate", "necrosis, acute, mild"),
  ],
  "marked-yet-mild": [
    diagnosed("necrosis, severity: mild", "necrosis, acute, severe"),
    diagnosed("necrosis, severity: mild", "necrosis, mild to severe"),
  ],
  "chronic-yet-acute": [
    diagnosed("necrosis, duration: acute", "necrosis, chronic"),
    diagnosed("necrosis, duration: acute", "necrosis, chronic-active"),
    diagnosed("necrosis, duration: subacute", "necrosis, chronic"),
    diagnosed("necrosis, duration: acute", "necrosis, chronic", ", basis: histology"),
  ],
  "acute-yet-chronic": [
    diagnosed("necrosis, duration: chronic", "necrosis, acute"),
    diagnosed("necrosis, duration: chronic", "necrosis, subacute"),
    diagnosed("necrosis, duration: chronic-active", "necrosis, acute"),
  ],
  "focal-yet-diffuse": [
    diagnosed("necrosis, distribution: diffuse", "necrosis, focal"),
    diagnosed("necrosis, distribution: multifocal", "necrosis, focal"),
    diagnosed("necrosis, distribution: diffuse", "necrosis, multifocal to diffuse"),
  ],
  "diffuse-yet-focal": [
    diagnosed("necrosis, distribution: focal", "necrosis, diffuse"),
    diagnosed("necrosis, distribution: patchy", "necrosis, diffuse"),
  ],
  "one-side-yet-both": [
    diagnosed("necrosis, distribution: bilateral", "necrosis, unilateral"),
    diagnosed("necrosis, distribution: focal", "necrosis, unilateral"),
  ],
  "both-sides-yet-one": [
    diagnosed("necrosis, distribution: unilateral", "necrosis, bilateral"),
    diagnosed("necrosis, distribution: multifocal", "necrosis, bilateral"),
  ],
});

describe("the side of a diagnosis", () => {
  const kidneys = (left: string, right: string, text: string): string =>
    `urinary: {kidneys: {left: ${left}, right: ${right}}}\ndiagnosis: {morphologic: ["${text}"]}`;
  const ill = "[{process: inflammation, distribution: focal, size: 8 mm}]";
  it("is that of what is described", () => {
    const rule = "diagnosis-against-finding";
    expect(asked(rule, kidneys("normal", ill, "Left kidney: nephritis, acute"))).toEqual([
      "diagnosis.morphologic[0]",
    ]);
    expect(asked(rule, kidneys("normal", ill, "Right kidney: nephritis, acute"))).toEqual([]);
    expect(asked(rule, kidneys(ill, ill, "Left kidney: nephritis, acute"))).toEqual([]);
    expect(asked(rule, kidneys("normal", ill, "Kidneys: nephritis, left and right"))).toEqual([]);
  });
});

const says = (text: string, pig: string): string => `${pig}\ndiagnosis: {morphologic: ["Jejunum: ${text}"]}`;
rowByRow("words of an age", "diagnosis-beyond-basis", diagnosisLimits.ages, {
  neonatal: [says("neonatal enteritis", weaner), says("neonatal enteritis", "pig: {age: 3 d}")],
  postweaning: [says("post-weaning enteritis", "pig: {age: 9 d}"), says("post-weaning enteritis", weaner)],
  puerperal: [
    says("puerperal enteritis", weaner),
    says("puerperal enteritis", "pig: {class: adult, sex: female}"),
  ],
  coccidiosis: [
    says("coccidiosis", "pig: {age: 2 d}"),
    says("coccidiosis", "pig: {age: 8 d}"),
    says("coccidiosis", weaner),
    says("catarrhal enteritis, coccidiosis ruled out", "pig: {age: 2 d}"),
    says("no coccidiosis", "pig: {age: 2 d}"),
  ],
});

const caused = (cause: string, basis: string, test: string, more = ""): string =>
  `samples: [{id: 01-A, from: respiratory.lungs, into: chilled, for: [${test}]}]\ndiagnosis: {aetiologic: ["${cause}"], basis: ${basis}${more}}`;
rowByRow("what a basis rests on", "diagnosis-beyond-basis", diagnosisLimits.bases, {
  laboratory: [
    "diagnosis: {aetiologic: [Streptococcus suis], basis: laboratory}",
    caused("Streptococcus suis", "laboratory", "culture"),
    "diagnosis: {aetiologic: [Streptococcus suis], basis: laboratory, comment: culture of pig 2}",
    "diagnosis: {aetiologic: [crushing], basis: gross}",
  ],
  histology: [
    caused("Streptococcus suis", "histology", "culture"),
    caused("Streptococcus suis", "histology", "histology"),
    caused("Streptococcus suis", "histology", "culture", ", comment: slide of pig 2"),
  ],
});
rowByRow("which test shows which agent", "diagnosis-beyond-basis", diagnosisLimits.agents, {
  virus: [
    caused("PRRS virus", "laboratory", "culture"),
    caused("PRRS virus", "laboratory", "pcr"),
    caused("PRRS virus and Streptococcus suis", "laboratory", "culture, pcr"),
    caused("Streptococcus suis, PRRS virus not found", "laboratory", "culture"),
    caused("PRRS virus ruled out", "laboratory", "culture"),
  ],
  bacterium: [
    caused("Salmonella Choleraesuis", "laboratory", "virus-isolation"),
    caused("Salmonella Choleraesuis", "laboratory", "culture"),
  ],
  poison: [
    caused("salt poisoning", "laboratory", "culture"),
    caused("salt poisoning", "laboratory", "histology"),
  ],
});

describe("an answer that was negative", () => {
  const example = (result: string, comment = "", cause = "toxigenic Pasteurella multocida") => ({
    case: `diagnosis: {aetiologic: ["${cause}"], basis: laboratory${comment}}`,
    visit: `tests: [{test: toxin-gene, from: nasal swabs, result: ${result}, at: 2026-04-28}]`,
  });
  const count = (result: string, comment?: string, cause?: string): number =>
    lintExample(example(result, comment, cause), { only: ["diagnosis-beyond-basis"] }).findings.length;
  it("excludes the cause", () => {
    expect(Object.keys(diagnosisLimits.negative)).toEqual(["toxin"]);
    expect([count("negative"), count("positive"), count("pending")]).toEqual([1, 0, 0]);
    expect(count("negative", ", comment: positive in May")).toBe(0);
    expect(count("negative", "", "Bordetella bronchiseptica; toxigenic Pasteurella ruled out")).toBe(0);
  });
});

const sampled = (fields: string): string => `samples: [{id: 01-A, ${fields}}]`;
rowByRow("impossible samples", "test-impossible", impossibleSamples.rows, {
  "serology-of-tissue": [
    sampled("from: respiratory.lungs, into: chilled, for: [serology]"),
    sampled("from: locomotor.muscles, into: frozen, for: [serology]"),
    sampled("from: serosa.pleural_space, into: plain-tube, for: [serology]"),
  ],
  "serology-of-what-holds-no-antibody": [
    sampled("from: faeces, into: chilled, for: [serology]"),
    sampled("from: oral_fluid, into: plain-tube, for: [serology]"),
  ],
  "serology-of-fixed": [
    sampled("from: csf, into: formalin, for: [serology]"),
    sampled("from: csf, into: plain-tube, for: [serology]"),
  ],
  "histology-of-fluid": [
    sampled("from: blood, into: edta-tube, for: [histology]"),
    sampled("from: blood, into: edta-tube, for: [cytology]"),
    sampled("from: intestine.ileum, into: formalin, for: [histology]"),
  ],
  "cytology-without-cells": [
    sampled("from: serum, into: plain-tube, for: [cytology]"),
    sampled("from: csf, into: edta-tube, for: [cytology]"),
  ],
  "parasites-in-serum": [
    sampled("from: serum, into: plain-tube, for: [parasitology]"),
    sampled("from: blood, into: edta-tube, for: [parasitology]"),
  ],
  "toxicology-of-swab": [
    sampled("from: liver_pancreas.liver, into: dry-swab, for: [toxicology]"),
    sampled("from: liver_pancreas.liver, into: frozen, for: [toxicology]"),
  ],
  "culture-of-mummy": [
    `pig: {class: mummy}\n${sampled("from: lymphoid.spleen, into: chilled, for: [culture]")}`,
    `pig: {class: aborted}\n${sampled("from: lymphoid.spleen, into: chilled, for: [culture]")}`,
  ],
  "tissue-in-blood-tube": [
    sampled("from: lymphoid.spleen, into: heparin-tube, for: [pcr]"),
    sampled("from: cardiovascular.heart, into: edta-tube, for: [pcr]"),
    sampled("from: respiratory.lungs, into: edta-tube, for: [cytology]"),
    sampled("from: lymphoid.tonsil, into: plain-tube, for: [pcr]"),
  ],
  "carcass-in-tube": [
    sampled("from: carcass, into: plain-tube, for: [pcr]"),
    sampled("from: carcass, into: chilled, for: [pcr]"),
    sampled("from: carcass, into: dry-swab, for: [culture]"),
  ],
  "serum-with-anticoagulant": [
    sampled("from: serum, into: edta-tube, for: [pcr]"),
    sampled("from: blood, into: edta-tube, for: [pcr]"),
  ],
  "fluid-in-formalin": [
    sampled("from: feed, into: formalin, for: [toxicology]"),
    sampled("from: faeces, into: formalin, for: [parasitology]"),
  ],
  "clotted-with-anticoagulant": [
    sampled("from: blood, into: edta-tube, for: [pcr], clotted: yes"),
    sampled("from: blood, into: edta-tube, for: [pcr], clotted: no"),
    sampled("from: blood, into: plain-tube, for: [serology], clotted: yes"),
  ],
  "clotted-without-blood": [
    sampled("from: faeces, into: chilled, for: [pcr], clotted: yes"),
    sampled("from: cardiovascular.heart, into: plain-tube, for: [culture], clotted: yes"),
  ],
  "ratio-without-formalin": [
    sampled("from: lymphoid.spleen, into: chilled, for: [pcr], formalin_ratio: 10"),
    sampled("from: lymphoid.spleen, into: formalin, for: [histology], formalin_ratio: 10"),
  ],
  "thickness-of-fluid": [
    sampled("from: blood, into: edta-tube, for: [pcr], thickness: 5 mm"),
    sampled("from: lymphoid.spleen, into: chilled, for: [pcr], thickness: 5 mm"),
  ],
  "lumen-of-solid-organ": [
    sampled("from: lymphoid.spleen, into: formalin, for: [histology], lumen_opened: yes"),
    sampled("from: lymphoid.spleen, into: formalin, for: [histology], lumen_opened: no"),
    sampled("from: stomach.glandular_part, into: formalin, for: [histology], lumen_opened: yes"),
  ],
});

const shown = (pig: string, signs: string): string => `pig: {${pig}}\nselection: {signs: [${signs}]}`;
rowByRow("impossible signs", "sign-impossible", impossibleInLife.signs, {
  "pregnancy-of-a-male": [
    shown("class: finisher, sex: castrate", "vulval-discharge"),
    shown("class: finisher, sex: female", "abortion"),
    shown("class: stillborn, sex: male", "stillbirth"),
    shown("age: 3 d, sex: male", "stillbirth"),
  ],
  "pregnancy-of-a-weaner": [
    shown("age: 58 d, sex: female", "abortion"),
    shown("age: 58 d, sex: female", "vulval-discharge"),
  ],
  "heat-of-a-suckling": [shown("age: 9 d", "return-to-oestrus"), shown("age: 9 d", "mummies, diarrhoea")],
  "signs-of-the-born": [
    shown("class: stillborn", "stillbirth, tail-biting"),
    shown("age: 9 d", "ear-biting"),
    shown("class: stillborn", "none"),
  ],
  "signs-of-life": [
    shown("class: stillborn", "cough"),
    shown("class: aborted", "abortion, cough"),
    shown("class: aborted", "fever, inappetence"),
    shown("age: 1 h", "tremor"),
  ],
});

rowByRow("impossible measures", "observation-impossible", impossibleInLife.facts, {
  "length-of-the-born": ["pig: {age: 58 d, crown_rump: 17 cm}", "pig: {class: mummy, crown_rump: 17 cm}"],
  "temperature-of-the-unborn": [
    "pig: {class: stillborn, temperature: 38.5 °C}",
    "pig: {age: 1 d, temperature: 36 °C}",
  ],
});

const milk = (word: string): string => `stomach: {stomach_content: {milk: ${word}}}`;
rowByRow("impossible observations", "observation-impossible", impossibleInLife.observations, {
  "milk-of-the-unborn": [
    `${unborn}\n${milk("full")}`,
    `${unborn}\n${milk("none")}`,
    `pig: {age: 5 h}\n${milk("full")}`,
  ],
  "meconium-of-the-grown": [
    `${weaner}\nexternal: {skin: {meconium: heavy}}`,
    `pig: {age: 5 h}\nexternal: {skin: {meconium: heavy}}`,
  ],
  "milk-spots-of-the-newborn": [
    `pig: {age: 1 d}\n${liver("milk_spots: 3")}`,
    `pig: {age: 30 d}\n${liver("milk_spots: 3")}`,
  ],
  "keratin-of-the-newborn": [
    `pig: {age: 1 d}\n${pars("keratin: 30")}`,
    `pig: {age: 9 d}\n${pars("keratin: 30")}`,
  ],
});

describe("the longest lesion", () => {
  const size = (organ: string, mm: number, pig = weaner): string[] =>
    asked("size-implausible", at(organ, `necrosis, size: ${mm} mm`, pig));
  const { anywhere, organs, classes, observations } = impossibleFindings.longest;
  const big = "pig: {class: adult, sex: female, weight: 250 kg}";
  every("is found in each organ that has a limit", Object.entries(organs), ([organ, mm]) => {
    expect([size(organ, mm, big).length, size(organ, mm + 1, big).length]).toEqual([0, 1]);
  });
  every("is found in each class that has a limit", Object.entries(classes), ([name, mm]) => {
    const pig = `pig: {class: ${name}}`;
    expect([size("external.skin", mm, pig).length, size("external.skin", mm + 1, pig).length]).toEqual([
      0, 1,
    ]);
  });
  it("is that of a smaller pig before it is grown", () => {
    expect([size("lymphoid.spleen", anywhere).length, size("lymphoid.spleen", anywhere + 1).length]).toEqual([
      0, 1,
    ]);
  });
  it("is found elsewhere, but not in the gut", () => {
    expect([
      size("liver_pancreas.liver", anywhere).length,
      size("liver_pancreas.liver", anywhere + 1).length,
    ]).toEqual([0, 1]);
    expect(size("intestine.jejunum", 3000)).toEqual([]);
  });
  every("is found in what was measured on an organ", Object.entries(observations), ([path, mm]) => {
    const [system, organ, ...keys] = path.split(".");
    const written = (value: number): string =>
      `${system}: {${organ}: ${keys.reduceRight((inner, key) => `{${key}: ${inner}}`, `${value} mm`)}}`;
    expect([asked("size-implausible", written(mm)), asked("size-implausible", written(mm + 1))]).toEqual([
      [],
      [path],
    ]);
  });
});

describe("explain", () => {
  const { excludes, adds_up, totals, counts, named, whole, together } = partRules;
  const { ages, against, bases } = diagnosisLimits;
  const { signs, facts, observations } = impossibleInLife;
  every(
    "prints every row of every table, and the rule that asks",
    Object.entries({
      "impossible-findings": [impossibleFindings.rows, { "process-impossible": 0 }],
      "parts-that-disagree": [excludes, adds_up, totals, counts, named, { weights: 0, [parts]: 0 }],
      "half-filled-lists": [whole, together, { "list-half-filled": 0 }],
      "diagnosis-limits": [ages, against, bases, { "toxin-gene": 0, "diagnosis-beyond-basis": 0 }],
      "impossible-samples": [impossibleSamples.rows, { "test-impossible": 0 }],
      "impossible-in-life": [signs, facts, observations, { "sign-impossible": 0 }],
    }),
    ([name, tables]) => {
      const [found] = explain(name);
      expect(found?.kind).toBe("contradiction table");
      expect(found?.source?.confidence).toMatch(/^(verified|common-practice|from-memory)$/);
      const printed = (found?.sections ?? []).flatMap(({ lines }) => lines).join("\n");
      const rows = tables.flatMap((table) => Object.keys(table));
      expect(rows.filter((row) => !printed.includes(row))).toEqual([]);
    },
  );
});

describe("the words of the tables", () => {
  const defs: Readonly<Record<string, { readonly enum?: readonly string[] }>> = words.$defs;
  const vocabulary = (list: string): readonly string[] => defs[list]?.enum ?? [];
  const isOrgan = (id: string): boolean =>
    organById(id) !== undefined || systems.some((system) => system.id === id);
  const unknown = (list: string, said: readonly string[]): string[] =>
    said.filter((word) => !vocabulary(list).includes(word));

  it("are words of a case", () => {
    for (const row of Object.values(impossibleFindings.rows)) {
      expect(unknown("process", row.processes)).toEqual([]);
      expect(unknown("exudate", row.exudates ?? [])).toEqual([]);
      for (const [field, said] of Object.entries(row.with ?? {})) expect(unknown(field, said)).toEqual([]);
    }
    for (const { field, values } of Object.values(diagnosisLimits.against))
      expect(unknown(field, values)).toEqual([]);
    for (const { signs, unless = [] } of Object.values(impossibleInLife.signs))
      expect(unknown("sign", [...signs, ...unless])).toEqual([]);
    for (const { one, other } of Object.values(partRules.excludes))
      for (const { processes = [], exudates = [] } of [one, other])
        expect([...unknown("process", processes), ...unknown("exudate", exudates)]).toEqual([]);
  });

  it("are organs, materials, containers, tests and scales that exist", () => {
    const organs = [
      ...Object.values(impossibleFindings.rows).flatMap(({ organs: at = [], except = [] }) => [
        ...at,
        ...except,
      ]),
      ...Object.keys(impossibleFindings.longest.organs),
      ...Object.values(partRules.excludes).map(({ organ }) => organ),
      ...Object.values(partRules.whole).map(({ organ }) => organ),
      ...Object.values(impossibleInLife.observations).map(({ organ }) => organ),
    ];
    expect(organs.filter((id) => !isOrgan(id))).toEqual([]);
    const { into } = schema.$defs.sample.properties;
    const tests = words.$defs.test.enum;
    for (const row of Object.values(impossibleSamples.rows)) {
      expect([...(row.from ?? []), ...(row.except ?? [])].filter((id) => !isMaterial(id))).toEqual([]);
      expect(row.into?.filter((word) => !into.enum.includes(word)) ?? []).toEqual([]);
      expect(row.tests?.filter((word) => !tests.includes(word)) ?? []).toEqual([]);
    }
    const named = Object.values(partRules.whole).flatMap(({ may_lack: lacks = {} }) => Object.values(lacks));
    expect(named.filter((id) => !scaleIds.includes(id))).toEqual([]);
  });
});

it("no rule that went into a table has a rule of its name again", () => {
  const ids = rules.map(({ id }) => id);
  expect(Object.keys(goneRules).filter((id) => ids.includes(id))).toEqual([]);
  expect(Object.values(goneRules).filter((id) => id !== undefined && !ids.includes(id))).toEqual([]);
  expect(() =>
    lintCases(readCases(["cases-example/alder-farm"]), { only: ["colour-contradiction"] }),
  ).toThrow('the rule "colour-contradiction" is gone; process-impossible asks instead.');
});

describe("honest records", () => {
  const tables = [
    "process-impossible",
    "size-implausible",
    parts,
    "list-half-filled",
    "diagnosis-against-finding",
    "diagnosis-beyond-basis",
    "test-impossible",
    "sign-impossible",
    "observation-impossible",
  ];
  const published = globSync("tests/fixtures/outbreaks/*/source.yaml")
    .filter((file) => /^half: work$/m.test(readFileSync(file, "utf8")))
    .flatMap((file) => globSync(`${dirname(file)}/{pig-*,visit}.yaml`));
  it.each([
    ["of published outbreaks", published, 70],
    ["of the example farm", ["cases-example/alder-farm"], 26],
  ])("%s are passed", (_, files, least) => {
    const { findings, summary } = lintCases(readCases(files), { only: tables });
    expect(summary.cases).toBeGreaterThanOrEqual(least);
    const said = findings.filter(({ rule }) => tables.includes(rule));
    expect(said.map(({ file, rule, message }) => `${file} ${rule} ${message}`)).toEqual([]);
  });
});

describe("the side of a finding", () => {
  const eye = (fields: string): string =>
    at("external.eyes", `discharge, volume: 1 ml, exudate: serous, ${fields}`);

  it.each([
    ["side-contradicted", eye("side: left, site: right eye"), "external.eyes.findings[0].side"],
    [
      "side-contradicted",
      "urinary: {kidneys: {left: [{process: cyst, side: right, size: 4 mm}]}}",
      "urinary.kidneys.left[0].side",
    ],
    [
      "side-contradicted",
      "samples: [{id: A, from: external.eyes, side: left, site: right eye, into: dry-swab, for: [pcr]}]",
      "samples[0].side",
    ],
    [
      "distribution-side-contradiction",
      eye("side: left, distribution: bilateral"),
      "external.eyes.findings[0].distribution",
    ],
    [
      "distribution-side-contradiction",
      eye("side: both, distribution: unilateral"),
      "external.eyes.findings[0].distribution",
    ],
    [
      parts,
      "respiratory: {pleura: {pleurisy: {left: none, right: dorsocaudal-focal}, findings: [{process: adhesion, side: left, size: 40 mm}]}}",
      "respiratory.pleura.pleurisy.left",
    ],
    [
      parts,
      "respiratory: {pleura: {pleurisy: {left: none, right: dorsocaudal-focal}, findings: [{process: adhesion, side: both, size: 40 mm}]}}",
      "respiratory.pleura.pleurisy.left",
    ],
    [
      "diagnosis-against-finding",
      `${lung("findings: [{process: abscess, side: left, size: 30 mm}]")}\ndiagnosis: {morphologic: ["Lungs: abscess, right"]}`,
      "diagnosis.morphologic[0]",
    ],
  ])("%s: %s", (rule, text, path) => {
    expect(asked(rule, text)).toEqual([path]);
  });

  it.each([
    ["side-contradicted", eye("side: left, site: left eye")],
    ["side-contradicted", eye("side: both, site: left more than right")],
    ["side-contradicted", "urinary: {kidneys: {left: [{process: cyst, side: left, size: 4 mm}]}}"],
    ["distribution-side-contradiction", eye("side: both, distribution: bilateral")],
    ["distribution-side-contradiction", eye("side: left, distribution: unilateral")],
    [
      parts,
      "respiratory: {pleura: {pleurisy: {left: none, right: dorsocaudal-focal}, findings: [{process: adhesion, side: right, size: 40 mm}]}}",
    ],
    [
      "diagnosis-against-finding",
      `${lung("findings: [{process: abscess, side: both, size: 30 mm}]")}\ndiagnosis: {morphologic: ["Lungs: abscess, right"]}`,
    ],
  ])("%s is silent: %s", (rule, text) => {
    expect(asked(rule, text)).toEqual([]);
  });
});
