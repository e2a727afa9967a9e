/** The edges of the rules on description and consistency, and the words in their data. */
import { describe, expect, it } from "vitest";
import { description, organById, organs, plausible } from "../../src/knowledge/index.ts";
import { scales } from "../../src/knowledge/scales.ts";
import vocabulary from "../../src/schemas/vocabulary.schema.json" with { type: "json" };
import { lintExample } from "./lay-example.ts";

/** The rules that speak of a case, laid over the base visit. */
const speaking = (text: string, only: string): string[] =>
  lintExample({ case: text }, { only: [only] }).findings.map(({ path }) => path);

const lungs = (finding: string): string =>
  `respiratory: {lungs: {findings: [{process: consolidation, ${finding}}]}}`;
const spleen = (finding: string): string => `lymphoid: {spleen: [{${finding}}]}`;

describe("silent where the record is right", () => {
  it.each([
    ["distribution-extent-contradiction", spleen("process: infarct, distribution: diffuse, extent: 30 %")],
    ["distribution-extent-contradiction", spleen("process: infarct, distribution: focal, extent: 60 %")],
    ["distribution-number-contradiction", spleen("process: infarct, distribution: multifocal, number: 2")],
    ["distribution-number-contradiction", spleen("process: infarct, distribution: patchy, number: 1")],
    [
      "distribution-side-contradiction",
      spleen("process: infarct, distribution: bilateral, site: left and right end"),
    ],
    [
      "distribution-side-contradiction",
      "urinary: {kidneys: {left: [{process: infarct, distribution: focal, size: 8 mm}], right: normal}}",
    ],
    ["size-implausible", spleen("process: infarct, distribution: focal, size: 60 cm")],
    [
      "size-implausible",
      "intestine: {jejunum: [{process: haemorrhage, distribution: segmental, size: 120 cm}]}",
    ],
    ["extent-contradicts-lobes", lungs("distribution: cranioventral, extent: 40 %")],
    ["extent-contradicts-lobes", lungs("site: left middle lobe, distribution: focal, extent: 60 %")],
    ["site-contradicts-lobes", lungs("site: both sides, distribution: cranioventral, extent: 14 %")],
    [
      "site-contradicts-lobes",
      lungs("site: left caudal and middle lobe, distribution: cranioventral, extent: 14 %"),
    ],
    ["site-contradicts-lobes", lungs("site: accessory lobe, distribution: focal, extent: 1 %")],
    ["dorsal-worse-than-ventral", "respiratory: {turbinates: {left: {dorsal: 2, ventral: 1}}}"],
    [
      "turbinate-loss-unexplained",
      "respiratory: {turbinates: {left: {dorsal: 1, ventral: 1}, right: {dorsal: 0, ventral: 1}, grades: {maff-1978: 1}, loss_looks: }}",
    ],
    [
      "turbinate-loss-contradiction",
      "respiratory: {turbinates: {left: {dorsal: 1, ventral: 1}, right: {dorsal: 0, ventral: 1}, loss_looks: none}}",
    ],
    [
      "brain-in-pieces",
      "nervous: {brain: {taken: pieces, not_assessable: {because: damaged, why: taken in pieces}}}",
    ],
    [
      "skull-cut-wrong",
      "nervous: {brain: {skull_cut: split-lengthwise, not_assessable: {because: damaged, why: sawn}}}",
    ],
    [
      "fresh-yet-autolysed",
      "intestine: {jejunum: {not_assessable: {because: autolysed, why: green}}, ileum: {not_assessable: {because: autolysed, why: green}}}",
    ],
    ["group-class-mismatch", "pig: {age: 90 d, group: nursery-2}"],
    [
      "volume-implausible",
      "pig: {weight: }\nserosa: {peritoneum: [{process: effusion, distribution: diffuse, volume: 9 l}]}",
    ],
    [
      "organ-weight-implausible",
      "urinary: {kidneys: {left: {state: normal, weight: 9 g}, right: {state: normal, weight: 40 g}}}",
    ],
    ["parity-impossible", "pig: {parity: 0}"],
    ["sign-impossible", "pig: {class: stillborn, sex: male}\nselection: {signs: [stillbirth]}"],
    [
      "organ-impossible",
      "pig: {sex: castrate}\ngenital: {testes: {not_assessable: {because: absent, why: castrated}}}",
    ],
    [
      "artefact-described-as-lesion",
      spleen("process: autolysis, distribution: diffuse, extent: 90 %, severity: mild"),
    ],
    [
      "pars-oesophagea-unseen",
      "death: {manner: found-dead, method: }\nstomach: {pars_oesophagea: {not_examined: late}}",
    ],
    [
      "valves-unseen",
      `${spleen("process: infarct, distribution: focal, size: 8 mm, certainty: artefact")}\ncardiovascular: {valves: {not_examined: late}}`,
    ],
    [
      "finding-without-size",
      "lymphoid: {spleen: {size: 300 mm, findings: [{process: enlargement, distribution: diffuse, extent: 90 %}]}}",
    ],
    ["finding-without-size", spleen("process: enlargement, severity: moderate")],
    ["finding-without-size", spleen("process: torsion")],
    ["finding-without-size", "external: {skin: [{process: icterus}]}"],
    ["finding-without-size", spleen("process: congestion, distribution: diffuse")],
    ["finding-without-size", "respiratory: {nares: [{process: discharge, exudate: serous, severity: mild}]}"],
    ["finding-without-size", lungs("distribution: cranioventral")],
    ["finding-without-distribution", spleen("process: torsion")],
    [
      "finding-without-distribution",
      "serosa: {peritoneum: [{process: effusion, volume: 40 ml, exudate: serous}]}",
    ],
    ["lesion-not-sampled", "external: {skin: [{process: pallor, distribution: diffuse, severity: marked}]}"],
  ])("%s: %s", (rule, text) => {
    expect(speaking(text, rule)).toEqual([]);
  });
});

