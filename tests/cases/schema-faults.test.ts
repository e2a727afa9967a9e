/** What a veterinarian is told about a value that does not fit: what is wrong and what to write. One mistake, one message. */
import { describe, expect, it } from "vitest";
import type { FileKind } from "../../src/cases/faults/validate.ts";
import { reading, readingCase } from "./reading.ts";

const moment =
  "Write a day with the time (ISO 8601), local time of the farm unless a zone is written, such as 2026-03-14T09:10.";
const onset = "Write how long before death the signs began (36 h), the day (2026-03-12), or unknown.";
const organ = "Write normal, findings such as [{process: enlargement}], or {not_examined: the reason}.";
const treated = "Or write {with: amoxicillin by mouth, last: 12 h}.";
const age = "Write an age with its unit: h, d, wk, mo or a (year), such as 58 d.";
const mass = "Write a weight with its unit, g or kg, such as 17.5 kg.";

describe("wrong values of a case", () => {
  it.each([
    // Words.
    ["pig: {sex: F}", 'pig.sex: "F" is not one of female, male, castrate. Did you mean female?'],
    ["pig: {sex: sow}", 'pig.sex: "sow" is not one of female, male, castrate. Did you mean female?'],
    [
      "pig: {class: wener}",
      'pig.class: "wener" is not one of mummy, aborted, stillborn, suckling, weaner, finisher, adult. Did you mean weaner?',
    ],
    [
      "death: {manner: euthanized}",
      'death.manner: "euthanized" is not one of euthanised, found-dead, slaughtered, born-dead. Did you mean euthanised?',
    ],
    [
      "alarm_check: {before_knife: {vesicles: no}}",
      'alarm_check.before_knife.vesicles: "no" is not one of none, seen, not-looked-at. Did you mean none?',
    ],
    [
      "alarm_check: {before_knife: {vesicles: false}}",
      "alarm_check.before_knife.vesicles: false is not one of none, seen, not-looked-at.",
    ],
    [
      "selection: {signs: [coughing]}",
      'selection.signs[0]: "coughing" is not a word known here. Did you mean cough?',
    ],
    [
      "selection: {signs: [cough, snezing]}",
      'selection.signs[1]: "snezing" is not a word known here. Did you mean sneezing?',
    ],
    [
      "selection: {treated: amoxicillin}",
      `selection.treated: "amoxicillin" is not one of no, yes, unknown. ${treated}`,
    ],
    ["selection: {typical: maybe}", 'selection.typical: "maybe" is not one of yes, no.'],
    // Quantities.
    ["pig: {age: 58}", `pig.age: 58 has no unit. ${age}`],
    ["pig: {age: '58'}", `pig.age: "58" has no unit. ${age}`],
    ["pig: {age: 8 weeks}", `pig.age: "8 weeks" cannot be read. Did you mean 8 wk? ${age}`],
    ["pig: {age: 8.5 fortnights}", `pig.age: "8.5 fortnights" cannot be read. ${age}`],
    ['pig: {weight: "17,5 kg"}', `pig.weight: "17,5 kg" cannot be read. Did you mean 17.5 kg? ${mass}`],
    ["pig: {weight: 17.5 Kg}", `pig.weight: "17.5 Kg" cannot be read. Did you mean 17.5 kg? ${mass}`],
    ["pig: {weight: 38 lb}", `pig.weight: "38 lb" cannot be read. Did you mean 17 kg? ${mass}`],
    [
      "pig: {temperature: 40.6 C}",
      'pig.temperature: "40.6 C" cannot be read. Did you mean 40.6 °C? Write a temperature in degrees Celsius, such as 38.5 °C.',
    ],
    [
      "opened: {ambient: 14}",
      "opened.ambient: 14 has no unit. Write a temperature in degrees Celsius, such as 38.5 °C.",
    ],
    [
      "selection: {onset: 36 hours}",
      `selection.onset: "36 hours" cannot be read. Did you mean 36 h? ${onset}`,
    ],
    ["selection: {onset: yesterday}", `selection.onset: "yesterday" cannot be read. ${onset}`],
    [
      "selection: {onset: unkown}",
      'selection.onset: "unkown" is not a word known here. Did you mean unknown?',
    ],
    ["liver_pancreas: {liver: {weight: 900}}", `liver_pancreas.liver.weight: 900 has no unit. ${mass}`],
    [
      "liver_pancreas: {liver: [{process: milk-spots, extent: 20}]}",
      "liver_pancreas.liver[0].extent: 20 has no unit. Write a share of the organ in per cent, such as 20 %.",
    ],
    [
      "liver_pancreas: {liver: [{process: nodule, size: 30*20 mm}]}",
      'liver_pancreas.liver[0].size: "30*20 mm" cannot be read. Did you mean 30 x 20 mm? Write one to three dimensions with their unit, mm or cm, such as 25 mm.',
    ],
    // Dates.
    ["death: {at: 14.03.2026}", `death.at: "14.03.2026" cannot be read. Did you mean 2026-03-14? ${moment}`],
    [
      "death: {at: 14.3.2026 9:10}",
      `death.at: "14.3.2026 9:10" cannot be read. Did you mean 2026-03-14T09:10? ${moment}`,
    ],
    [
      "death: {at: 2026-03-14 09:10}",
      `death.at: "2026-03-14 09:10" cannot be read. Did you mean 2026-03-14T09:10? ${moment}`,
    ],
    ["death: {at: 03/04/2026}", `death.at: "03/04/2026" cannot be read. ${moment}`],
    ["death: {at: 25/04/2026}", `death.at: "25/04/2026" cannot be read. Did you mean 2026-04-25? ${moment}`],
    ["death: {at: 2026-03-14T25:10}", `death.at: "2026-03-14T25:10" cannot be read. ${moment}`],
    // Numbers.
    ["pig: {condition: 6}", "pig.condition: 6 is out of range; write 1 to 5."],
    ["pig: {condition: thin}", 'pig.condition: "thin" cannot be read here. Write a number, 1 to 5.'],
    ["pig: {condition: 3/5}", 'pig.condition: "3/5" cannot be read here. Write a number, 1 to 5.'],
    [
      "pig:\n  condition: 2,5",
      'pig.condition: "2,5" cannot be read here. Write it with a point, not a comma: 2.5.',
    ],
    ["pig: {parity: 2.5}", "pig.parity: 2.5 cannot be read here. Write a whole number, 0 to 20."],
    ["pig: {condition: .inf}", 'pig.condition: ".inf" cannot be read here. Write a number, 1 to 5.'],
    [
      "respiratory: {lungs: {consolidation: {left_cranial: 120}}}",
      "respiratory.lungs.consolidation.left_cranial: 120 is out of range; write 0 to 100.",
    ],
    [
      "respiratory: {lungs: {consolidation: {left_cranial: 1e9}}}",
      'respiratory.lungs.consolidation.left_cranial: "1e9" cannot be read here. Write a number, 0 to 100, without a power of ten (e).',
    ],
    [
      "respiratory: {lungs: {consolidation: {left_cranial: 20 %}}}",
      'respiratory.lungs.consolidation.left_cranial: "20 %" cannot be read here. Write the number alone: 20.',
    ],
    [
      "respiratory: {turbinates: {left: {dorsal: '2'}}}",
      'respiratory.turbinates.left.dorsal: "2" cannot be read here. Write it without quotes: 2.',
    ],
    // The wrong kind of value.
    ["note: 3", 'note: 3 cannot be read here. Write it in quotes: "3".'],
    ["note: true", 'note: true cannot be read here. Write it in quotes: "true".'],
    [
      "note: {right lung: firm}",
      "note: a group of keys cannot be read here. Write text, in quotes if there is a colon in it.",
    ],
    ["note: ''", "note: the text is empty; write it, or take the key out."],
    ["pig: {tag: 22.5}", 'pig.tag: 22.5 cannot be read here. Write it in quotes: "22.5".'],
    ["selection: {signs: cough}", 'selection.signs: "cough" cannot be read here. Write a list: [cough].'],
    [
      "selection: {signs: []}",
      "selection.signs: the list is empty; write at least one entry, or take the key out.",
    ],
    [
      "selection:\n  signs:\n    - cough\n    -",
      "selection.signs[1]: it is left blank; write it, or take the line out.",
    ],
    [
      "selection:\n  signs:\n    -cough\n    -fever",
      'selection.signs: "-cough -fever" cannot be read here. Write a list: write a space after each hyphen (-).',
    ],
    [
      "selection:\n  signs:\n  - cough\n   - fever",
      'selection.signs[0]: "cough - fever" is read as one text. Line up the hyphens of a list below each other.',
    ],
    [
      "selection: {signs: [cough; fever]}",
      'selection.signs[0]: "cough; fever" is read as one text. Write a comma between two entries.',
    ],
    [
      "samples: {id: a}",
      "samples: a group of keys cannot be read here. Write a list: begin each entry with a hyphen (-).",
    ],
    [
      "samples: none",
      'samples: "none" cannot be read here. Write a list: begin each entry with a hyphen (-).',
    ],
    [
      "pig: normal",
      'pig: "normal" cannot be read here. Write keys on lines of their own below it, such as tag:, group: or pen:.',
    ],
    [
      "respiratory: {turbinates: {left: normal}}",
      'respiratory.turbinates.left: "normal" cannot be read here. Write keys on lines of their own below it, such as dorsal: or ventral:.',
    ],
    [
      "samples: [{id: 3.5, from: respiratory.lungs}]",
      'samples[0].id: 3.5 is read as a number. Write it in quotes: "3.5".',
    ],
    // Organs and systems.
    [
      "liver_pancreas: {liver: norml}",
      'liver_pancreas.liver: "norml" is not a word known here. Did you mean normal?',
    ],
    [
      "liver_pancreas: {liver: abnormal}",
      'liver_pancreas.liver: "abnormal" cannot be read here. Write what is not normal as findings, such as [{process: enlargement}].',
    ],
    [
      "liver_pancreas: {liver: {state: not normal}}",
      'liver_pancreas.liver.state: "not normal" cannot be read here. Write what is not normal as findings, such as [{process: enlargement}].',
    ],
    [
      "liver_pancreas: {liver: odd}",
      'liver_pancreas.liver: "odd" cannot be read here. Write normal, findings such as [{process: …, note: "odd"}], or {not_examined: the reason}.',
    ],
    [
      "liver_pancreas: {liver: not examined}",
      'liver_pancreas.liver: "not examined" cannot be read here. Write {not_examined: the reason}.',
    ],
    [
      "liver_pancreas: {liver: {not_assessable: autolysed}}",
      'liver_pancreas.liver.not_assessable: "autolysed" cannot be read here. Write {because: autolysed}.',
    ],
    [
      "liver_pancreas: {liver: []}",
      "liver_pancreas.liver: the list is empty; write at least one entry, or take the key out.",
    ],
    [
      "liver_pancreas: {liver: [pale]}",
      'liver_pancreas.liver[0]: "pale" cannot be read here. Write a finding as keys, such as {process: enlargement}.',
    ],
    [
      "liver_pancreas: {liver: {findings: none}}",
      'liver_pancreas.liver.findings: "none" cannot be read here. Write a list of findings, such as [{process: enlargement}].',
    ],
    [
      "liver_pancreas: {liver: {grades: 3}}",
      "liver_pancreas.liver.grades: 3 cannot be read here. Write keys below it, such as {maff-1978: 2}.",
    ],
    ["liver_pancreas: nornal", 'liver_pancreas: "nornal" is not a word known here. Did you mean normal?'],
    [
      "liver_pancreas: [liver]",
      "liver_pancreas: a list cannot be read here. Write normal for the whole system, or each organ as a key below it.",
    ],
    ["urinary: {kidneys: {left: 3, right: normal}}", `urinary.kidneys.left: 3 cannot be read here. ${organ}`],
    [
      "respiratory: {pleura: {pleurisy: {left: [none, crainoventral]}}}",
      'respiratory.pleura.pleurisy.left[1]: "crainoventral" is not one of none, cranioventral, dorsocaudal-focal, dorsocaudal-extensive. Did you mean cranioventral?',
    ],
    [
      "lymphoid: {spleen: [{process: petechia}]}",
      'lymphoid.spleen[0].process: "petechia" is not a word known here. Did you mean petechiae?',
    ],
    // Keys.
    ["pig: {weigth: 17.5 kg}", "pig.weigth: no such key. Did you mean weight?"],
    ["pig: {weigth: }", "pig.weigth: no such key. Did you mean weight?"],
    ["Pig: {sex: female}", "Pig: no such key. Did you mean pig?"],
    ["sex: female", "sex: no such key. It belongs under pig."],
    ["liver: normal", "liver: no such key. It belongs under liver_pancreas."],
    ["respiratory: {heart: normal}", "respiratory.heart: no such key. It belongs under cardiovascular."],
    ["liver_pancreas: {lver: normal}", "liver_pancreas.lver: no such key. Did you mean liver?"],
    [
      "urinary: {kidneys: {left: normal, rigth: normal}}",
      "urinary.kidneys.rigth: no such key. Did you mean right?",
    ],
    [
      "liver_pancreas: {liver: {process: necrosis}}",
      "liver_pancreas.liver.process: no such key. It belongs to a finding: write findings: [{process: enlargement}].",
    ],
    [
      "pig: {sex:female}",
      "pig.sex:female: no such key. A space is missing after the colon: write sex: female.",
    ],
    ["pig {sex: female}", '"pig {sex": no such key. A colon is missing after pig.'],
    ["pig.age: 58 d", '"pig.age": no such key. Write age as a key below pig.'],
    ["death: {hour: 9}", "death.hour: no such key. Known here: manner, method, at or note."],
    // Keys at the wrong depth.
    ["pig: {lungs: normal}", "pig.lungs: no such key. It belongs under respiratory."],
    ["selection: {age: 58 d}", "selection.age: no such key. It belongs under pig."],
    [
      "respiratory: {lungs: {turbinates: normal}}",
      "respiratory.lungs.turbinates: no such key. It belongs under respiratory, beside lungs.",
    ],
    [
      "alarm_check: {vesicles: none, bloody_orifices: seen}",
      "alarm_check: no such keys: vesicles and bloody_orifices. The place is alarm_check: {before_knife: {…}}.",
    ],
    [
      "urinary: {process: cyst, site: left}",
      "urinary: no such keys: process and site. A finding stands under an organ, such as urine: [{process: …, site: …}]; organs of urinary are kidneys, renal_pelvis, ureters, bladder and urine.",
    ],
    [
      "urinary: {bladder: [{process: parasites, number: many}]}",
      'urinary.bladder[0].number: "many" cannot be read here. Write a whole number. If nobody counted, leave it out and write severity: marked.',
    ],
    ["pig:\n  samples: []", "pig.samples: no such key. It belongs at the top of the file, beside pig."],
    [
      "external:\n  skin:\n    respiratory: normal",
      "external.skin.respiratory: no such key. It belongs at the top of the file, beside external.",
    ],
    // A finding may have a weight of its own in no case, and that of the pig is not meant.
    [
      "lymphoid: {spleen: [{process: mass, wieght: 1 kg}]}",
      expect.stringMatching(/^lymphoid\.spleen\[0\]\.wieght: no such key\. Known here/),
    ],
    // A text in braces, cut at its comma.
    [
      "nervous: {brain: {not_examined: skull left closed, no nervous signs}}",
      'nervous.brain.not_examined: the text was cut at its comma. Put it in quotes: not_examined: "skull left closed, no nervous signs".',
    ],
    [
      "respiratory: {lungs: [{process: froth, site: one, two , three, note: x}]}",
      'respiratory.lungs[0].site: the text was cut at its comma. Put it in quotes: site: "one, two, three".',
    ],
    [
      "respiratory: {lungs: [{process: froth, note: lobe, 2}]}",
      "respiratory.lungs[0].2: a text was cut at its comma. Put all of it in quotes.",
    ],
    // Curly quotes.
    [
      "pig: {tag: “2217”}",
      'pig.tag: curly quotes are read as part of the text. Write straight ones: "2217".',
    ],
    [
      "pig: {sex: ‘female’}",
      'pig.sex: curly quotes are read as part of the text. Write straight ones: "female".',
    ],
    [
      "pig: {litter: „S 381}",
      'pig.litter: curly quotes are read as part of the text. Write straight ones: "S 381".',
    ],
    [
      "death: {note: “quiet, in its pen”}",
      'death.note: the text was cut at its comma. Put it in quotes: note: "quiet, in its pen".',
    ],
    [
      "liver_pancreas: {liver: [{severity: mild}]}",
      "liver_pancreas.liver[0].process is missing. Write what happened to the tissue, such as process: enlargement.",
    ],
    [
      "respiratory: {lungs: {consolidation: {left_cardiac: 5, left_caudal: 0}}}",
      "respiratory.lungs.consolidation.left_cardiac: no such key. Did you mean left_middle?",
    ],
    [
      "respiratory: {lungs: {consolidation: {intermediate: 5}}}",
      "respiratory.lungs.consolidation.intermediate: no such key. Did you mean accessory?",
    ],
    [
      "respiratory: {lungs: {consolidation: {left_diaphragmatic: 5, left_caudal: 0}}}",
      "respiratory.lungs.consolidation.left_diaphragmatic: no such key. Known here: left_cranial, left_middle, left_caudal, right_cranial, right_middle, right_caudal or accessory.",
    ],
    [
      "liver_pancreas: {liver: [{proces: necrosis}]}",
      "liver_pancreas.liver[0].proces: no such key. Did you mean process?",
    ],
    [
      "liver_pancreas:\n  liver:\n    - process:",
      "liver_pancreas.liver[0].process is left blank. Write what happened to the tissue, such as process: enlargement.",
    ],
    [
      "selection: {treated: {last: 12 h}}",
      "selection.treated.with is missing. Write it: Substance, dose and route.",
    ],
    ["selection: {treated: {wit: amoxicillin}}", "selection.treated.wit: no such key. Did you mean with?"],
  ])("%s", (keys, message) => {
    expect(readingCase(keys).messages.map((one) => one.replace(/^\d+:\d+ /, ""))).toEqual([message]);
  });
});

