/** Ordinary herds, invented: what a practice opens week after week raises no alarm, or nobody listens to the next one. */
import { expect } from "vitest";
import { parse } from "yaml";
import { findAlarms } from "../../src/alarms/index.ts";
import { every } from "../every.ts";
import { type AlarmFiles, readAlarmFiles } from "./alarm-archive.ts";

const herds = parse(`
neonatal scour:
  visit: {signs: [diarrhoea, dehydration, weakness], groups: {nursery-2: {at_risk: 240, affected: 90, dead: 30, onset: 2026-04-12}}}
  cases:
    - {pig: {age: 3 d}, death: {manner: found-dead}, selection: {signs: [diarrhoea, dehydration]}, intestine: {jejunum: [{process: watery-content}]}}
    - {pig: {age: 2 d}, selection: {signs: [diarrhoea, weakness]}, intestine: {jejunum: [{process: distension}]}}
scour of three weeks with coccidia:
  visit: {signs: [diarrhoea, poor-growth]}
  cases: [{pig: {age: 10 d}, selection: {signs: [diarrhoea]}, intestine: {jejunum: [{process: necrosis, exudate: fibrinous}]}}]
clostridia of the newborn:
  visit: {signs: [bloody-diarrhoea, sudden-death]}
  cases: [{pig: {age: 2 d}, death: {manner: found-dead}, selection: {signs: [bloody-diarrhoea, sudden-death]}, intestine: {jejunum: [{process: haemorrhage}, {process: necrosis}]}}]
scour after weaning, a tenth dead:
  visit: {signs: [diarrhoea, dehydration, wasting], groups: {nursery-2: {at_risk: 240, affected: 100, dead: 26, onset: 2026-04-10}}}
  cases: [{pig: {age: 33 d}, death: {manner: found-dead}, selection: {signs: [diarrhoea, dehydration]}, intestine: {jejunum: [{process: hyperaemia}]}}]
oedema disease:
  visit: {signs: [ataxia, sudden-death], groups: {nursery-2: {at_risk: 240, dead: 26, onset: 2026-04-15}}}
  cases: [{pig: {age: 40 d}, death: {manner: found-dead}, selection: {signs: [ataxia, sudden-death]}, external: {eyes: [{process: oedema, distribution: bilateral}]}, stomach: {glandular_part: [{process: oedema}]}}]
dysentery:
  visit: {signs: [bloody-diarrhoea, wasting], groups: {nursery-2: {at_risk: 240, affected: 80, dead: 4, onset: 2026-04-01}}}
  cases: [{pig: {age: 100 d}, selection: {signs: [bloody-diarrhoea]}, intestine: {spiral_colon: [{process: necrosis, distribution: diffuse, exudate: catarrhal}]}}]
bleeding ileum:
  visit: {signs: [sudden-death, pallor]}
  cases: [{pig: {age: 130 d}, death: {manner: found-dead}, selection: {signs: [sudden-death, bloody-diarrhoea, pallor]}, intestine: {ileum: [{process: thickening}, {process: haemorrhage}]}}]
whipworms:
  visit: {signs: [diarrhoea, poor-growth]}
  cases: [{pig: {age: 90 d}, selection: {signs: [diarrhoea, wasting]}, intestine: {caecum: [{process: parasites}]}}]
enzootic pneumonia:
  visit: {signs: [cough, poor-growth]}
  cases: [{pig: {age: 110 d}, selection: {signs: [cough]}, respiratory: {lungs: {findings: [{process: consolidation, distribution: cranioventral}]}}}]
influenza of finishers:
  visit: {signs: [fever, cough, dyspnoea, inappetence, recumbency], groups: {nursery-2: {at_risk: 240, affected: 200, dead: 2, onset: 2026-04-17}}}
  cases: [{pig: {age: 120 d, temperature: 41 °C}, selection: {signs: [cough, dyspnoea]}, respiratory: {lungs: {findings: [{process: consolidation, distribution: cranioventral}]}}}]
influenza of sows and finishers:
  visit: {signs: [fever, cough, inappetence]}
  cases:
    - {pig: {age: 700 d, temperature: 40.5 °C}, selection: {signs: [fever, cough]}}
    - {pig: {age: 120 d, temperature: 41 °C}, selection: {signs: [fever, cough]}}
pleuropneumonia with deaths:
  visit: {signs: [dyspnoea, sudden-death, cough], groups: {nursery-2: {at_risk: 240, affected: 40, dead: 9, onset: 2026-04-16}}}
  cases: [{pig: {age: 120 d, temperature: 41 °C}, death: {manner: found-dead}, selection: {signs: [dyspnoea, epistaxis]}, respiratory: {lungs: {findings: [{process: haemorrhage, distribution: caudodorsal}, {process: consolidation, distribution: caudodorsal}]}, pleura: [{process: fibrin}], nares: [{process: froth, exudate: haemorrhagic}]}}]
snouts:
  visit: {signs: [sneezing, nasal-discharge, twisted-snout]}
  cases: [{pig: {age: 100 d}, selection: {signs: [epistaxis, twisted-snout]}, respiratory: {turbinates: {findings: [{process: atrophy, distribution: bilateral}]}}}]
mild PRRS of weaners:
  visit: {signs: [cough, dyspnoea, poor-growth, fever], groups: {nursery-2: {at_risk: 240, affected: 60, dead: 8, onset: 2026-03-20}}}
  cases: [{selection: {signs: [dyspnoea, poor-growth]}, respiratory: {lungs: {findings: [{process: failure-to-collapse, distribution: diffuse, colour: tan}]}}, lymphoid: {superficial_inguinal_nodes: [{process: enlargement, colour: tan}]}}]
mild PRRS of sows:
  visit: {signs: [inappetence, abortion], groups: {nursery-2: {at_risk: 240, affected: 12}}}
  cases: [{pig: {class: aborted}, death: {manner: born-dead}}]
wasting with circovirus:
  visit: {signs: [wasting, pallor, dyspnoea], groups: {nursery-2: {at_risk: 240, affected: 40, dead: 20, onset: 2026-03-01}}}
  cases: [{selection: {signs: [wasting, pallor]}, lymphoid: {mesenteric_nodes: [{process: enlargement, colour: tan}]}, respiratory: {lungs: {findings: [{process: failure-to-collapse, distribution: diffuse}]}}}]
mummies of parvovirus:
  visit: {signs: [mummies, return-to-oestrus]}
  cases: [{pig: {class: mummy}, death: {manner: born-dead}}, {pig: {class: mummy}, death: {manner: born-dead}}]
a long farrowing:
  visit: {signs: [stillbirth]}
  cases: [{pig: {class: stillborn}, death: {manner: born-dead}, external: {skin: {meconium: heavy}}}]
leptospirosis:
  visit: {signs: [abortion, stillbirth, return-to-oestrus]}
  cases: [{pig: {class: aborted}, death: {manner: born-dead}}]
crushed piglets:
  visit: {groups: {nursery-2: {at_risk: 240, dead: 24, onset: 2026-04-01}}}
  cases:
    - {pig: {age: 2 d}, death: {manner: found-dead}, liver_pancreas: {liver: [{process: rupture}]}, serosa: {peritoneum: [{process: haemorrhage}]}}
    - {pig: {age: 1 d}, death: {manner: found-dead}, external: {subcutis: [{process: haemorrhage, distribution: locally-extensive}]}}
piglets without milk:
  visit: {signs: [agalactia, weakness, paddling], groups: {nursery-2: {at_risk: 240, dead: 20}}}
  cases: [{pig: {age: 2 d}, death: {manner: found-dead}, selection: {signs: [paddling, weakness]}}]
congenital tremor, none dead:
  visit: {signs: [tremor]}
  cases: [{pig: {age: 4 d}, selection: {signs: [tremor]}}]
splay legs:
  visit: {signs: [splay-leg]}
  cases: [{pig: {age: 1 d}, selection: {signs: [splay-leg]}}]
joint-ill of piglets:
  visit: {signs: [lameness, swollen-joints, fever]}
  cases: [{pig: {age: 14 d, temperature: 40.5 °C}, selection: {signs: [lameness, swollen-joints]}, locomotor: {joints: {findings: [{process: exudate, exudate: fibrinosuppurative, site: carpus}]}}}]
streptococci of weaners:
  visit: {signs: [fever, convulsions, ataxia], groups: {nursery-2: {at_risk: 240, affected: 15, dead: 6, onset: 2026-04-12}}}
  cases: [{pig: {age: 40 d, temperature: 41 °C}, selection: {signs: [paddling, opisthotonus]}, nervous: {meninges: [{process: exudate, exudate: fibrinosuppurative}]}}]
glasser:
  visit: {signs: [fever, lameness, swollen-joints, dyspnoea], groups: {nursery-2: {at_risk: 240, affected: 20, dead: 8, onset: 2026-04-12}}}
  cases: [{pig: {age: 45 d, temperature: 41 °C}, selection: {signs: [lameness]}, serosa: {peritoneum: [{process: fibrin}]}, locomotor: {joints: {findings: [{process: fibrin, site: tarsus}]}}}]
greasy pigs:
  visit: {signs: [skin-lesions]}
  cases: [{pig: {age: 35 d}, selection: {signs: [skin-lesions, wasting]}, external: {skin: [{process: crust, distribution: diffuse, colour: brown}], snout: [{process: crust}]}}]
mange:
  visit: {signs: [itching, skin-lesions]}
  cases: [{pig: {age: 100 d}, selection: {signs: [itching]}, external: {skin: [{process: papules, distribution: multifocal}], ears: [{process: crust}]}}]
rings of the belly:
  cases: [{pig: {age: 70 d}, external: {skin: [{process: plaque, shape: round, colour: pink}]}}]
erysipelas of sows:
  visit: {signs: [fever, skin-lesions, lameness, inappetence]}
  cases: [{pig: {age: 700 d, temperature: 41 °C}, selection: {signs: [fever]}, external: {skin: [{process: plaque, shape: rhomboid, colour: red, distribution: multifocal}]}, lymphoid: {spleen: [{process: enlargement, consistency: firm}]}}]
mastitis:
  visit: {signs: [agalactia, fever, inappetence]}
  cases: [{pig: {age: 800 d, sex: female, temperature: 40.5 °C}, selection: {signs: [fever, agalactia, swelling]}, external: {mammary_glands: [{process: inflammation, distribution: multifocal}]}}]
teats bitten by piglets:
  cases: [{pig: {age: 800 d, sex: female}, external: {mammary_glands: [{process: erosion, site: "teats, bitten by piglets"}]}}]
lame sows on rough floors:
  visit: {signs: [lameness]}
  cases: [{pig: {age: 800 d}, selection: {signs: [lameness]}, external: {feet: [{process: erosion, site: heels, distribution: bilateral}, {process: wound, site: claw wall}]}}]
an abscess of a claw:
  visit: {signs: [lameness]}
  cases: [{pig: {age: 120 d, temperature: 40.2 °C}, selection: {signs: [lameness, fever]}, external: {feet: [{process: abscess, distribution: focal}]}}]
osteochondrosis:
  visit: {signs: [lameness]}
  cases: [{pig: {age: 150 d}, selection: {signs: [lameness]}, locomotor: {joints: {findings: [{process: erosion, site: distal humerus}]}}}]
knees worn on the floor:
  cases: [{pig: {age: 5 d}, external: {feet: [{process: erosion, site: soles, distribution: bilateral}], skin: [{process: ulcer, site: carpal skin, distribution: bilateral}]}}]
tail biting with abscesses:
  visit: {signs: [tail-biting, paresis]}
  cases: [{pig: {age: 120 d, temperature: 40.3 °C}, selection: {signs: [tail-biting, paresis]}, external: {tail: {wound: open, wound_size: 20 mm}}, locomotor: {vertebrae: [{process: abscess}]}, respiratory: {lungs: {findings: [{process: abscess}]}}}]
ear tips:
  visit: {signs: [ear-biting]}
  cases: [{pig: {age: 60 d}, external: {ears: {findings: [{process: necrosis, distribution: bilateral}]}}}]
single sudden death, twisted gut:
  visit: {signs: [sudden-death]}
  cases: [{pig: {age: 140 d}, death: {manner: found-dead}, selection: {signs: [sudden-death]}, intestine: {mesentery: [{process: torsion}], jejunum: [{process: congestion, colour: dark-red}]}, lymphoid: {mesenteric_nodes: [{process: congestion, colour: dark-red}]}, serosa: {peritoneum: [{process: effusion, exudate: serosanguineous}]}}]
single sudden death, ulcer of the stomach:
  cases: [{pig: {age: 140 d}, death: {manner: found-dead}, selection: {signs: [sudden-death, melaena, pallor]}, stomach: {pars_oesophagea: {findings: [{process: ulcer}]}, stomach_content: [{process: haemorrhage}]}}]
mulberry heart:
  visit: {signs: [sudden-death]}
  cases: [{pig: {age: 50 d}, death: {manner: found-dead}, selection: {signs: [sudden-death]}, cardiovascular: {heart: [{process: haemorrhage, distribution: multifocal-to-coalescing}], pericardium: [{process: effusion, exudate: serous}]}}]
heart valve:
  cases: [{pig: {age: 140 d}, death: {manner: found-dead}, cardiovascular: {valves: [{process: vegetation}]}, lymphoid: {spleen: [{process: infarct}]}, urinary: {kidneys: [{process: infarct}]}}]
heat stroke:
  visit: {signs: [sudden-death, dyspnoea], groups: {nursery-2: {at_risk: 240, dead: 60, onset: 2026-04-20}}, environment: [{group: nursery-2, temperature: 41 °C}]}
  cases: [{pig: {age: 140 d, temperature: 43 °C}, death: {manner: found-dead}, respiratory: {lungs: {findings: [{process: congestion, distribution: diffuse}]}}}]
a sow dead of heat:
  cases: [{pig: {age: 900 d, temperature: 43 °C}, death: {manner: found-dead}, selection: {signs: [sudden-death, dyspnoea]}, respiratory: {lungs: {findings: [{process: congestion}, {process: oedema}]}}}]
salt poisoning:
  visit: {signs: [convulsions, blindness, head-tilt], groups: {nursery-2: {at_risk: 240, affected: 60, dead: 26, onset: 2026-04-18, water: {from: nipples, works: "no"}}}}
  cases: [{pig: {age: 60 d}, selection: {signs: [convulsions, blindness]}}]
transport death:
  cases: [{pig: {age: 170 d}, death: {manner: found-dead}, selection: {signs: [sudden-death]}, locomotor: {muscles: [{process: pallor}]}, respiratory: {lungs: {findings: [{process: oedema}]}}}]
sow with a bladder full of pus:
  visit: {signs: [sudden-death]}
  cases: [{pig: {age: 900 d, temperature: 39.8 °C}, death: {manner: found-dead}, selection: {signs: [haematuria, wasting]}, urinary: {bladder: [{process: inflammation, exudate: suppurative}, {process: haemorrhage}], kidneys: [{process: abscess}]}}]
uterus of a sow fallen out:
  cases: [{pig: {age: 900 d}, death: {manner: found-dead}, genital: {uterus: [{process: prolapse}]}, external: {perineum: [{process: haemorrhage}]}}]
spleen of a sow twisted:
  cases: [{pig: {age: 900 d}, death: {manner: found-dead}, lymphoid: {spleen: [{process: torsion}, {process: enlargement, colour: black}]}}]
put down with a barbiturate, hot before:
  cases: [{pig: {age: 120 d, temperature: 40.8 °C}, death: {manner: euthanised, method: barbiturate}, lymphoid: {spleen: [{process: enlargement, colour: dark-red}]}, respiratory: {lungs: {findings: [{process: consolidation, distribution: cranioventral}]}}}]
salmonellae of the gut:
  visit: {signs: [diarrhoea, fever, wasting], groups: {nursery-2: {at_risk: 240, affected: 40, dead: 9, onset: 2026-04-05}}}
  cases: [{pig: {age: 70 d, temperature: 40.6 °C}, selection: {signs: [diarrhoea]}, intestine: {spiral_colon: [{process: necrosis, distribution: diffuse, exudate: fibrinous}]}, lymphoid: {mesenteric_nodes: [{process: enlargement}]}}]
milk spots at slaughter:
  cases: [{pig: {age: 170 d}, death: {manner: slaughtered}, liver_pancreas: {liver: [{process: milk-spots, distribution: multifocal}]}}]
blood of sticking at slaughter:
  cases: [{pig: {age: 170 d}, death: {manner: slaughtered}, urinary: {kidneys: [{process: petechiae}]}, respiratory: {lungs: {findings: [{process: haemorrhage}]}}, cardiovascular: {heart: [{process: petechiae}]}}]
a hernia and a piglet without an anus:
  cases: [{pig: {age: 20 d}, external: {navel: [{process: hernia}]}}, {pig: {age: 2 d}, intestine: {rectum: [{process: agenesis}]}}]
navels:
  visit: {signs: [swelling, fever]}
  cases: [{pig: {age: 21 d, temperature: 40.4 °C}, death: {manner: found-dead}, selection: {signs: [swelling]}, external: {navel: [{process: abscess}]}}]
jowl abscesses:
  visit: {signs: [swelling]}
  cases: [{pig: {age: 120 d}, selection: {signs: [swelling]}, external: {subcutis: [{process: abscess, site: jowl, exudate: suppurative}]}, lymphoid: {submandibular_nodes: [{process: abscess, exudate: suppurative}]}}]
weaners that stagger, not opened yet:
  visit: {signs: [ataxia, convulsions], groups: {nursery-2: {at_risk: 240, affected: 8, dead: 2, onset: 2026-04-18}}}
  cases: [{}]
coughing finishers with fever, not opened yet:
  visit: {signs: [cough, fever, dyspnoea], groups: {nursery-2: {at_risk: 240, affected: 60, dead: 2, onset: 2026-04-15}}}
  cases: [{pig: {age: 120 d}}]
sows off feed with fever after farrowing, not opened yet:
  visit: {signs: [agalactia, fever, inappetence, vulval-discharge]}
  cases: [{pig: {age: 800 d}}]
sunburn of outdoor sows:
  visit: {signs: [red-skin, skin-lesions]}
  cases: [{pig: {age: 800 d}, selection: {signs: [red-skin]}}]
one finisher found dead with blue ears:
  cases: [{pig: {age: 150 d}, death: {manner: found-dead}, selection: {signs: [sudden-death, blue-skin]}}]
one sow that aborted with fever:
  cases: [{pig: {age: 800 d, temperature: 40.6 °C}, selection: {signs: [abortion, fever, inappetence]}}]
one weaner with fever and blue ears:
  cases: [{pig: {age: 50 d, temperature: 40.6 °C}, selection: {signs: [dyspnoea, blue-skin]}, respiratory: {lungs: {findings: [{process: consolidation, distribution: cranioventral}]}}}]
three finishers found dead in a month, opened late:
  visit: {groups: {nursery-2: {at_risk: 240, dead: 3, onset: 2026-03-25}}}
  cases: [{pig: {age: 150 d}, death: {manner: found-dead}, intestine: {jejunum: [{process: autolysis}]}}]
a boar with worn joints:
  cases: [{pig: {age: 1000 d, sex: male}, selection: {signs: [lameness]}, locomotor: {joints: {findings: [{process: erosion}]}}, genital: {testes: {left: normal, right: normal}}}]
`) as Readonly<Record<string, Omit<AlarmFiles, "cases"> & { cases: readonly object[] }>>;

every("an ordinary herd raises no alarm", Object.entries(herds), ([, herd]) => {
  const { cases, visits, unreadable } = readAlarmFiles({
    settings: { notifiable: ["malformed-fetuses", "cough-with-nervous-signs"] },
    ...herd,
  });
  expect(unreadable).toEqual([]);
  expect([...visits, ...cases].flatMap((one) => one.faults.map(({ message }) => message))).toEqual([]);
  expect(visits.flatMap(findAlarms).map(({ pattern }) => pattern.id)).toEqual([]);
});