describe("speaks where it is wrong", () => {
  it.each([
    [
      "distribution-extent-contradiction",
      spleen("process: infarct, distribution: diffuse, extent: 29 %"),
      "lymphoid.spleen[0].extent",
    ],
    [
      "distribution-side-contradiction",
      "urinary: {kidneys: {left: [{process: infarct, distribution: symmetrical, size: 8 mm}], right: normal}}",
      "urinary.kidneys.left[0].distribution",
    ],
    [
      "size-implausible",
      spleen("process: infarct, distribution: focal, size: 30 x 61 cm"),
      "lymphoid.spleen[0].size",
    ],
    ["finding-without-size", spleen("process: enlargement, extent: 90 %"), "lymphoid.spleen[0]"],
    ["finding-without-size", spleen("process: ulcer, distribution: diffuse"), "lymphoid.spleen[0]"],
    [
      "finding-without-size",
      "serosa: {peritoneum: [{process: effusion, extent: 90 %, exudate: serous}]}",
      "serosa.peritoneum[0]",
    ],
    ["measure-zero", spleen("process: infarct, distribution: focal, size: 0 mm"), "lymphoid.spleen[0]"],
    [
      "measure-zero",
      "cardiovascular: {pericardium: [{process: effusion, distribution: diffuse, volume: 0 ml}]}",
      "cardiovascular.pericardium[0]",
    ],
    [
      "extent-contradicts-lobes",
      lungs("distribution: cranioventral, extent: 41 %"),
      "respiratory.lungs.findings[0].extent",
    ],
    [
      "site-contradicts-lobes",
      lungs("site: left caudal lobe, distribution: cranioventral, extent: 4 %"),
      "respiratory.lungs.findings[0].site",
    ],
    [
      "caudal-part-contradicts-lobe",
      "respiratory: {lungs: {consolidation: {left_caudal: 90}, caudal_cranial_part: {left: 10}}}",
      "respiratory.lungs.caudal_cranial_part.left",
    ],
    [
      "observation-parts-disagree",
      "respiratory: {pleura: {pleurisy: {left: cranioventral, right: none}, findings: [{process: adhesion, site: right side, distribution: focal, size: 9 mm}]}}",
      "respiratory.pleura.pleurisy.right",
    ],
    [
      "pars-oesophagea-unseen",
      "pig: {age: 130 d, weight: 80 kg}\ndeath: {manner: found-dead, method: }\nstomach: {pars_oesophagea: {not_examined: late}}",
      "stomach.pars_oesophagea",
    ],
    [
      "lame-pig-joints",
      "selection: {signs: [lameness]}\nlocomotor: {joints: {state: , opened: , not_examined: late}}",
      "locomotor.joints",
    ],
    [
      "observation-impossible",
      "pig: {class: stillborn}\nstomach: {stomach_content: {state: normal, milk: little}}",
      "stomach.stomach_content.milk",
    ],
    ["group-class-mismatch", "pig: {age: 10 d, weight: 3.4 kg, group: finisher-1}", "pig.group"],
    ["basis-contradicts-death", "death: {manner: found-dead, method: }", "selection.basis"],
    [
      "turbinate-loss-unexplained",
      "respiratory: {turbinates: {left: , right: , septum: , grades: {maff-1978: 2}, loss_looks: }}",
      "respiratory.turbinates.loss_looks",
    ],
  ])("%s: %s", (rule, text, path) => {
    expect(speaking(text, rule)).toEqual([path]);
  });
});

describe("the words of the data", () => {
  const words = (name: string): readonly string[] => {
    const defs: Readonly<Record<string, { readonly enum?: readonly string[] }>> = vocabulary.$defs;
    return defs[name]?.enum ?? [];
  };

  it("are in the vocabulary", () => {
    expect(Object.keys(description.processes)).toEqual(words("process"));
    const observations = organs.flatMap(({ definition }) => Object.keys(definition.observations ?? {}));
    const observed = Object.values(description.processes).flatMap((process) => process.observed ?? []);
    expect(observed.filter((key) => !observations.includes(key))).toEqual([]);
  });

  it("name organs and scales that exist", () => {
    expect(Object.keys(plausible.organ_share).filter((id) => organById(id) === undefined)).toEqual([]);
    const named = [
      ...Object.keys(plausible.worst_concha),
      ...plausible.grade_pairs.flatMap((pair) => [pair.scale, pair.other]),
    ];
    expect(named.filter((id) => !scales.has(id))).toEqual([]);
  });
});