it.each([
  "note: the farmer said “strange, blue” and no more",
  "note: “strange” and “blue”, he said",
  'note: "“strange”"',
  "note: the pig’s ear",
])("says nothing of curly quotes in %s", (keys) => {
  expect(readingCase(keys).messages).toEqual([]);
});

describe("wrong values of other files", () => {
  it.each<[FileKind, string, string[]]>([
    ["case", "case: x-1\n", ["1:1 format is missing. Write format: 1."]],
    ["case", "format: -1\ncase: x-1\n", ["1:9 format: -1 cannot be read here. Write 1."]],
    ["case", "format: '1'\ncase: x-1\n", ['1:9 format: "1" cannot be read here. Write 1, without quotes.']],
    ["case", "format: 1\ncase: 12\n", ['2:7 case: 12 is read as a number. Write it in quotes: "12".']],
    [
      "case",
      "format: 1\ncase:\n",
      [
        "2:1 case is left blank. Write it: The name of this case, unique for ever: farm, date and number of the pig, such as alder-2026-03-14-03.",
      ],
    ],
    ["case", "format: 1\nCase: x-1\n", ["2:1 Case: no such key. Did you mean case?"]],
    [
      "visit",
      "format: 1\nvisit: v\ndate: 14.3.2026\n",
      [
        '3:7 date: "14.3.2026" cannot be read. Did you mean 2026-03-14? Write a day, year first (ISO 8601), such as 2026-03-14.',
      ],
    ],
    [
      "visit",
      "format: 1\nvisit: v\ndate: 2026-03-14T10:00\n",
      [
        '3:7 date: "2026-03-14T10:00" cannot be read. Did you mean 2026-03-14? Write a day, year first (ISO 8601), such as 2026-03-14.',
      ],
    ],
    [
      "visit",
      "format: 1\nvisit: v\ndate: 2026-03-14\ngroups: {g: {at_risk: 10 pigs}}\n",
      ['4:23 groups.g.at_risk: "10 pigs" cannot be read here. Write the number alone: 10.'],
    ],
    [
      "visit",
      "format: 1\nvisit: v\ndate: 2026-03-14\ncases: [a, a]\n",
      ["4:8 cases: an entry stands twice in this list; keep one."],
    ],
    [
      "visit",
      "format: 1\nvisit: v\ndate: 2026-03-14\nenvironment: [{group: a, ammonia: 18}]\n",
      [
        "4:35 environment[0].ammonia: 18 has no unit. Write a gas concentration in parts per million, such as 18 ppm.",
      ],
    ],
    [
      "farm",
      "format: 1\nfarm: f\ngroups: {a: {}}\n",
      ["3:10 groups.a.head is missing. Write it: Usual number of pigs."],
    ],
    ["farm", "format: 1\nfarm: f\nsows: -3\n", ["3:7 sows: -3 is out of range; write 0 or more."]],
    [
      "settings",
      "format: 1\nlevel: 95\n",
      ["2:8 level: 95 is out of range; write a number above 0.5 and below 1."],
    ],
    [
      "settings",
      "format: 1\nautolysis: {up-to-15: {culture: 0}}\n",
      ["2:33 autolysis.up-to-15.culture: 0 is out of range; write more than 0."],
    ],
    [
      "settings",
      "format: 1\nrules: {treated-pig: warn}\n",
      ['2:22 rules.treated-pig: "warn" is not one of error, warning, note, off. Did you mean warning?'],
    ],
    [
      "settings",
      "format: 1\nrules: [treated-pig]\n",
      ["2:8 rules: a list cannot be read here. Write keys below it, such as {treated-pig: note}."],
    ],
    [
      "settings",
      "format: 1\nprotocols: {own: {follow_signs: yes}}\n",
      ['2:33 protocols.own.follow_signs: "yes" cannot be read here. Write true.'],
    ],
    [
      "settings",
      "format: 1\nscales: maff-1978\n",
      ['2:9 scales: "maff-1978" cannot be read here. Write a list: [maff-1978].'],
    ],
  ])("%s: %j", (kind, text, messages) => {
    expect(reading(text, kind).messages).toEqual(messages);
  });
});

