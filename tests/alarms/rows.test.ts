/** Every row of CRITERIA.md against records just inside and just outside it: inside its own pattern fires, outside none at all. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { findAlarms } from "../../src/alarms/index.ts";
import { alarmPatterns } from "../../src/knowledge/index.ts";
import { every } from "../every.ts";
import { type AlarmFiles, readAlarmFiles } from "./alarm-archive.ts";

const weaner = { age: "58 d" };
const finisher = { age: "130 d" };
const sow = { age: "800 d", sex: "female" };
const boar = { age: "700 d", sex: "male" };
const piglet = { age: "8 d" };
const fetus = { class: "stillborn", age: "0 d" };
const dead = { manner: "found-dead" };
const slaughtered = { manner: "slaughtered" };

type Part = Readonly<Record<string, unknown>>;
const is = (process: string, more: Part = {}): Part[] => [{ process, ...more }];
const pig = (kind: Part, signs: readonly string[] = [], more: Part = {}): Part => ({
  pig: kind,
  ...(signs.length > 0 ? { selection: { signs } } : {}),
  ...more,
});
const hot = (kind: Part): Part => ({ ...kind, temperature: "41 °C" });
const group = (counts: Part): Part => ({ groups: { "nursery-2": counts } });

interface Row {
  readonly inside: Readonly<Record<string, Partial<AlarmFiles>>>;
  readonly outside: Readonly<Record<string, Partial<AlarmFiles>>>;
}

const kidneys = { urinary: { kidneys: is("petechiae") } };
const bloodyNodes = { lymphoid: { submandibular_nodes: is("haemorrhage") } };
const darkSpleen = is("enlargement", { colour: "black" });
const plaques = { external: { skin: is("plaque", { shape: "rhomboid" }) } };
const bruise = { external: { skin: is("haemorrhage", { distribution: "focal" }) } };
const lung = { lungs: { findings: is("consolidation") } };
const throat = { external: { subcutis: is("oedema", { site: "throat" }) } };
const streaks = { cardiovascular: { heart: is("pallor", { shape: "linear" }) } };
const lids = { external: { eyes: is("oedema", { distribution: "bilateral" }) } };
const noBrain = { nervous: { brain: is("agenesis") } };
const cerebellum = { nervous: { brain: is("hypoplasia", { site: "cerebellum" }) } };
const dry = { exudate: "caseous" };
const foci = is("necrosis", { distribution: "miliary" });

const rows: Readonly<Record<string, Row>> = {
  S1: {
    inside: {
      "three hot pigs, and another found dead with bleeding nodes": {
        cases: [...[1, 2, 3].map(() => pig(hot(weaner))), pig(weaner, [], { death: dead, ...bloodyNodes })],
      },
      "fever, a red gut, and blood on the serosa": {
        cases: [
          pig(hot(weaner), [], {
            intestine: { jejunum: is("hyperaemia") },
            serosa: { peritoneum: is("petechiae") },
          }),
        ],
      },
      "fever and petechiae of the skin": {
        cases: [pig(hot(weaner), [], { external: { skin: is("petechiae") } })],
      },
      "fever told of the herd, and a bleeding node": {
        visit: { signs: ["fever"] },
        cases: [pig(weaner, [], bloodyNodes)],
      },
      "fever and spots of the bladder": {
        cases: [pig(weaner, ["fever"], { urinary: { bladder: is("petechiae") } })],
      },
      "fever and spots of the larynx": {
        cases: [pig(weaner, ["fever"], { respiratory: { larynx: is("haemorrhage") } })],
      },
      "fever and blood on the serosa": {
        cases: [pig(weaner, ["fever"], { serosa: { peritoneum: is("petechiae") } })],
      },
      "fever and spots of the heart's outer skin": {
        cases: [
          pig(weaner, ["fever"], { cardiovascular: { heart: is("petechiae", { site: "epicardium" }) } }),
        ],
      },
      "fever, a red gut, and bleeding nodes of the gut": {
        cases: [
          pig(hot(weaner), [], {
            intestine: { jejunum: is("hyperaemia") },
            lymphoid: { mesenteric_nodes: is("haemorrhage") },
          }),
        ],
      },
      "fever, bloody scour, and a gut that bleeds": {
        cases: [pig(hot(weaner), ["bloody-diarrhoea"], { intestine: { jejunum: is("haemorrhage") } })],
      },
      "fever and blood from the nose": { cases: [pig(finisher, ["fever", "epistaxis"])] },
      "fever, a firm lung, and bleeding nodes of the throat": {
        cases: [pig(hot(finisher), [], { respiratory: lung, ...bloodyNodes })],
      },
      "fever and nodes of the gut that are big with blood": {
        cases: [
          pig(hot(weaner), [], {
            lymphoid: { mesenteric_nodes: is("enlargement", { exudate: "haemorrhagic" }) },
          }),
        ],
      },
      "fever and blood from the anus": {
        cases: [
          pig(hot(weaner), [], { external: { perineum: is("discharge", { exudate: "haemorrhagic" }) } }),
        ],
      },
      "fever and blood from the mouth": {
        cases: [
          pig(hot(weaner), [], { upper_digestive: { mouth: is("discharge", { exudate: "haemorrhagic" }) } }),
        ],
      },
      "fever and spots of the mesentery": {
        cases: [pig(hot(weaner), [], { intestine: { mesentery: is("petechiae") } })],
      },
    },
    outside: {
      "fever and spots of the skin under rhomboid plaques": {
        cases: [
          pig(hot(finisher), [], {
            external: { skin: [...is("plaque", { shape: "rhomboid" }), ...is("petechiae")] },
          }),
        ],
      },
      "fever and spots of the skin of a pig that was slaughtered": {
        cases: [pig(hot(finisher), [], { death: slaughtered, external: { skin: is("petechiae") } })],
      },
      "fever, a dead gut, and blood on the serosa": {
        cases: [
          pig(hot(weaner), [], {
            intestine: { jejunum: is("necrosis") },
            serosa: { peritoneum: is("petechiae") },
          }),
        ],
      },
      "fever, a firm lung, and its bleeding nodes": {
        cases: [
          pig(hot(finisher), [], { respiratory: lung, lymphoid: { bronchial_nodes: is("haemorrhage") } }),
        ],
      },
      "fever, a twisted nose, and blood from it": {
        cases: [pig(hot(finisher), ["epistaxis", "twisted-snout"])],
      },
      "fever and bloody scour of a sucking piglet": { cases: [pig(hot(piglet), ["bloody-diarrhoea"])] },
      "fever and bloody scour told of the herd, none dies": {
        visit: { signs: ["fever", "bloody-diarrhoea"] },
        cases: [],
      },
      "fever alone": { cases: [pig(hot(weaner), ["inappetence"])] },
      "two hot pigs, and another with bleeding nodes": {
        cases: [...[1, 2].map(() => pig(hot(weaner))), pig(weaner, [], bloodyNodes)],
      },
      "spots of the skin alone": { cases: [pig(weaner, [], { external: { skin: is("petechiae") } })] },
      "fever and a bruise": { cases: [pig(hot(weaner), [], bruise)] },
      "fever, and blood of the nose from a lung that bleeds": {
        cases: [
          pig(hot(finisher), ["epistaxis"], { respiratory: { lungs: { findings: is("haemorrhage") } } }),
        ],
      },
      "fever, and blood in a bladder with pus": {
        cases: [
          pig(hot(sow), ["haematuria"], {
            urinary: { bladder: is("inflammation", { exudate: "suppurative" }) },
          }),
        ],
      },
      "fever and a skin that bleeds at a wound": {
        cases: [pig(hot(finisher), [], { external: { skin: [...is("wound"), ...is("haemorrhage")] } })],
      },
      "fever and blood from the anus below a sick gut": {
        cases: [
          pig(hot(weaner), [], {
            external: { perineum: is("discharge", { exudate: "haemorrhagic" }) },
            intestine: { spiral_colon: is("necrosis") },
          }),
        ],
      },
    },
  },
  S2: {
    inside: {
      "windpipe, heart and spleen bleed": {
        cases: [
          pig(finisher, [], {
            respiratory: { trachea: is("petechiae") },
            cardiovascular: { heart: is("petechiae") },
            lymphoid: { spleen: is("haemorrhage") },
          }),
        ],
      },
      "red spots that run together, and spots of the kidney": {
        cases: [
          pig(weaner, [], {
            ...kidneys,
            external: { skin: is("hyperaemia", { distribution: "multifocal-to-coalescing" }) },
          }),
        ],
      },
      "petechiae of the skin and bleeding nodes": {
        cases: [pig(weaner, [], { ...bloodyNodes, external: { skin: is("petechiae") } })],
      },
      "kidneys and nodes": { cases: [pig(weaner, [], { ...kidneys, ...bloodyNodes })] },
      "bladder and skin": {
        cases: [
          pig(weaner, [], { urinary: { bladder: is("haemorrhage") }, external: { skin: is("haemorrhage") } }),
        ],
      },
      "larynx and infarcts of the spleen": {
        cases: [
          pig(weaner, [], { respiratory: { larynx: is("petechiae") }, lymphoid: { spleen: is("infarct") } }),
        ],
      },
      "nodes of the stomach big with blood, and spots of the kidneys": {
        cases: [
          pig(weaner, [], {
            lymphoid: { gastrohepatic_nodes: is("enlargement", { exudate: "haemorrhagic" }) },
            ...kidneys,
          }),
        ],
      },
      "red spots of the skin in life, and spots of the kidneys": {
        cases: [pig(weaner, ["red-skin", "skin-lesions"], kidneys)],
      },
      "spots of liver, gall bladder and stomach": {
        cases: [
          pig(finisher, [], {
            liver_pancreas: { liver: is("petechiae"), gall_bladder: is("haemorrhage") },
            stomach: { glandular_part: is("petechiae") },
          }),
        ],
      },
      "spots of pleura, mesentery and thymus": {
        cases: [
          pig(finisher, [], {
            respiratory: { pleura: is("petechiae") },
            intestine: { mesentery: is("petechiae") },
            lymphoid: { thymus: is("petechiae") },
          }),
        ],
      },
    },
    outside: {
      "a bladder that bleeds round a stone, and bleeding nodes": {
        cases: [
          pig(sow, [], {
            ...bloodyNodes,
            urinary: { bladder: [...is("haemorrhage"), ...is("foreign-body")] },
          }),
        ],
      },
      "kidneys and nodes of a stillborn piglet": { cases: [pig(fetus, [], { ...kidneys, ...bloodyNodes })] },
      "kidneys, and skin that bleeds in one place": { cases: [pig(finisher, [], { ...kidneys, ...bruise })] },
      "round plaques, and kidneys that are big and pale only": {
        cases: [
          pig(weaner, [], {
            external: { skin: is("plaque", { shape: "round", distribution: "multifocal" }) },
            urinary: { kidneys: [...is("enlargement"), ...is("pallor")] },
          }),
        ],
      },
      "a bladder that bleeds round an ulcer, and bleeding nodes": {
        cases: [
          pig(sow, [], { ...bloodyNodes, urinary: { bladder: [...is("haemorrhage"), ...is("ulcer")] } }),
        ],
      },
      "kidneys alone": { cases: [pig(weaner, [], kidneys)] },
      "nodes alone": { cases: [pig(weaner, [], bloodyNodes)] },
      "kidneys, and nodes that are swollen only": {
        cases: [
          pig(weaner, [], {
            ...kidneys,
            lymphoid: { submandibular_nodes: is("enlargement", { colour: "tan" }) },
          }),
        ],
      },
      "kidneys, and one bruise": { cases: [pig(weaner, [], { ...kidneys, ...bruise })] },
      "blood in lung, muscle and belly": {
        cases: [
          pig(finisher, [], {
            respiratory: { lungs: { findings: is("haemorrhage") } },
            locomotor: { muscles: is("haemorrhage") },
            serosa: { peritoneum: is("haemorrhage") },
          }),
        ],
      },
      "red skin in life, and spots of the kidneys": { cases: [pig(weaner, ["red-skin"], kidneys)] },
    },
  },
  S3: {
    inside: {
      "fever, deaths, blue skin, and fibrin over a lung that is sound": {
        visit: { signs: ["fever", "sudden-death", "blue-skin"] },
        cases: [pig(finisher, [], { respiratory: { pleura: is("fibrin") } })],
      },
      "fever, deaths and red skin told of the herd": {
        visit: { signs: ["fever", "sudden-death", "red-skin"] },
        cases: [pig(finisher)],
      },
      "fever, six dead of a group, blue ears of one": {
        visit: { signs: ["fever"], ...group({ dead: 6, onset: "2026-04-01" }) },
        cases: [pig(weaner, [], { external: { ears: is("discolouration", { colour: "blue" }) } })],
      },
      "fever, blue skin, and two of each of two groups dead": {
        visit: {
          signs: ["fever", "blue-skin"],
          groups: { weaners: { at_risk: 300, dead: 2 }, finishers: { at_risk: 300, dead: 2 } },
        },
        cases: [],
      },
      "fever, red skin, and two of twenty sows dead": {
        visit: { signs: ["fever", "red-skin"], groups: { sows: { at_risk: 20, dead: 2 } } },
        cases: [],
      },
    },
    outside: {
      "a dead lung under fibrin": {
        visit: { signs: ["fever", "sudden-death", "blue-skin"] },
        cases: [
          pig(finisher, [], { respiratory: { lungs: { findings: is("necrosis") }, pleura: is("fibrin") } }),
        ],
      },
      "fever and deaths, the skin as always": {
        visit: { signs: ["fever", "sudden-death"] },
        cases: [pig(finisher)],
      },
      "deaths and red skin, no fever": {
        visit: { signs: ["sudden-death", "red-skin"] },
        cases: [pig(finisher)],
      },
      "fever and red skin, nobody dies": { visit: { signs: ["fever", "red-skin"] }, cases: [pig(finisher)] },
      "rhomboid plaques": {
        visit: { signs: ["fever", "sudden-death", "red-skin"] },
        cases: [pig(finisher, [], plaques)],
      },
      "sucking piglets only": {
        visit: { signs: ["fever", "sudden-death", "red-skin"] },
        cases: [pig(piglet)],
      },
      "fever, red skin and deaths of a group called piglets": {
        visit: { signs: ["fever", "red-skin"], groups: { piglets: { at_risk: 90, affected: 20, dead: 8 } } },
        cases: [],
      },
      "fever, red skin, and two of fifty sows dead": {
        visit: { signs: ["fever", "red-skin"], groups: { sows: { at_risk: 50, dead: 2 } } },
        cases: [],
      },
    },
  },
  S4: {
    inside: {
      "a barbiturate, and a big dark spleen with bleeding nodes": {
        cases: [
          pig(weaner, [], {
            death: { manner: "euthanised", method: "barbiturate" },
            lymphoid: { spleen: darkSpleen, renal_nodes: is("haemorrhage") },
          }),
        ],
      },
      "infarcts along the edge alone": {
        cases: [pig(weaner, [], { lymphoid: { spleen: is("infarct", { site: "edges" }) } })],
      },
      "fever and a big dark spleen": { cases: [pig(hot(weaner), [], { lymphoid: { spleen: darkSpleen } })] },
      "fever and a big firm dark spleen": {
        cases: [
          pig(hot(weaner), [], {
            lymphoid: { spleen: is("enlargement", { colour: "dark-red", consistency: "firm" }) },
          }),
        ],
      },
      "fever and infarcts of the spleen": {
        cases: [pig(weaner, ["fever"], { lymphoid: { spleen: is("infarct") } })],
      },
      "big dark spleen and bleeding nodes": {
        cases: [pig(weaner, [], { lymphoid: { spleen: darkSpleen, renal_nodes: is("haemorrhage") } })],
      },
      "big dark spleen and big dark nodes": {
        cases: [
          pig(weaner, [], {
            lymphoid: { spleen: darkSpleen, mesenteric_nodes: is("enlargement", { colour: "dark-red" }) },
          }),
        ],
      },
    },
    outside: {
      "a barbiturate, and a big dark spleen with fever": {
        cases: [
          pig(hot(weaner), [], {
            death: { manner: "euthanised", method: "barbiturate" },
            lymphoid: { spleen: darkSpleen },
          }),
        ],
      },
      "fever and a big dark spleen of a yellow pig": {
        cases: [pig(hot(weaner), ["jaundice"], { lymphoid: { spleen: darkSpleen } })],
      },
      "fever and a big dark spleen of a pig with rhomboid plaques": {
        cases: [pig(hot(finisher), [], { ...plaques, lymphoid: { spleen: darkSpleen } })],
      },
      "a big dark spleen and bloody fluid beside a firm lung": {
        cases: [
          pig(finisher, [], {
            respiratory: lung,
            serosa: { pleural_space: is("effusion", { exudate: "haemorrhagic" }) },
            lymphoid: { spleen: darkSpleen },
          }),
        ],
      },
      "infarcts of a heart valve, with fever": {
        cases: [
          pig(hot(finisher), [], {
            cardiovascular: { valves: is("vegetation") },
            lymphoid: { spleen: is("infarct", { site: "edges" }) },
          }),
        ],
      },
      "big dark nodes and bloody fluid, the spleen sound": {
        cases: [
          pig(weaner, [], {
            lymphoid: {
              spleen: "normal",
              mesenteric_nodes: is("enlargement", { colour: "dark-red" }),
            },
            serosa: { peritoneum: is("effusion", { colour: "red" }) },
          }),
        ],
      },
      "big dark spleen alone": { cases: [pig(weaner, [], { lymphoid: { spleen: darkSpleen } })] },
      "fever and a spleen that is big only": {
        cases: [pig(hot(weaner), [], { lymphoid: { spleen: is("enlargement") } })],
      },
      "fever and a big dark spleen on a twisted stalk": {
        cases: [pig(hot(sow), [], { lymphoid: { spleen: [...darkSpleen, ...is("torsion")] } })],
      },
      "fever and a big dark spleen of a white and yellow pig": {
        cases: [pig(hot(weaner), ["pallor", "jaundice"], { lymphoid: { spleen: darkSpleen } })],
      },
    },
  },
  S5: {
    inside: {
      "a hot sow that aborted, and one dead of a group called weaners": {
        visit: { signs: ["abortion"], groups: { weaners: { at_risk: 200, dead: 1 } } },
        cases: [pig(hot(sow), ["abortion"])],
      },
      "sows abort, a sow and a finisher dead": {
        visit: { signs: ["abortion"] },
        cases: [pig(sow, [], { death: dead }), pig(finisher, [], { death: dead })],
      },
      "sows abort with fever, weaners have fever": {
        visit: { signs: ["abortion"] },
        cases: [pig(hot(sow), ["abortion"]), pig(hot(weaner))],
      },
      "a hot sow that aborted, and a hot finisher": {
        cases: [pig(hot(sow), ["abortion"]), pig(hot(finisher))],
      },
      "a sow and a weaner found dead beside an aborted fetus": {
        cases: [
          pig(sow, [], { death: dead }),
          pig(weaner, [], { death: dead }),
          pig({ class: "aborted", age: "0 d" }, [], { death: { manner: "born-dead" } }),
        ],
      },
      "dead of groups called sows and weaners, with abortion": {
        visit: {
          signs: ["abortion"],
          groups: { sows: { at_risk: 60, dead: 1 }, weaners: { at_risk: 200, dead: 2 } },
        },
        cases: [],
      },
      "fever and abortion told, with ill sows and ill growers": {
        visit: {
          signs: ["abortion", "fever"],
          groups: { sows: { at_risk: 60, affected: 9 }, growers: { at_risk: 200, affected: 30 } },
        },
        cases: [],
      },
    },
    outside: {
      "a hot sow that aborted, a dead weaner, and rhomboid plaques": {
        visit: { signs: ["abortion"] },
        cases: [pig(hot(sow), ["abortion"], plaques), pig(weaner, [], { death: dead })],
      },
      "sows abort, and one sow is dead": {
        visit: { signs: ["abortion"] },
        cases: [pig(sow, [], { death: dead })],
      },
      "sows abort, and finishers are dead": {
        visit: { signs: ["abortion"] },
        cases: [pig(finisher, [], { death: dead })],
      },
      "a sow and a finisher dead, none aborts": {
        cases: [pig(sow, [], { death: dead }), pig(finisher, [], { death: dead })],
      },
      "fever and abortion told, with ill sows alone": {
        visit: {
          signs: ["abortion", "fever"],
          groups: { sows: { at_risk: 60, affected: 9 }, growers: { at_risk: 200, affected: 0 } },
        },
        cases: [],
      },
      "abortion, and dead of a group called weaners": {
        visit: {
          signs: ["abortion"],
          groups: { sows: { at_risk: 60, affected: 9 }, weaners: { at_risk: 200, dead: 3 } },
        },
        cases: [],
      },
    },
  },
  S6: {
    inside: {
      "round ulcers of the colon": {
        cases: [pig(weaner, [], { intestine: { spiral_colon: is("ulcer", { shape: "round" }) } })],
      },
      "button ulcers of the caecum": {
        cases: [pig(weaner, [], { intestine: { caecum: is("ulcer", { site: "button ulcers" }) } })],
      },
    },
    outside: {
      "a round ulcer at the anus": {
        cases: [pig(weaner, [], { intestine: { rectum: is("ulcer", { site: "anus", shape: "round" }) } })],
      },
      "ulcers of a form that nobody told": {
        cases: [pig(weaner, [], { intestine: { spiral_colon: is("ulcer") } })],
      },
      "an ulcer that goes deep": {
        cases: [pig(weaner, [], { intestine: { caecum: is("ulcer", { contour: "depressed" }) } })],
      },
      "round ulcers of the small bowel": {
        cases: [pig(weaner, [], { intestine: { jejunum: is("ulcer", { shape: "round" }) } })],
      },
      "dead lining of the colon": {
        cases: [
          pig(weaner, [], { intestine: { spiral_colon: is("necrosis", { distribution: "diffuse" }) } }),
        ],
      },
    },
  },
  S7: {
    inside: {
      "a tenth, with scour and fever": {
        visit: { signs: ["diarrhoea", "fever"], ...group({ at_risk: 240, dead: 24, onset: "2026-04-01" }) },
        cases: [pig(weaner)],
      },
      "a twentieth in a week, hot": {
        visit: { signs: ["fever"], ...group({ at_risk: 240, dead: 13, onset: "2026-04-14" }) },
        cases: [pig(finisher)],
      },
      "a tenth of a weaned group in three weeks": {
        visit: group({ at_risk: 240, dead: 24, onset: "2026-04-01" }),
        cases: [pig(weaner)],
      },
      "a twentieth of the sows": {
        visit: group({ at_risk: 60, dead: 3, onset: "2026-04-01" }),
        cases: [pig(sow)],
      },
      "two of nine backyard pigs": {
        visit: group({ at_risk: 9, dead: 2, onset: "2026-04-10" }),
        cases: [pig(finisher)],
      },
      "a tenth, with fits": {
        visit: { signs: ["convulsions"], ...group({ at_risk: 240, dead: 24, onset: "2026-04-01" }) },
        cases: [pig(weaner)],
      },
      "a twentieth of a group called sows": {
        visit: { groups: { sows: { at_risk: 40, dead: 2, onset: "2026-04-01" } } },
        cases: [],
      },
    },
    outside: {
      "a tenth, with scour and vomiting": {
        visit: {
          signs: ["diarrhoea", "vomiting"],
          ...group({ at_risk: 240, dead: 24, onset: "2026-04-01" }),
        },
        cases: [pig(weaner)],
      },
      "a tenth, and jelly of the stomach wall": {
        visit: { ...group({ at_risk: 240, dead: 24, onset: "2026-04-01" }) },
        cases: [pig(weaner, [], { stomach: { glandular_part: is("oedema") } })],
      },
      "a tenth, coughing with fever, and wet lungs": {
        visit: { signs: ["cough", "fever"], ...group({ at_risk: 240, dead: 30, onset: "2026-04-10" }) },
        cases: [pig(finisher, [], { respiratory: { lungs: { findings: is("oedema") } } })],
      },
      "a twentieth in a week, hot and coughing": {
        visit: { signs: ["cough", "fever"], ...group({ at_risk: 240, dead: 13, onset: "2026-04-14" }) },
        cases: [pig(finisher)],
      },
      "less than a tenth": {
        visit: group({ at_risk: 240, dead: 23, onset: "2026-04-01" }),
        cases: [pig(weaner)],
      },
      "a tenth in three months": {
        visit: group({ at_risk: 240, dead: 24, onset: "2026-01-20" }),
        cases: [pig(weaner)],
      },
      "a lung that explains it": {
        visit: group({ at_risk: 240, dead: 24, onset: "2026-04-01" }),
        cases: [pig(weaner, [], { respiratory: lung })],
      },
      "a lung that explains it, and fever": {
        visit: { signs: ["fever"], ...group({ at_risk: 240, dead: 80, onset: "2026-04-14" }) },
        cases: [pig(weaner, [], { respiratory: lung })],
      },
      "scour as the only sign": {
        visit: { signs: ["diarrhoea"], ...group({ at_risk: 240, dead: 24, onset: "2026-04-01" }) },
        cases: [pig(weaner)],
      },
      "a tenth of sucking piglets": {
        visit: group({ at_risk: 240, dead: 24, onset: "2026-04-01" }),
        cases: [pig(piglet)],
      },
      "a fifth of a group called piglets": {
        visit: { groups: { piglets: { at_risk: 100, dead: 20, onset: "2026-04-12" } } },
        cases: [],
      },
    },
  },
  S8: {
    inside: {
      "fever, fits and deaths told of the herd": {
        visit: { signs: ["fever", "convulsions", "sudden-death"] },
        cases: [pig(weaner)],
      },
    },
    outside: {
      "pus of the meninges": {
        visit: { signs: ["fever", "convulsions", "sudden-death"] },
        cases: [pig(weaner, [], { nervous: { meninges: is("exudate", { exudate: "suppurative" }) } })],
      },
      "swollen joints": {
        visit: { signs: ["fever", "convulsions", "sudden-death"] },
        cases: [pig(weaner, ["swollen-joints"])],
      },
      "fever and fits, none dies": { visit: { signs: ["fever", "convulsions"] }, cases: [pig(weaner)] },
      "fits and deaths, no fever": {
        visit: { signs: ["convulsions", "sudden-death"] },
        cases: [pig(weaner)],
      },
      "swollen lids": {
        visit: { signs: ["fever", "convulsions", "sudden-death"] },
        cases: [pig(weaner, [], lids)],
      },
      "the water did not run": {
        visit: {
          signs: ["fever", "convulsions", "sudden-death"],
          ...group({ at_risk: 240, water: { works: "no" } }),
        },
        cases: [pig(weaner)],
      },
    },
  },
  S9: {
    inside: {
      "fever, blue skin and scour of several, and a gut that is only red": {
        visit: { signs: ["fever", "blue-skin", "diarrhoea"] },
        cases: [pig(weaner, ["diarrhoea", "blue-skin"], { intestine: { jejunum: is("hyperaemia") } })],
      },
      "fever, red skin, and a finisher that staggers": {
        cases: [pig(hot(finisher), ["red-skin", "ataxia"])],
      },
      "fever and blue ears of a sow, and sows abort": {
        visit: { signs: ["abortion"] },
        cases: [pig(hot(sow), ["blue-skin"])],
      },
      "fever, blue skin and a big spleen": {
        cases: [pig(hot(weaner), ["blue-skin"], { lymphoid: { spleen: is("enlargement") } })],
      },
      "fever, blue skin and scour told of several": {
        visit: { signs: ["fever", "blue-skin"] },
        cases: [pig(weaner, ["diarrhoea", "blue-skin"])],
      },
      "fever, red skin and vomiting told of living finishers": {
        visit: {
          signs: ["fever", "red-skin", "vomiting"],
          groups: { finishers: { at_risk: 100, affected: 20 } },
        },
        cases: [],
      },
      "three hot red pigs that scour": {
        cases: [1, 2, 3].map(() => pig(hot(finisher), ["red-skin", "diarrhoea"])),
      },
      "a hot pig with blue feet and constipation": {
        cases: [
          pig(hot(finisher), ["constipation"], {
            external: { feet: is("discolouration", { colour: "blue" }) },
          }),
        ],
      },
    },
    outside: {
      "fever and blue skin alone": { cases: [pig(hot(weaner), ["blue-skin", "inappetence"])] },
      "fever and fits, the skin as always": { cases: [pig(hot(weaner), ["convulsions"])] },
      "blue skin and fits, no fever": { cases: [pig(weaner, ["blue-skin", "convulsions"])] },
      "fever, blue skin and scour of one pig": { cases: [pig(hot(weaner), ["blue-skin", "diarrhoea"])] },
      "a piglet under the sow": { cases: [pig(hot(piglet), ["blue-skin", "convulsions"])] },
      "a firm lung under fibrin": {
        cases: [
          pig(hot(finisher), ["blue-skin", "tremor"], {
            respiratory: { ...lung, pleura: is("fibrin") },
          }),
        ],
      },
      "an udder that is inflamed": {
        cases: [
          pig(hot(sow), ["blue-skin", "constipation"], { external: { mammary_glands: is("inflammation") } }),
        ],
      },
      "pale muscle": {
        cases: [pig(hot(finisher), ["red-skin", "tremor"], { locomotor: { muscles: is("pallor") } })],
      },
      "swollen lids": { cases: [pig(hot(weaner), ["red-skin", "ataxia"], lids)] },
      "fever, red skin and fits of a group called piglets": {
        visit: {
          signs: ["fever", "red-skin", "convulsions"],
          groups: { piglets: { at_risk: 100, affected: 20 } },
        },
        cases: [],
      },
      "three hot red pigs that scour, one with a sick colon": {
        cases: [
          pig(hot(finisher), ["red-skin", "diarrhoea"], { intestine: { spiral_colon: is("inflammation") } }),
          ...[1, 2].map(() => pig(hot(finisher), ["red-skin", "diarrhoea"])),
        ],
      },
    },
  },
  L1: {
    inside: {
      "fever, open sores and swollen joints": {
        cases: [pig(hot(finisher), ["swollen-joints"], { external: { skin: is("ulcer") } })],
      },
      "a sore below the tail": {
        cases: [pig(hot(finisher), ["swollen-joints"], { external: { perineum: is("ulcer") } })],
      },
    },
    outside: {
      "sores and swollen joints, no fever": {
        cases: [pig(finisher, ["swollen-joints"], { external: { skin: is("ulcer") } })],
      },
      "fever and swollen joints, the skin whole": { cases: [pig(hot(finisher), ["swollen-joints"])] },
      "knees of a piglet": {
        cases: [pig(hot(piglet), ["swollen-joints"], { external: { skin: is("ulcer", { site: "knees" }) } })],
      },
      "a sore at the shoulder": {
        cases: [pig(hot(sow), ["swollen-joints"], { external: { skin: is("ulcer", { site: "shoulder" }) } })],
      },
      "sores of a pig that is bitten": {
        cases: [pig(hot(finisher), ["swollen-joints", "ear-biting"], { external: { skin: is("ulcer") } })],
      },
    },
  },
  V1: {
    inside: {
      "a blister of the belly": {
        cases: [pig(finisher, [], { external: { skin: is("vesicle", { site: "belly" }) } })],
      },
      "vesicle of the snout": { cases: [pig(finisher, [], { external: { snout: is("vesicle") } })] },
      "erosion of the mouth": { cases: [pig(finisher, [], { upper_digestive: { mouth: is("erosion") } })] },
      "loose horn": {
        cases: [pig(sow, [], { external: { feet: is("slough", { site: "horn of the claw" }) } })],
      },
      "sore of a teat": {
        cases: [pig(sow, [], { external: { mammary_glands: is("ulcer", { site: "teats" }) } })],
      },
      "sore of a coronary band of a piglet": {
        cases: [pig(piglet, [], { external: { feet: is("ulcer", { site: "coronary band" }) } })],
      },
      "blisters told of the herd": { visit: { signs: ["vesicles"] }, cases: [pig(finisher)] },
      "scars of the coronary bands": {
        cases: [
          pig(finisher, [], { external: { feet: is("scar", { site: "coronary bands of all feet" }) } }),
        ],
      },
      "red coronary bands": {
        cases: [pig(finisher, [], { external: { feet: is("hyperaemia", { site: "coronary bands" }) } })],
      },
    },
    outside: {
      "gums hurt when teeth were clipped": {
        cases: [
          pig(piglet, [], {
            upper_digestive: { mouth: is("erosion", { site: "gums where teeth were clipped" }) },
          }),
        ],
      },
      "teats that piglets bit": {
        cases: [
          pig(sow, [], { external: { mammary_glands: is("ulcer", { site: "teats, bitten by piglets" }) } }),
        ],
      },
      "soles and knees of a piglet": {
        cases: [
          pig(piglet, [], {
            external: { feet: is("erosion", { site: "soles and knees", distribution: "bilateral" }) },
          }),
        ],
      },
      "one healed scar of the snout": {
        cases: [pig(sow, [], { external: { snout: is("scar", { distribution: "focal" }) } })],
      },
      "one old sore of a heel": {
        cases: [
          pig(sow, [], {
            external: { feet: is("ulcer", { site: "heel", duration: "chronic", distribution: "focal" }) },
          }),
        ],
      },
      "inflamed feet of several, no sore": {
        visit: { signs: ["lameness"] },
        cases: [pig(finisher, ["lameness"])],
      },
      "a blister of the flank": {
        cases: [pig(finisher, [], { external: { skin: is("vesicle", { site: "flank" }) } })],
      },
      "an inflamed coronary band": {
        cases: [pig(finisher, [], { external: { feet: is("inflammation", { site: "coronary band" }) } })],
      },
    },
  },
  V2: {
    inside: {
      "lame pigs that slaver, with swollen joints": {
        visit: { signs: ["lameness", "salivation"] },
        cases: [pig(finisher, ["swollen-joints"])],
      },
      "lame pigs that slaver": { visit: { signs: ["lameness", "salivation"] }, cases: [pig(finisher)] },
      "lame pigs and fever, both told of the herd": {
        visit: { signs: ["lameness", "fever"] },
        cases: [pig(finisher)],
      },
      "lame pigs, one of them hot": {
        visit: { signs: ["lameness"] },
        cases: [pig(hot(finisher), ["lameness"])],
      },
    },
    outside: {
      "lame pigs with fever, and a broken leg": {
        visit: { signs: ["lameness", "fever"] },
        cases: [pig(finisher, ["lameness"], { locomotor: { bones: is("fracture") } })],
      },
      "one lame pig that slavers": { cases: [pig(finisher, ["lameness", "salivation"])] },
      "one lame pig with fever": { cases: [pig(hot(finisher), ["lameness"])] },
      "lame pigs, none hot": { visit: { signs: ["lameness"] }, cases: [pig(finisher, ["lameness"])] },
      "swollen joints": {
        visit: { signs: ["lameness", "fever"] },
        cases: [pig(finisher, ["swollen-joints"])],
      },
    },
  },
  H1: {
    inside: {
      "streaks of the heart of a piglet found dead": {
        cases: [pig(piglet, [], { death: dead, ...streaks })],
      },
      "dead heart muscle, sudden deaths told of the herd": {
        visit: { signs: ["sudden-death"] },
        cases: [pig(piglet, [], { cardiovascular: { heart: is("necrosis") } })],
      },
    },
    outside: {
      "streaks in a weaner found dead": { cases: [pig(weaner, [], { death: dead, ...streaks })] },
      "streaks in a piglet put down, none dies suddenly": { cases: [pig(piglet, ["lameness"], streaks)] },
      "sound heart in a piglet found dead": {
        cases: [pig(piglet, [], { death: dead, cardiovascular: { heart: "normal" } })],
      },
      "pale heart of a pale piglet": {
        cases: [
          pig(piglet, ["pallor"], {
            death: dead,
            cardiovascular: { heart: is("pallor", { distribution: "diffuse" }) },
          }),
        ],
      },
    },
  },
  A1: {
    inside: {
      "swollen throat of a pig found dead": { cases: [pig(finisher, [], { death: dead, ...throat })] },
      "swollen neck and fever": {
        cases: [pig(hot(sow), [], { external: { skin: is("enlargement", { site: "neck" }) } })],
      },
      "a throat that is thick within": {
        cases: [pig(sow, [], { death: dead, upper_digestive: { pharynx: is("thickening") } })],
      },
      "a throat inflamed with bloody fluid": {
        cases: [
          pig(sow, [], {
            death: dead,
            upper_digestive: { pharynx: is("inflammation", { exudate: "serosanguineous" }) },
          }),
        ],
      },
    },
    outside: {
      "a stillborn piglet swollen at the neck": {
        cases: [pig(fetus, [], { death: { manner: "born-dead" }, ...throat })],
      },
      "an old swelling of the neck": {
        cases: [
          pig(hot(sow), [], {
            external: { subcutis: is("enlargement", { site: "neck", duration: "chronic" }) },
          }),
        ],
      },
      "swollen lids and neck with jelly of the stomach": {
        cases: [
          pig(weaner, [], {
            death: dead,
            external: { ...lids.external, ...throat.external },
            stomach: { glandular_part: is("oedema") },
          }),
        ],
      },
      "swollen neck found at slaughter, no fever": {
        cases: [pig(finisher, [], { death: slaughtered, ...throat })],
      },
      "abscess with a wall": {
        cases: [
          pig(hot(finisher), [], { death: dead, external: { subcutis: is("abscess", { site: "throat" }) } }),
        ],
      },
      "a swollen leg": {
        cases: [pig(hot(finisher), ["swelling"], { death: dead, external: { feet: is("enlargement") } })],
      },
      "an inflamed throat": {
        cases: [pig(sow, [], { death: dead, upper_digestive: { pharynx: is("inflammation") } })],
      },
    },
  },
  A2: {
    inside: {
      "blood from the nose of a pig found dead": { cases: [pig(sow, ["epistaxis"], { death: dead })] },
      "blood that does not clot": {
        cases: [
          pig(sow, [], {
            death: dead,
            cardiovascular: { heart: is("haemorrhage", { note: "blood unclotted" }) },
          }),
        ],
      },
      "blood at the anus of a pig found dead": {
        cases: [
          pig(sow, [], {
            death: dead,
            external: { perineum: is("discharge", { site: "anus", exudate: "haemorrhagic" }) },
          }),
        ],
      },
      "found dead with blood from the vulva": {
        cases: [
          pig(sow, [], { death: dead, genital: { vagina: is("discharge", { exudate: "haemorrhagic" }) } }),
        ],
      },
    },
    outside: {
      "a sucking piglet with blood at the nose": { cases: [pig(piglet, ["epistaxis"], { death: dead })] },
      "blood-stained fluid of the nose": {
        cases: [
          pig(sow, [], {
            death: dead,
            respiratory: { nares: is("discharge", { exudate: "serosanguineous" }) },
          }),
        ],
      },
      "blood of the nose and a lung under fibrin": {
        cases: [pig(sow, ["epistaxis"], { death: dead, respiratory: { pleura: is("fibrin") } })],
      },
      "blood from the nose of a pig put down": { cases: [pig(sow, ["epistaxis"])] },
      "bloody froth": {
        cases: [
          pig(sow, [], { death: dead, respiratory: { nares: is("froth", { exudate: "haemorrhagic" }) } }),
        ],
      },
      "blood from the nose, and an ulcer of the stomach": {
        cases: [pig(sow, ["epistaxis"], { death: dead, stomach: { pars_oesophagea: is("ulcer") } })],
      },
      "bloody scour of a finisher found dead": {
        cases: [pig(finisher, ["bloody-diarrhoea"], { death: dead })],
      },
      "found dead with blood from a torn vulva": {
        cases: [pig(sow, [], { death: dead, genital: { vagina: [...is("haemorrhage"), ...is("rupture")] } })],
      },
    },
  },
  A3: {
    inside: {
      "found dead, big soft dark spleen": {
        cases: [
          pig(sow, [], {
            death: dead,
            lymphoid: { spleen: is("enlargement", { colour: "black", consistency: "soft" }) },
          }),
        ],
      },
      "found dead, very big dark spleen": {
        cases: [
          pig(sow, [], {
            death: dead,
            lymphoid: { spleen: is("enlargement", { colour: "dark-red", severity: "marked" }) },
          }),
        ],
      },
      "found dead, and the spleen of the look was seen": {
        cases: [pig(sow, [], { death: dead, alarm_check: { at_knife: { dark_spleen: "seen" } } })],
      },
    },
    outside: {
      "found dead, spleen big and dark red, not told to be soft": {
        cases: [
          pig(sow, [], { death: dead, lymphoid: { spleen: is("enlargement", { colour: "dark-red" }) } }),
        ],
      },
      "put down, big soft dark spleen": {
        cases: [
          pig(sow, [], { lymphoid: { spleen: is("enlargement", { colour: "black", consistency: "soft" }) } }),
        ],
      },
      "found dead, spleen big only": {
        cases: [pig(sow, [], { death: dead, lymphoid: { spleen: is("enlargement") } })],
      },
      "erysipelas plaques": {
        cases: [
          pig(sow, [], {
            death: dead,
            lymphoid: { spleen: is("enlargement", { colour: "black" }) },
            ...plaques,
          }),
        ],
      },
      "twisted stalk": {
        cases: [pig(sow, [], { death: dead, lymphoid: { spleen: [...darkSpleen, ...is("torsion")] } })],
      },
      "found dead, the look seen, and the spleen twisted": {
        cases: [
          pig(sow, [], {
            death: dead,
            alarm_check: { at_knife: { dark_spleen: "seen" } },
            lymphoid: { spleen: is("torsion") },
          }),
        ],
      },
    },
  },
  A4: {
    inside: {
      "black dead node of the throat": {
        cases: [
          pig(finisher, [], { lymphoid: { submandibular_nodes: is("necrosis", { colour: "black" }) } }),
        ],
      },
      "jelly of the mesentery and bleeding nodes": {
        cases: [
          pig(sow, [], {
            death: dead,
            intestine: { mesentery: is("oedema", { consistency: "gelatinous" }) },
            lymphoid: { mesenteric_nodes: is("haemorrhage") },
          }),
        ],
      },
      "an ileum wet and thick, with bleeding nodes": {
        cases: [
          pig(sow, [], {
            death: dead,
            intestine: { ileum: is("oedema") },
            lymphoid: { mesenteric_nodes: is("haemorrhage") },
          }),
        ],
      },
      "a mesentery that bleeds, and the nodes of the look": {
        cases: [
          pig(sow, [], {
            death: dead,
            intestine: { mesentery: is("haemorrhage") },
            alarm_check: { at_knife: { bloody_nodes: "seen" } },
          }),
        ],
      },
      "a gut inflamed with blood, and bleeding nodes": {
        cases: [
          pig(sow, [], {
            death: dead,
            intestine: { jejunum: is("inflammation", { exudate: "haemorrhagic" }) },
            lymphoid: { mesenteric_nodes: is("haemorrhage") },
          }),
        ],
      },
      "jelly of the mesentery, and red fluid": {
        cases: [
          pig(sow, [], {
            death: dead,
            intestine: { mesentery: is("effusion", { consistency: "gelatinous" }) },
            serosa: { peritoneum: is("effusion", { colour: "red" }) },
          }),
        ],
      },
      "dead nodes of the throat that bleed": {
        cases: [
          pig(sow, [], {
            death: slaughtered,
            lymphoid: { submandibular_nodes: [...is("necrosis"), ...is("haemorrhage")] },
          }),
        ],
      },
    },
    outside: {
      "a wet ileum with bleeding nodes of a sucking piglet": {
        cases: [
          pig(piglet, [], {
            death: dead,
            intestine: { ileum: is("oedema") },
            lymphoid: { mesenteric_nodes: is("haemorrhage") },
          }),
        ],
      },
      "a bleeding gut and nodes beside ulcers of the colon": {
        cases: [
          pig(finisher, [], {
            death: dead,
            intestine: { jejunum: is("haemorrhage"), spiral_colon: is("ulcer") },
            lymphoid: { mesenteric_nodes: is("haemorrhage") },
          }),
        ],
      },
      "grey dead node of the throat": {
        cases: [pig(finisher, [], { lymphoid: { submandibular_nodes: is("necrosis", { colour: "grey" }) } })],
      },
      "bleeding gut and bloody fluid, the nodes do not bleed": {
        cases: [
          pig(finisher, [], {
            death: dead,
            intestine: { jejunum: is("haemorrhage") },
            serosa: { peritoneum: is("effusion", { exudate: "serosanguineous" }) },
          }),
        ],
      },
      "twisted gut": {
        cases: [
          pig(finisher, [], {
            death: dead,
            intestine: { jejunum: [...is("torsion"), ...is("haemorrhage")] },
            lymphoid: { mesenteric_nodes: is("haemorrhage") },
          }),
        ],
      },
      "dead pale nodes of the throat": {
        cases: [
          pig(sow, [], {
            death: slaughtered,
            lymphoid: { submandibular_nodes: is("necrosis", { colour: "grey" }) },
          }),
        ],
      },
      "an ileum wet and thick, with sound nodes": {
        cases: [
          pig(sow, [], {
            death: dead,
            intestine: { ileum: is("oedema") },
            lymphoid: { mesenteric_nodes: "normal" },
          }),
        ],
      },
    },
  },
  N1: {
    inside: {
      "scour first, with fever": {
        visit: { signs: ["diarrhoea", "fever", "paddling"] },
        cases: [pig(piglet, ["diarrhoea", "paddling"], { death: dead })],
      },
      "trembling piglets, one found dead": {
        visit: { signs: ["tremor"] },
        cases: [pig(piglet, ["tremor"]), pig(piglet, [], { death: dead })],
      },
      "three piglets that paddle, one of them dead": {
        cases: [
          pig(piglet, ["paddling"]),
          pig(piglet, ["paddling"]),
          pig(piglet, ["paddling"], { death: dead }),
        ],
      },
      "a group called piglets that shakes and dies": {
        visit: { signs: ["tremor"], groups: { piglets: { at_risk: 100, affected: 30, dead: 10 } } },
        cases: [],
      },
    },
    outside: {
      "sows without milk": {
        visit: { signs: ["agalactia", "paddling"] },
        cases: [pig(piglet, ["paddling"], { death: dead })],
      },
      "pus of the meninges": {
        visit: { signs: ["paddling"] },
        cases: [
          pig(piglet, ["paddling"], {
            death: dead,
            nervous: { meninges: is("exudate", { exudate: "suppurative" }) },
          }),
        ],
      },
      "trembling piglets, none dead": { visit: { signs: ["tremor"] }, cases: [pig(piglet, ["tremor"])] },
      "one trembling piglet found dead": { cases: [pig(piglet, ["tremor"], { death: dead })] },
      "swollen joints": {
        visit: { signs: ["paddling"] },
        cases: [pig(piglet, ["paddling", "swollen-joints"], { death: dead })],
      },
      "scour first": {
        visit: { signs: ["diarrhoea", "paddling"] },
        cases: [pig(piglet, ["diarrhoea", "paddling"], { death: dead })],
      },
      "a group called piglets that shakes, none dead": {
        visit: { signs: ["tremor"], groups: { piglets: { at_risk: 100, affected: 30, dead: 0 } } },
        cases: [],
      },
    },
  },
  N2: {
    inside: {
      "stillbirths, and a dead piglet that is swollen, with little hair": {
        visit: { signs: ["stillbirth"] },
        cases: [
          pig(piglet, [], { death: dead, external: { skin: is("hypoplasia"), subcutis: is("oedema") } }),
        ],
      },
      "stillbirths, and a dead piglet with a big thyroid alone": {
        visit: { signs: ["stillbirth"] },
        cases: [pig(piglet, [], { death: dead, endocrine: { thyroid: is("enlargement") } })],
      },
      "stillbirths told of the herd, and a weak piglet found dead": {
        visit: { signs: ["stillbirth", "weakness"] },
        cases: [pig(fetus), pig(piglet, ["weakness"], { death: dead })],
      },
      "sows abort, and a piglet staggers": {
        visit: { signs: ["abortion"] },
        cases: [pig(piglet, ["ataxia"])],
      },
      "sows abort, finishers cough with fever": {
        visit: { signs: ["abortion", "fever", "cough"] },
        cases: [pig(finisher, ["cough"])],
      },
      "abortions, and dead of a group called piglets": {
        visit: {
          signs: ["abortion"],
          groups: { sows: { at_risk: 60, affected: 6 }, piglets: { at_risk: 100, dead: 10 } },
        },
        cases: [],
      },
    },
    outside: {
      "stillbirths, and a dead hairless piglet with a big thyroid": {
        visit: { signs: ["stillbirth"] },
        cases: [
          pig(piglet, [], {
            death: dead,
            external: { skin: is("hypoplasia") },
            endocrine: { thyroid: is("enlargement") },
          }),
        ],
      },
      "stillbirths, and a dead piglet with cysts of the liver": {
        visit: { signs: ["stillbirth"] },
        cases: [pig(piglet, [], { death: dead, liver_pancreas: { liver: is("cyst") } })],
      },
      "stillbirths, and a piglet that died of a bleeding gut": {
        visit: { signs: ["stillbirth"] },
        cases: [pig(piglet, [], { death: dead, intestine: { jejunum: is("haemorrhage") } })],
      },
      "stillbirths and mummies only": { visit: { signs: ["stillbirth", "mummies"] }, cases: [pig(fetus)] },
      "one stillborn piglet, and one found dead": { cases: [pig(fetus), pig(piglet, [], { death: dead })] },
      "stillbirths, and a piglet that the sow lay on": {
        visit: { signs: ["stillbirth"] },
        cases: [pig(piglet, [], { death: dead, liver_pancreas: { liver: is("rupture") } })],
      },
      "sows abort, finishers cough without fever": {
        visit: { signs: ["abortion", "cough"] },
        cases: [pig(finisher, ["cough"])],
      },
      "stillbirths and dead piglets, of which one opened had a sick navel": {
        visit: { signs: ["stillbirth"], groups: { piglets: { at_risk: 100, dead: 10 } } },
        cases: [
          pig(piglet, [], {
            pig: { ...piglet, group: "piglets" },
            death: dead,
            external: { navel: is("inflammation") },
          }),
        ],
      },
    },
  },
  N3: {
    inside: {
      "foci of the liver of a piglet": { cases: [pig(piglet, [], { liver_pancreas: { liver: foci } })] },
      "dead tonsil of a weaner that trembles": {
        cases: [pig(weaner, ["tremor"], { lymphoid: { tonsil: is("necrosis") } })],
      },
      "necroses of spleen and adrenals": {
        cases: [
          pig(piglet, [], { lymphoid: { spleen: is("necrosis") }, endocrine: { adrenals: is("necrosis") } }),
        ],
      },
      "a tonsil under a dead film": {
        cases: [pig(piglet, [], { lymphoid: { tonsil: is("exudate", { exudate: "necrotising" }) } })],
      },
    },
    outside: {
      "foci of the liver of a weaner found dead": {
        cases: [pig(weaner, [], { death: dead, liver_pancreas: { liver: foci } })],
      },
      "foci of the lung alone": { cases: [pig(piglet, [], { respiratory: { lungs: { findings: foci } } })] },
      "foci of liver and kidneys": {
        cases: [pig(piglet, [], { liver_pancreas: { liver: foci }, urinary: { kidneys: foci } })],
      },
      "a stretch of dead liver": {
        cases: [pig(piglet, [], { liver_pancreas: { liver: is("necrosis", { distribution: "diffuse" }) } })],
      },
      "a necrosis of the spleen, and pus of the tonsil": {
        cases: [
          pig(piglet, [], {
            lymphoid: { spleen: is("necrosis"), tonsil: is("exudate", { exudate: "suppurative" }) },
          }),
        ],
      },
    },
  },
  B1: {
    inside: {
      "big testis": { cases: [pig(boar, [], { genital: { testes: is("enlargement") } })] },
      "dead epididymis": {
        cases: [pig(boar, [], { genital: { testes: is("necrosis", { site: "epididymis" }) } })],
      },
      "abscess of a testis": { cases: [pig(boar, [], { genital: { testes: is("abscess") } })] },
      "miliary nodules of the testes": {
        cases: [pig(boar, [], { genital: { testes: is("nodule", { distribution: "miliary" }) } })],
      },
    },
    outside: {
      "swollen scrotum, fluid round the testis": {
        cases: [
          pig(boar, ["swelling"], {
            external: { perineum: is("enlargement", { site: "scrotum" }) },
            genital: { testes: is("oedema", { site: "around the testis" }) },
          }),
        ],
      },
      "small testis": { cases: [pig(boar, [], { genital: { testes: is("atrophy") } })] },
      "wound of the scrotum": {
        cases: [
          pig(boar, [], {
            external: { perineum: is("wound", { site: "scrotum" }) },
            genital: { testes: is("enlargement") },
          }),
        ],
      },
      "piglet after castration": {
        cases: [pig({ ...piglet, sex: "male" }, [], { genital: { testes: is("abscess") } })],
      },
    },
  },
  B2: {
    inside: {
      "sows abort, a sow and a weaner are lame": {
        visit: { signs: ["abortion"] },
        cases: [pig(sow, ["lameness"]), pig(weaner, ["lameness"])],
      },
      "sows abort and are lame": { visit: { signs: ["abortion", "lameness"] }, cases: [pig(sow)] },
      "sows abort, pus in the spine of a finisher": {
        visit: { signs: ["abortion"] },
        cases: [pig(finisher, [], { locomotor: { vertebrae: is("abscess") } })],
      },
      "sows abort, pus in a uterus": {
        visit: { signs: ["abortion"] },
        cases: [pig(sow, [], { genital: { uterus: is("exudate", { exudate: "suppurative" }) } })],
      },
      "an abscess in the spinal canal": {
        visit: { signs: ["abortion"] },
        cases: [pig(sow, [], { nervous: { spinal_cord: is("abscess") } })],
      },
      "an abscess of a bone of the spine": {
        visit: { signs: ["abortion"] },
        cases: [pig(sow, [], { locomotor: { bones: is("abscess", { site: "lumbar vertebra" }) } })],
      },
      "slimy pus of the uterus": {
        visit: { signs: ["abortion"] },
        cases: [pig(sow, [], { genital: { uterus: is("exudate", { exudate: "mucopurulent" }) } })],
      },
    },
    outside: {
      "sows abort, lameness is told, and the lame pig is a weaner": {
        visit: { signs: ["abortion", "lameness"] },
        cases: [pig(weaner, ["lameness"])],
      },
      "sows abort and are lame, with rhomboid plaques": {
        visit: { signs: ["abortion", "lameness"] },
        cases: [pig(sow, ["lameness"], plaques)],
      },
      "sows abort, none lame": { visit: { signs: ["abortion", "vulval-discharge"] }, cases: [pig(sow)] },
      "one sow aborts and is lame": { cases: [pig(sow, ["abortion", "lameness"])] },
      "sows abort, piglets have swollen joints": {
        visit: { signs: ["abortion"] },
        cases: [pig(piglet, ["swollen-joints"])],
      },
      "an abscess of a rib": {
        visit: { signs: ["abortion"] },
        cases: [pig(sow, [], { locomotor: { bones: is("abscess", { site: "rib" }) } })],
      },
    },
  },
  T1: {
    inside: {
      "caseous node of the throat": {
        cases: [pig(finisher, [], { lymphoid: { retropharyngeal_nodes: is("caseation") } })],
      },
      "granuloma of a gut node": {
        cases: [
          pig(finisher, [], { lymphoid: { mesenteric_nodes: is("nodule", { exudate: "granulomatous" }) } }),
        ],
      },
      "lungs and liver": {
        cases: [
          pig(finisher, [], {
            respiratory: { lungs: { findings: is("nodule", dry) } },
            liver_pancreas: { liver: is("nodule", dry) },
          }),
        ],
      },
      "granulomas of pleura and peritoneum": {
        cases: [
          pig(sow, [], {
            respiratory: { pleura: is("nodule", { exudate: "granulomatous" }) },
            serosa: { peritoneum: is("nodule", { exudate: "granulomatous" }) },
          }),
        ],
      },
      "granulomas of gut and liver": {
        cases: [
          pig(sow, [], {
            intestine: { jejunum: is("nodule", { exudate: "granulomatous" }) },
            liver_pancreas: { liver: is("necrosis", dry) },
          }),
        ],
      },
    },
    outside: {
      "white nodules of node, heart and liver": {
        cases: [
          pig(finisher, [], {
            death: slaughtered,
            lymphoid: { submandibular_nodes: is("nodule", { colour: "white" }) },
            cardiovascular: { heart: is("nodule") },
            liver_pancreas: { liver: is("nodule", { colour: "white" }) },
          }),
        ],
      },
      "pus in a node": {
        cases: [
          pig(finisher, [], { lymphoid: { submandibular_nodes: is("abscess", { exudate: "suppurative" }) } }),
        ],
      },
      "one caseous focus of a lung": {
        cases: [pig(finisher, [], { respiratory: { lungs: { findings: is("nodule", dry) } } })],
      },
    },
  },
  C1: {
    inside: {
      "cyst of the tongue": {
        cases: [pig(finisher, [], { upper_digestive: { mouth: is("cyst", { site: "tongue" }) } })],
      },
      "cyst of the heart": { cases: [pig(finisher, [], { cardiovascular: { heart: is("cyst") } })] },
      "cyst of the brain of a grown pig": { cases: [pig(finisher, [], { nervous: { brain: is("cyst") } })] },
    },
    outside: {
      "a bag of water for a brain": { cases: [pig(fetus, [], { nervous: { brain: is("cyst") } })] },
      "cyst of the liver": { cases: [pig(finisher, [], { liver_pancreas: { liver: is("cyst") } })] },
      "cysts of the lungs": {
        cases: [
          pig(finisher, [], {
            respiratory: { lungs: { findings: is("cyst", { distribution: "multifocal" }) } },
          }),
        ],
      },
      "lumps of muscle": {
        cases: [pig(finisher, [], { locomotor: { muscles: is("nodule", { distribution: "multifocal" }) } })],
      },
    },
  },
  M1: {
    inside: {
      "two of a litter without a brain": { cases: [pig(fetus, [], noBrain), pig(piglet, [], noBrain)] },
      "one on the table, three ill in its group": {
        visit: group({ at_risk: 11, affected: 3 }),
        cases: [pig({ ...piglet, group: "nursery-2" }, [], cerebellum)],
      },
      "one on the table, sows farrow dead ones": {
        visit: { signs: ["stillbirth"] },
        cases: [pig(fetus, [], noBrain)],
      },
      "crooked limbs of two": {
        cases: [
          pig(fetus, [], { locomotor: { joints: is("malformation") } }),
          pig(fetus, [], { locomotor: { bones: is("deviation") } }),
        ],
      },
    },
    outside: {
      "one that is stillborn itself": {
        cases: [pig(fetus, ["stillbirth"], { nervous: { brain: is("hernia") } })],
      },
      "one malformed piglet": {
        visit: group({ at_risk: 11, affected: 1 }),
        cases: [
          pig({ ...piglet, group: "nursery-2" }, [], {
            ...noBrain,
            locomotor: { vertebrae: is("malformation") },
          }),
        ],
      },
      "one that is stillborn": { cases: [pig(fetus, [], { nervous: { brain: is("hernia") } })] },
      "two without an anus, and a hernia": {
        cases: [
          pig(piglet, [], { intestine: { rectum: is("agenesis", { site: "anus" }) } }),
          pig(piglet, [], { external: { navel: is("hernia") } }),
        ],
      },
      "two with a cleft palate": {
        cases: [
          pig(piglet, [], { upper_digestive: { mouth: is("malformation", { site: "palate" }) } }),
          pig(piglet, [], { upper_digestive: { mouth: is("malformation", { site: "palate" }) } }),
        ],
      },
    },
  },
  D1: {
    inside: {
      "piglet and sow scour": { cases: [pig(piglet, ["diarrhoea"]), pig(sow, ["vomiting"])] },
      "scour told, with ill piglets and ill fatteners": {
        visit: {
          signs: ["diarrhoea"],
          groups: { piglets: { at_risk: 100, affected: 80 }, fatteners: { at_risk: 100, affected: 80 } },
        },
        cases: [],
      },
      "a piglet with a watery gut, and a finisher that vomits": {
        cases: [
          pig(piglet, [], { intestine: { jejunum: is("watery-content") } }),
          pig(finisher, ["vomiting"]),
        ],
      },
    },
    outside: {
      "piglet and weaner scour": { cases: [pig(piglet, ["diarrhoea"]), pig(weaner, ["diarrhoea"])] },
      "scour told, with ill piglets and ill weaners": {
        visit: {
          signs: ["diarrhoea"],
          groups: { piglets: { at_risk: 100, affected: 80 }, weaners: { at_risk: 100, affected: 80 } },
        },
        cases: [],
      },
      "scour and cough told, with ill piglets and ill fatteners": {
        visit: {
          signs: ["diarrhoea", "cough"],
          groups: { piglets: { at_risk: 100, affected: 80 }, fatteners: { at_risk: 100, affected: 80 } },
        },
        cases: [],
      },
    },
  },
  Z1: {
    inside: {
      "fever, cough, fits and a firm lung": {
        cases: [pig(hot(finisher), ["cough", "convulsions"], { respiratory: lung })],
      },
      "an inflamed firm lung": {
        cases: [
          pig(hot(finisher), ["cough", "ataxia"], {
            respiratory: { lungs: { findings: is("inflammation", { consistency: "firm" }) } },
          }),
        ],
      },
      "a windpipe that bleeds": {
        cases: [pig(hot(finisher), ["cough", "ataxia"], { respiratory: { trachea: is("haemorrhage") } })],
      },
    },
    outside: {
      "cough, fits and a firm lung, no fever": {
        cases: [pig(finisher, ["cough", "convulsions"], { respiratory: lung })],
      },
      "fever, cough and fits, the lung sound": {
        cases: [pig(hot(finisher), ["cough", "convulsions"], { respiratory: { lungs: "normal" } })],
      },
    },
  },
  P1: {
    inside: {
      "fever of sows and weaners with blue skin and deaths": {
        visit: { signs: ["fever", "blue-skin", "sudden-death"] },
        cases: [pig(hot(sow)), pig(hot(weaner))],
      },
      "fever of finishers and weaners, short of breath, and sows abort": {
        visit: { signs: ["fever", "dyspnoea", "abortion"] },
        cases: [pig(hot(finisher)), pig(hot(weaner))],
      },
      "fever and red skin told, with ill sows and ill weaners, and abortion": {
        visit: {
          signs: ["fever", "red-skin", "abortion"],
          groups: { sows: { at_risk: 60, affected: 9 }, weaners: { at_risk: 200, affected: 40 } },
        },
        cases: [],
      },
      "fever and hard breathing told, with ill sows and ill weaners, and deaths": {
        visit: {
          signs: ["fever", "dyspnoea"],
          groups: { sows: { at_risk: 60, affected: 9 }, weaners: { at_risk: 200, affected: 40, dead: 4 } },
        },
        cases: [],
      },
    },
    outside: {
      "fever of sows and weaners, short of breath, none dies": {
        visit: { signs: ["fever", "dyspnoea"] },
        cases: [pig(hot(sow)), pig(hot(weaner))],
      },
      "fever of one age class, short of breath, with deaths": {
        visit: { signs: ["fever", "dyspnoea", "sudden-death"] },
        cases: [pig(hot(weaner)), pig(hot(weaner))],
      },
      "fever and hard breathing told, with ill weaners and finishers, and deaths": {
        visit: {
          signs: ["fever", "dyspnoea"],
          groups: {
            finishers: { at_risk: 200, affected: 9 },
            weaners: { at_risk: 200, affected: 40, dead: 4 },
          },
        },
        cases: [],
      },
    },
  },
};

const listed = alarmPatterns.flatMap(({ id, fires }) => (fires === "when-listed" ? [id] : []));

/** The alarms of a record; what is typed must be free of faults, or it says nothing. */
function alarmsOf({ visit = {}, cases = [] }: Partial<AlarmFiles>) {
  const archive = readAlarmFiles({ settings: { notifiable: listed }, visit, cases });
  expect(archive.unreadable).toEqual([]);
  expect([...archive.visits, ...archive.cases].flatMap((one) => one.faults.map((f) => f.message))).toEqual(
    [],
  );
  return archive.visits.flatMap(findAlarms).map(({ pattern }) => pattern);
}

const records = (side: keyof Row) =>
  Object.entries(rows).flatMap(([row, of]) =>
    Object.entries(of[side]).map(([name, files]) => [`${row}: ${name}`, { row, files }] as const),
  );

describe("the rows of CRITERIA.md", () => {
  it("are all here, each with records inside and outside", () => {
    const criteria = readFileSync(new URL("../fixtures/outbreaks/CRITERIA.md", import.meta.url), "utf8");
    const written = [...criteria.matchAll(/^\| ([A-Z]\d) \|/gm)].map(([, row]) => row);
    expect(Object.keys(rows)).toEqual(written);
    for (const { inside, outside } of Object.values(rows))
      expect([inside, outside].map((side) => Object.keys(side).length > 0)).toEqual([true, true]);
  });

  every("fire just inside, by a pattern of the row", new Map(records("inside")), ([, { row, files }]) => {
    expect(alarmsOf(files).flatMap(({ criteria }) => criteria)).toContain(row);
  });

  every("are silent just outside, every pattern", new Map(records("outside")), ([, { files }]) => {
    expect(alarmsOf(files).map(({ id }) => id)).toEqual([]);
  });
});
