/** One record each of everyday diseases that lie near a row, after textbook descriptions: each names the row it fails, and no pattern fires. */
import { expect } from "vitest";
import { parse } from "yaml";
import { findAlarms } from "../../src/alarms/index.ts";
import { alarmPatterns } from "../../src/knowledge/index.ts";
import { every } from "../every.ts";
import { type AlarmFiles, readAlarmFiles } from "./alarm-archive.ts";

/** `fails`: the row that the record lies nearest to, and what it lacks or what explains it. */
const diseases = parse(`
Actinobacillus suis in a piglet:
  fails: N3, the foci are of the lung alone; S2, one place bleeds
  cases: [{pig: {age: 10 d}, death: {manner: found-dead}, selection: {signs: [blue-skin, sudden-death]}, respiratory: {lungs: {findings: [{process: necrosis, distribution: multifocal, colour: red}]}, pleura: [{process: petechiae}]}, serosa: {peritoneum: [{process: effusion, exudate: fibrinous}]}}]
Actinobacillus suis in sows:
  fails: S1, red spots that do not bleed
  visit: {signs: [fever, skin-lesions, inappetence]}
  cases: [{pig: {age: 700 d, temperature: 40.3 °C}, selection: {signs: [fever, skin-lesions]}, external: {skin: [{process: plaque, shape: round, colour: red, distribution: multifocal}]}}]
erysipelas with spotted kidneys:
  fails: S1, rhomboid plaques
  cases: [{pig: {age: 130 d, temperature: 41.4 °C}, selection: {signs: [fever, red-skin]}, external: {skin: [{process: plaque, shape: rhomboid, colour: purple, distribution: multifocal}]}, urinary: {kidneys: [{process: petechiae}]}, lymphoid: {spleen: [{process: enlargement, colour: dark-red}], other_nodes: [{process: enlargement, colour: red}]}}]
erysipelas of joints, skin and valve:
  fails: L1, no fever; S4, the clots of a valve
  cases: [{pig: {age: 140 d}, selection: {signs: [lameness, swollen-joints]}, external: {skin: [{process: necrosis, distribution: multifocal}]}, locomotor: {joints: {findings: [{process: thickening}]}}, cardiovascular: {valves: [{process: vegetation}]}, lymphoid: {spleen: [{process: infarct}]}, urinary: {kidneys: [{process: infarct}]}}]
dermatitis and nephropathy, kidneys big and pale:
  fails: S2, no kidney bleeds
  cases: [{pig: {age: 100 d}, selection: {signs: [dullness, skin-lesions]}, external: {skin: [{process: plaque, colour: purple, shape: round, distribution: multifocal-to-coalescing}], subcutis: [{process: oedema, site: hind legs}]}, urinary: {kidneys: [{process: enlargement, severity: marked}, {process: pallor}]}, lymphoid: {superficial_inguinal_nodes: [{process: enlargement, colour: red}]}}]
septicaemic salmonellosis of a weaner found dead:
  fails: N3, no piglet and not nervous; S4, the spleen firm and purple; S9, no fever
  cases: [{pig: {age: 70 d}, death: {manner: found-dead}, selection: {signs: [blue-skin, sudden-death]}, lymphoid: {spleen: [{process: enlargement, colour: purple, consistency: firm}], mesenteric_nodes: [{process: enlargement, colour: red}]}, liver_pancreas: {liver: [{process: enlargement}, {process: necrosis, distribution: multifocal, size: 1 mm}]}, respiratory: {lungs: {findings: [{process: failure-to-collapse, distribution: diffuse}]}}}]
salmonellosis of the gut, hot and blue:
  fails: S9, a lesion of the gut explains the scour
  visit: {signs: [fever, blue-skin, diarrhoea]}
  cases: [{pig: {age: 80 d, temperature: 40.8 °C}, selection: {signs: [diarrhoea, blue-skin]}, intestine: {spiral_colon: [{process: necrosis, distribution: diffuse, exudate: fibrinous}]}}]
oedema disease with a swollen throat:
  fails: A1, lids and stomach; S8, no fever
  visit: {signs: [ataxia, sudden-death], groups: {nursery-2: {at_risk: 240, affected: 14, dead: 9, onset: 2026-04-15}}}
  cases: [{pig: {age: 42 d}, death: {manner: found-dead}, selection: {signs: [ataxia, paddling, swelling]}, external: {eyes: [{process: oedema, distribution: bilateral}], subcutis: [{process: oedema, site: forehead and under the jaw}]}, respiratory: {larynx: [{process: oedema}]}, stomach: {glandular_part: [{process: oedema, site: greater curvature}]}, intestine: {spiral_colon: [{process: oedema, consistency: gelatinous}]}, cardiovascular: {pericardium: [{process: effusion}]}}]
meningitis of a hot blue weaner:
  fails: S9 and S8, pus of the meninges
  visit: {signs: [fever, convulsions], groups: {nursery-2: {at_risk: 240, affected: 9, dead: 2, onset: 2026-04-12}}}
  cases: [{pig: {age: 40 d, temperature: 41.2 °C}, selection: {signs: [paddling, blue-skin]}, nervous: {meninges: [{process: exudate, exudate: fibrinosuppurative}]}, lymphoid: {spleen: [{process: enlargement}]}}]
PRRS of weaners:
  fails: P1, one age class; S3, the skin as always
  visit: {signs: [fever, dyspnoea, inappetence], groups: {nursery-2: {at_risk: 240, affected: 90, dead: 11, onset: 2026-04-01}}}
  cases: [{pig: {age: 45 d, temperature: 40.6 °C}, selection: {signs: [dyspnoea]}, respiratory: {lungs: {findings: [{process: failure-to-collapse, distribution: diffuse, colour: mottled}]}}, lymphoid: {superficial_inguinal_nodes: [{process: enlargement, severity: marked, colour: tan}]}}]
PRRS of sows:
  fails: N2, no piglet ill; S5, one age class
  visit: {signs: [abortion, stillbirth, mummies, inappetence]}
  cases: [{pig: {age: 700 d, temperature: 40.2 °C}, selection: {signs: [abortion, inappetence]}}, {pig: {class: aborted}, death: {manner: born-dead}, urinary: {kidneys: [{process: oedema}]}}, {pig: {class: stillborn}, death: {manner: born-dead}}]
twisted stomach of a sow:
  fails: A3 and S4, torsion
  cases: [{pig: {age: 900 d}, death: {manner: found-dead}, selection: {signs: [sudden-death]}, stomach: {glandular_part: [{process: torsion}, {process: haemorrhage, distribution: diffuse}]}, lymphoid: {spleen: [{process: enlargement, colour: black, consistency: soft}]}, serosa: {peritoneum: [{process: effusion, exudate: haemorrhagic}]}}]
twisted lobe of the liver:
  fails: S4, no spleen; A2, no blood from an opening
  cases: [{pig: {age: 900 d}, death: {manner: found-dead}, selection: {signs: [sudden-death, pallor]}, liver_pancreas: {liver: [{process: torsion}, {process: rupture}]}, serosa: {peritoneum: [{process: haemorrhage}]}}]
bleeding ulcer of the stomach:
  fails: A2, the ulcer
  cases: [{pig: {age: 150 d}, death: {manner: found-dead}, selection: {signs: [epistaxis, melaena, pallor]}, stomach: {pars_oesophagea: {findings: [{process: ulcer}]}, stomach_content: [{process: haemorrhage}]}}]
haemorrhagic bowel:
  fails: A4, the nodes do not bleed; A2, the gut
  cases: [{pig: {age: 140 d}, death: {manner: found-dead}, selection: {signs: [sudden-death, bloody-diarrhoea]}, intestine: {jejunum: [{process: haemorrhage, distribution: diffuse, colour: dark-red}], ileum: [{process: haemorrhage}]}, lymphoid: {mesenteric_nodes: [{process: congestion}]}, serosa: {peritoneum: [{process: effusion, exudate: serosanguineous}]}, external: {perineum: [{process: discharge, exudate: haemorrhagic, site: anus}]}}]
purpura of piglets:
  fails: S2, skin and heart are two places and no kidney
  cases: [{pig: {age: 14 d}, death: {manner: found-dead}, selection: {signs: [pallor, sudden-death]}, external: {skin: [{process: haemorrhage, distribution: multifocal, colour: purple}]}, cardiovascular: {heart: [{process: petechiae, site: epicardium}]}}]
warfarin:
  fails: S2, no kidney and no node
  cases: [{pig: {age: 90 d}, death: {manner: found-dead}, selection: {signs: [pallor, lameness, swollen-joints]}, external: {subcutis: [{process: haemorrhage, distribution: locally-extensive}]}, locomotor: {joints: {findings: [{process: haemorrhage}]}}, serosa: {peritoneum: [{process: haemorrhage}]}, intestine: {jejunum: [{process: haemorrhage}]}}]
porcine stress:
  fails: S9, pale muscle
  cases: [{pig: {age: 165 d, temperature: 42.5 °C}, death: {manner: found-dead}, selection: {signs: [tremor, red-skin, dyspnoea]}, locomotor: {muscles: [{process: pallor, site: loin and ham}]}, respiratory: {lungs: {findings: [{process: oedema}]}}}]
proliferative haemorrhagic enteropathy:
  fails: S7, the gut explains the deaths
  visit: {signs: [sudden-death, pallor, bloody-diarrhoea], groups: {nursery-2: {at_risk: 90, affected: 20, dead: 12, onset: 2026-04-10}}}
  cases: [{pig: {age: 230 d, sex: female}, death: {manner: found-dead}, selection: {signs: [bloody-diarrhoea, pallor]}, intestine: {ileum: [{process: thickening}, {process: haemorrhage}]}, lymphoid: {mesenteric_nodes: [{process: enlargement}]}}]
swine dysentery with fever:
  fails: S1, the gut explains the blood
  visit: {signs: [bloody-diarrhoea, fever, wasting]}
  cases: [{pig: {age: 100 d, temperature: 40.3 °C}, selection: {signs: [bloody-diarrhoea]}, intestine: {spiral_colon: [{process: haemorrhage}, {process: necrosis, distribution: diffuse, exudate: fibrinous}]}}]
dry nipples:
  fails: S7 and S8, the water did not run
  visit: {signs: [convulsions, blindness, sudden-death, fever], groups: {nursery-2: {at_risk: 240, affected: 70, dead: 30, onset: 2026-04-17, water: {from: nipples, works: "no"}}}}
  cases: [{pig: {age: 60 d}, death: {manner: found-dead}, selection: {signs: [convulsions]}, nervous: {brain: [{process: oedema}]}}]
mulberry heart in series:
  fails: S7, the heart explains the deaths; H1, weaned; S2, one place bleeds
  visit: {signs: [sudden-death], groups: {nursery-2: {at_risk: 240, dead: 26, onset: 2026-04-05}}}
  cases: [{pig: {age: 50 d}, death: {manner: found-dead}, selection: {signs: [sudden-death]}, cardiovascular: {heart: [{process: haemorrhage, distribution: multifocal-to-coalescing}, {process: necrosis}], pericardium: [{process: effusion}, {process: fibrin}]}, liver_pancreas: {gall_bladder: [{process: oedema}]}, respiratory: {lungs: {findings: [{process: oedema}]}}}]
piglet without iron:
  fails: H1, the heart is pale all through; S4, the spleen is big only
  cases: [{pig: {age: 24 d}, death: {manner: found-dead}, selection: {signs: [pallor, dyspnoea, sudden-death]}, cardiovascular: {heart: [{process: enlargement}, {process: pallor, distribution: diffuse}], pericardium: [{process: effusion}]}, lymphoid: {spleen: [{process: enlargement}]}, liver_pancreas: {liver: [{process: enlargement}, {process: discolouration, colour: mottled}]}}]
heart valve of a hot blue finisher:
  fails: S4, the clots of a valve
  cases: [{pig: {age: 140 d, temperature: 40.6 °C}, death: {manner: found-dead}, selection: {signs: [lameness, blue-skin, dyspnoea]}, cardiovascular: {valves: [{process: vegetation}]}, lymphoid: {spleen: [{process: infarct, site: border, distribution: multifocal}]}, urinary: {kidneys: [{process: infarct}, {process: haemorrhage}]}}]
melanosis at slaughter:
  fails: A4 and S4, black nodes that are not dead, the spleen sound
  cases: [{pig: {age: 300 d}, death: {manner: slaughtered}, external: {skin: [{process: mass, colour: black}]}, lymphoid: {submandibular_nodes: [{process: enlargement, colour: black}], superficial_inguinal_nodes: [{process: discolouration, colour: black}], spleen: normal}}]
tail biting and pus spread by the blood:
  fails: V2 and S4, abscesses
  visit: {signs: [tail-biting, lameness, fever]}
  cases: [{pig: {age: 120 d, temperature: 40.5 °C}, selection: {signs: [tail-biting, paresis]}, respiratory: {lungs: {findings: [{process: abscess, distribution: multifocal}]}}, locomotor: {vertebrae: [{process: abscess}]}, lymphoid: {spleen: [{process: infarct}]}, urinary: {kidneys: [{process: abscess}]}}]
piglets that bleed from the navel:
  fails: N2, they bled to death; A2, no opening of the body
  visit: {signs: [stillbirth, pallor]}
  cases: [{pig: {age: 0 d, class: suckling}, death: {manner: found-dead}, selection: {signs: [pallor]}, external: {navel: [{process: haemorrhage}]}}]
encephalomyocarditis of weaners:
  fails: H1, weaned
  visit: {signs: [sudden-death], groups: {nursery-2: {at_risk: 240, dead: 7, onset: 2026-04-10}}}
  cases: [{pig: {age: 65 d}, death: {manner: found-dead}, selection: {signs: [sudden-death]}, cardiovascular: {heart: [{process: pallor, shape: linear, distribution: multifocal}], pericardium: [{process: effusion}]}}]
listeriosis of a weaner:
  fails: S8, one pig; N1, weaned
  cases: [{pig: {age: 50 d, temperature: 40.8 °C}, selection: {signs: [tremor, ataxia, dullness]}, nervous: {meninges: [{process: congestion}]}}]
leptospirosis of fetuses:
  fails: S2, blood seeps through the dead; B2, none lame
  visit: {signs: [abortion, stillbirth, return-to-oestrus]}
  cases: [{pig: {class: aborted}, death: {manner: born-dead}, external: {skin: [{process: petechiae}]}, urinary: {kidneys: [{process: petechiae}]}, serosa: {peritoneum: [{process: effusion, exudate: serosanguineous}]}, liver_pancreas: {liver: [{process: icterus}]}}]
parvovirus:
  fails: M1, none is malformed; N2, no piglet dies
  visit: {signs: [mummies, stillbirth, return-to-oestrus]}
  cases: [{pig: {class: mummy}, death: {manner: born-dead}}, {pig: {class: stillborn}, death: {manner: born-dead}, serosa: {peritoneum: [{process: effusion, exudate: haemorrhagic}]}}]
pyelonephritis of a sow:
  fails: S2, the urinary organs hold pus
  cases: [{pig: {age: 1100 d}, death: {manner: found-dead}, selection: {signs: [haematuria, wasting]}, urinary: {bladder: [{process: haemorrhage, distribution: diffuse}, {process: inflammation, exudate: suppurative}], kidneys: [{process: haemorrhage}], renal_pelvis: [{process: exudate, exudate: suppurative}]}, lymphoid: {renal_nodes: [{process: haemorrhage}]}}]
fumonisin:
  fails: S7, wet lungs of pigs that breathe hard without fever
  visit: {signs: [dyspnoea, blue-skin, sudden-death], groups: {nursery-2: {at_risk: 240, affected: 50, dead: 34, onset: 2026-04-17}}}
  cases: [{pig: {age: 120 d}, death: {manner: found-dead}, selection: {signs: [dyspnoea]}, respiratory: {lungs: {findings: [{process: oedema, severity: marked, distribution: diffuse}]}}, serosa: {pleural_space: [{process: effusion, exudate: serous, severity: marked}]}}]
pigweed:
  fails: S2, one organ bleeds; S8, no fever
  visit: {signs: [tremor, ataxia, sudden-death]}
  cases: [{pig: {age: 80 d}, death: {manner: found-dead}, selection: {signs: [tremor, ataxia]}, urinary: {kidneys: [{process: oedema, site: round the kidney}, {process: petechiae}]}, serosa: {peritoneum: [{process: effusion, exudate: serous}]}}]
polyserositis of boars:
  fails: B1, the testis is sound; V2, swollen joints
  visit: {signs: [fever, lameness, swelling]}
  cases: [{pig: {age: 250 d, sex: male, temperature: 41 °C}, selection: {signs: [fever, lameness, swelling]}, external: {perineum: [{process: oedema, site: scrotum}]}, genital: {testes: {left: [{process: fibrin}], right: [{process: fibrin}]}}, serosa: {peritoneum: [{process: fibrin}]}, locomotor: {joints: {findings: [{process: fibrin}]}}}]
mastitis of a sow that does not dung:
  fails: S9, the udder
  cases: [{pig: {age: 800 d, sex: female, temperature: 41 °C}, selection: {signs: [agalactia, constipation, red-skin]}, external: {mammary_glands: [{process: inflammation, distribution: multifocal}]}}]
dead ear tips and joint-ill:
  fails: L1, the skin of the body is whole
  visit: {signs: [lameness, swollen-joints]}
  cases: [{pig: {age: 40 d, temperature: 40.5 °C}, selection: {signs: [lameness, swollen-joints]}, external: {ears: {findings: [{process: necrosis, distribution: bilateral}]}}, locomotor: {joints: {findings: [{process: exudate, exudate: suppurative}]}}}]
prolapse of the rectum of a finisher found dead:
  fails: A2, the prolapse
  cases: [{pig: {age: 130 d}, death: {manner: found-dead}, external: {perineum: [{process: haemorrhage}, {process: prolapse}]}, intestine: {rectum: [{process: prolapse}]}}]
one crooked stillborn piglet:
  fails: M1, one piglet
  cases: [{pig: {class: stillborn, age: 0 d}, death: {manner: born-dead}, selection: {signs: [stillbirth]}, locomotor: {joints: {findings: [{process: malformation, distribution: bilateral}]}}}]
white muscle disease:
  fails: C1, no cyst
  cases: [{pig: {age: 70 d}, death: {manner: found-dead}, locomotor: {muscles: [{process: pallor}, {process: mineralisation, distribution: multifocal}]}, liver_pancreas: {liver: [{process: necrosis, distribution: lobular}]}}]
`) as Readonly<Record<string, Omit<AlarmFiles, "cases"> & { cases: readonly object[]; fails: string }>>;

const listed = alarmPatterns.flatMap(({ id, fires }) => (fires === "when-listed" ? [id] : []));
const rows = new Set(alarmPatterns.flatMap(({ criteria }) => criteria));

every(
  "an everyday disease near a row raises no alarm",
  Object.entries(diseases),
  ([, { fails, ...files }]) => {
    for (const row of fails.match(/\b[A-Z]\d\b/g) ?? [""]) expect(rows).toContain(row);
    const { cases, visits, unreadable } = readAlarmFiles({ settings: { notifiable: listed }, ...files });
    expect(unreadable).toEqual([]);
    expect([...visits, ...cases].flatMap((one) => one.faults.map(({ message }) => message))).toEqual([]);
    expect(visits.flatMap(findAlarms).map(({ pattern }) => pattern.id)).toEqual([]);
  },
);