describe("several faults", () => {
  it("are all reported, each at its place", () => {
    const text =
      "pig: {sex: F, age: 58, wieght: 3 kg}\nliver_pancreas:\n  liver: norml\n  gall_bladder:\n    - {process: oedma}\n    - {severity: mild}\nnote: 3\n";
    expect(readingCase(text).messages.sort()).toEqual([
      '3:12 pig.sex: "F" is not one of female, male, castrate. Did you mean female?',
      `3:20 pig.age: 58 has no unit. ${age}`,
      "3:24 pig.wieght: no such key. Did you mean weight?",
      '5:10 liver_pancreas.liver: "norml" is not a word known here. Did you mean normal?',
      '7:17 liver_pancreas.gall_bladder[0].process: "oedma" is not a word known here. Did you mean oedema?',
      "8:7 liver_pancreas.gall_bladder[1].process is missing. Write what happened to the tissue, such as process: enlargement.",
      '9:7 note: 3 cannot be read here. Write it in quotes: "3".',
    ]);
  });

  it("are told apart although their paths look alike", () => {
    const text = 'format: 1\nfarm: f\ngroups:\n  "a.head": 3\n  a: {head: many}\n';
    expect(reading(text, "farm").messages).toEqual([
      '4:13 groups."a.head": 3 cannot be read here. Write keys on lines of their own below it, such as head:, class: or place:.',
      '5:13 groups.a.head: "many" cannot be read here. Write a whole number.',
    ]);
  });

  it("behind a reference are reported where it is used", () => {
    const { messages } = readingCase(
      "respiratory:\n  lungs: &l {consolidation: {left_cranial: 5}}\nliver_pancreas:\n  liver: *l\n",
    );
    expect(messages.map((one) => one.split(". Known")[0])).toEqual([
      "6:10 liver_pancreas.liver.consolidation: no such key",
    ]);
  });
});

describe("what was meant", () => {
  it.each([
    ["liver_pancreas: {lver: normal, pancreas: normal}", ["liver_pancreas", "liver"]],
    ["cardiovascular: {valves: normal}\nrespiratory: {heart: normal}", ["cardiovascular", "heart"]],
    ["pig: {}\nsex: female", ["pig", "sex"]],
    // The place is taken, or there is nothing to put it in.
    ["liver_pancreas: {lver: normal, liver: normal}", ["liver_pancreas", "lver"]],
    ["lungs: normal", ["lungs"]],
    ["pig: {sex: F}", ["pig", "sex"]],
  ])("%s", (keys, intended) => {
    expect(readingCase(keys).faults.map((fault) => fault.intended)).toEqual([intended]);
  });
});
