/**
 * Contradictions: slips of the pen, of the unit, of the column or of the saw, each laid over a complete case. The second
 * mutant family; the first (omissions.ts) takes things away.
 */
import type { Case, Visit } from "../../src/cases/index.ts";
import { organById } from "../../src/knowledge/index.ts";

export interface Contradiction {
  /** What went wrong, for people. */
  readonly kind: string;
  /** The rules of which one must speak. */
  readonly rules: readonly string[];
  /** The place one of its findings must name: that path, or one below it. */
  readonly at: string;
  /** YAML laid over the case; undefined where the slip makes no sense in this case. */
  over(one: Case): string | undefined;
}

/** A slip that only the whole visit can show. */
export interface VisitContradiction {
  readonly kind: string;
  readonly rules: readonly string[];
  /** YAML laid over the visit, and over the first of its cases; undefined where the slip makes no sense. */
  over(visit: Visit): { readonly visit?: string; readonly first?: string } | undefined;
}

type When = (one: Case) => boolean;

const always: When = () => true;
const all =
  (...conditions: readonly When[]): When =>
  (one) =>
    conditions.every((condition) => condition(one));
const weighed: When = (one) => one.weightKg !== undefined;
const manner =
  (...words: readonly string[]): When =>
  ({ record }) =>
    words.includes(record.death?.manner ?? "");
const weaner: When = ({ ageClass }) => ageClass === "weaner";
const inGroup =
  (word: RegExp): When =>
  ({ record }) =>
    word.test(record.pig?.group ?? "");
const brainSeen: When = (one) => {
  const brain = organById("nervous.brain");
  return brain !== undefined && one.due.includes(brain);
};

/** A pig of the slaughter line with this observation. */
const onTheLine =
  (id: string, observation: string): When =>
  (one) => {
    const organ = organById(id);
    return (
      one.protocol.observations === "optional" &&
      organ !== undefined &&
      one.organ(organ).entry?.[observation] !== undefined
    );
  };

const slip = (
  kind: string,
  rules: string | readonly string[],
  at: string,
  over: string | ((one: Case) => string),
  when: When = always,
): Contradiction => ({
  kind,
  rules: [rules].flat(),
  at,
  over: (one) => (when(one) ? (typeof over === "string" ? over : over(one)) : undefined),
});

/** Takes the findings of the case out, unless the slip brings its own. */
const blank = (fields: string): string => (fields.includes("findings:") ? "" : "findings: , ");
const lungs = (values: readonly number[], parts: readonly [number, number], more = ""): string => {
  const names = [
    "left_cranial",
    "left_middle",
    "left_caudal",
    "right_cranial",
    "right_middle",
    "right_caudal",
    "accessory",
  ];
  const lobes = names.map((name, index) => `${name}: ${values[index]}`).join(", ");
  return `respiratory: {lungs: {state: , ${blank(more)}consolidation: {${lobes}}, caudal_cranial_part: {left: ${parts[0]}, right: ${parts[1]}}${more}}}`;
};
const pneumonia = (fields: string): string =>
  `, findings: [{process: consolidation, distribution: cranioventral, colour: dark-red, ${fields}}]`;
const snout = (fields: string): string =>
  `respiratory: {turbinates: {section: premolar-1, state: , ${blank(fields)}${fields}}}`;
const conchae = (dorsal: number, ventral: number): string =>
  `left: {dorsal: ${dorsal}, ventral: ${ventral}}, right: {dorsal: ${dorsal}, ventral: ${ventral}}`;
const spleen = (fields: string): string => `lymphoid: {spleen: [{${fields}}]}`;
const heartSac = (fields: string): string => `cardiovascular: {pericardium: [{${fields}}]}`;
const sample =
  (fields: string, more = ""): ((one: Case) => string) =>
  () =>
    `samples: [{id: 99-A, ${fields}}${more}]`;

/** The day of the opening. */
const day = ({ record }: Case): string => (record.opened?.at ?? "").slice(0, 10);
const before = (one: Case, days: number): string =>
  new Date(Date.parse(day(one)) - days * 86_400_000).toISOString().slice(0, 10);
const hasDay: When = (one) => day(one) !== "";
const steps =
  (text: string): ((one: Case) => string) =>
  (one) =>
    text.replaceAll("DAY", day(one));

/** Where the check is not asked, as of a fetus, the words ask. */
const byWords = ["alarm-word-denied", "alarm-word-unrecorded"];

export const contradictions: readonly Contradiction[] = [
  // Dates
  slip(
    "opened before it died",
    ["dates-out-of-order", "opened-before-visit", "year-off-visit"],
    "",
    "opened: {at: 2020-01-01T10:00}",
  ),
  slip("died after it was opened", "dates-out-of-order", "", "death: {at: 2031-01-01T10:00}"),
  slip("a day that does not exist", "date-impossible", "opened.at", "opened: {at: 2026-02-31T10:00}"),
  slip(
    "signs that began after death",
    ["dates-out-of-order", "date-impossible"],
    "",
    "selection: {onset: 2031-01-01}",
  ),
  slip(
    "a sample older than the pig's death",
    "dates-out-of-order",
    "samples",
    sample("from: lymphoid.spleen, into: chilled, for: [pcr], at: 2019-01-01T10:00"),
  ),
  slip(
    "the authority called before the pig died",
    "authority-before-death",
    "authority",
    "authority: [{at: 2019-01-01T10:00, stands: reported}]",
    ({ record }) => record.death?.at !== undefined,
  ),

  slip(
    "signs that began before birth",
    "onset-before-birth",
    "selection.onset",
    (one) => `selection: {onset: ${before(one, Math.ceil(one.ageDays ?? 0) + 400)}}`,
    all(hasDay, (one) => one.ageDays !== undefined),
  ),

  slip(
    "a step on a day that does not exist",
    "date-impossible",
    "steps.gut_opened",
    "steps: {gut_opened: 2026-02-31T10:00}",
  ),
  slip(
    "the gut opened before the pig",
    "dates-out-of-order",
    "steps.gut_opened",
    (one) => `steps: {gut_opened: ${before(one, 1)}T10:00}\nsamples: `,
    hasDay,
  ),
  slip(
    "the gut opened a month after the pig",
    "dates-out-of-order",
    "steps.gut_opened",
    (one) => `steps: {gut_opened: ${before(one, -30)}T10:00}\nsamples: `,
    hasDay,
  ),
  slip(
    "blood drawn five days after the opening",
    "dates-out-of-order",
    "steps.blood",
    (one) => `steps: {blood: ${before(one, -5)}T10:00}\nsamples: `,
    hasDay,
  ),
  slip(
    "a step of the year before",
    "year-off-visit",
    "steps.brain_out",
    (one) => `steps: {brain_out: ${Number(day(one).slice(0, 4)) - 1}${day(one).slice(4)}T10:00}\nsamples: `,
    all(hasDay, (one) => one.visit?.record.date === day(one)),
  ),
  slip(
    "a sample dated a month later",
    "dates-out-of-order",
    "samples[0]",
    (one) =>
      `samples: [{id: 99-A, from: lymphoid.spleen, into: chilled, for: [pcr], at: ${before(one, -30)}T10:00}]`,
    hasDay,
  ),
  slip(
    "died a month before it was opened",
    "dates-out-of-order",
    "death.at",
    (one) => `death: {at: ${before(one, 31)}T09:10}\nsamples: `,
    all(
      hasDay,
      ({ record }) =>
        record.death?.manner !== "born-dead" &&
        !["frozen", "advanced-autolysis"].includes(record.opened?.state ?? ""),
    ),
  ),

  // What stands only in words
  slip(
    "blisters on normal feet, and the check says none",
    "alarm-word-denied",
    "external.feet.note",
    "external: {feet: {state: normal, findings: , note: intact blisters on the coronary bands}}",
    (one) => one.due.some(({ id }) => id === "external.feet"),
  ),
  slip(
    "vesicles as the reason not to look, and nobody looked",
    "alarm-word-unrecorded",
    "external.feet.not_examined",
    "external: {feet: {state: , findings: , not_examined: vesicles on the coronary band}}\nalarm_check: {before_knife: {vesicles: not-looked-at}}",
  ),
  slip("claws that come off, in the note of the case", byWords, "note", "note: 'horn of the claw loose'"),
  slip("blisters in German", byWords, "note", "note: Blasen am Kronsaum"),
  slip(
    "the spleen of a swine fever in the note of a normal one",
    "alarm-word-denied",
    "lymphoid.spleen.note",
    "lymphoid: {spleen: {state: normal, findings: , note: 'black, friable, three times normal size'}}",
    (one) => one.due.some(({ id }) => id === "lymphoid.spleen"),
  ),
  slip(
    "blood that does not clot, in the note of the opening",
    byWords,
    "opened.note",
    "opened: {note: unclotted blood at nose and anus}",
  ),
  slip(
    "petechiae of the kidneys, and the check says none",
    "alarm-check-contradicted",
    "alarm_check.at_knife.petechiae",
    "urinary: {bladder: [{process: petechiae, distribution: multifocal, size: 2 mm, number: 20, colour: red, severity: mild, duration: acute}]}",
    (one) => one.due.some(({ id }) => id === "urinary.bladder"),
  ),
  slip(
    "a pool that only the words name",
    "pool-unnamed",
    "samples[0].site",
    sample("from: blood, site: pooled with two littermates, into: edta-tube, for: [pcr]"),
  ),
  slip("a tag with a blank of no width", "invisible-character", "pig.tag", 'pig: {tag: "22\u200b17"}'),

  slip(
    "a tag with a selector that no digit has",
    "invisible-character",
    "pig.tag",
    'pig: {tag: "2217\ufe0f"}',
  ),
  slip("a question mark for the examiner", "text-says-nothing", "examiner", 'examiner: "?"'),
  slip(
    "a reason to be written later",
    "text-says-nothing",
    "upper_digestive.oesophagus.not_examined",
    "upper_digestive: {oesophagus: {not_examined: tbd}}",
  ),

  // Figures that nothing can have
  slip(
    "a yard as hot as boiling water",
    "temperature-implausible",
    "opened.ambient",
    "opened: {ambient: 111 °C}",
  ),
  slip(
    "a lymph node as long as a forearm",
    "size-implausible",
    "lymphoid.bronchial_nodes",
    "lymphoid: {bronchial_nodes: [{process: enlargement, distribution: diffuse, size: 22 cm, colour: tan}]}",
  ),
  slip(
    "two litres from the nose",
    "volume-implausible",
    "respiratory.nares",
    "respiratory: {nares: [{process: discharge, distribution: diffuse, volume: 2 l, exudate: purulent}]}",
  ),

  // Scales
  slip(
    "a mistyped scale of another reader",
    "grade-scale-unknown",
    "readings[0].grades",
    "readings: [{reader: B. Second, grades: {maff-1987: 2}}]",
  ),
  slip(
    "a grade of another reader beyond the scale",
    "observation-out-of-range",
    "readings[0].grades",
    "readings: [{reader: B. Second, grades: {maff-1978: 9}}]",
  ),
  slip(
    "a lung score that its lobes do not give",
    "grade-contradicts-parts",
    "respiratory.lungs.grades",
    lungs([20, 30, 0, 20, 30, 0, 0], [0, 0], ", grades: {goodwin-1971: 54}"),
  ),
  slip(
    "the protocol of the line for a pig killed on the farm",
    "protocol-contradicts-death",
    "",
    "protocol: slaughter-check",
    manner("euthanised"),
  ),

  // The pig
  slip(
    "weight in grams typed as kilograms",
    ["weight-implausible", "age-class-mismatch"],
    "pig.weight",
    (one) => `pig: {weight: ${(one.weightKg ?? 0) * 1000} kg}`,
    weighed,
  ),
  slip(
    "weight in kilograms typed as grams",
    ["weight-implausible", "age-class-mismatch"],
    "pig.weight",
    (one) => `pig: {weight: ${one.weightKg} g}`,
    weighed,
  ),
  slip(
    "age in days typed as weeks",
    ["weight-implausible", "age-class-mismatch", "group-class-mismatch"],
    "pig",
    ({ record }) => `pig: {age: ${record.pig?.age?.replace(" d", " wk")}}`,
    ({ record }) => / d$/.test(record.pig?.age ?? ""),
  ),
  slip(
    "age in weeks typed as days",
    ["weight-implausible", "age-class-mismatch", "group-class-mismatch"],
    "pig",
    ({ record }) => `pig: {age: ${record.pig?.age?.replace(" wk", " d")}}`,
    ({ record }) => / wk$/.test(record.pig?.age ?? ""),
  ),
  slip("a class that the age does not allow", "age-class-mismatch", "pig.class", "pig: {class: adult}"),
  slip("a weight in degrees", "case-format", "pig.weight", "pig: {weight: 17.5 °C}"),
  slip("a length for a weight", "case-format", "pig.weight", "pig: {weight: 40 cm}"),
  slip("an age without a unit", "alarm-cannot-be-told", "pig.age", "pig: {age: 58}"),
  slip("a sex that is none", "case-format", "pig.sex", "pig: {sex: sow}"),
  slip(
    "a temperature with the point moved",
    "temperature-implausible",
    "pig.temperature",
    "pig: {temperature: 4.06 °C}",
  ),
  slip(
    "a crown-rump length of a pig that lived",
    "observation-impossible",
    "pig.crown_rump",
    "pig: {crown_rump: 17 cm}",
  ),
  slip(
    "a crown-rump length in the wrong unit",
    "crown-rump-implausible",
    "pig.crown_rump",
    "pig: {age: , class: stillborn, crown_rump: 270 cm}",
  ),
  slip("a parity in a castrate", "parity-impossible", "pig.parity", "pig: {sex: castrate, parity: 3}"),
  slip("a parity in a young pig", "parity-impossible", "pig.parity", "pig: {sex: female, parity: 3}"),
  slip("a group that the farm does not have", "group-unknown", "pig.group", "pig: {group: nursery-22}"),
  slip(
    "a weaner in a finisher room",
    "group-class-mismatch",
    "pig.group",
    "pig: {group: finisher-1}",
    all(weaner, ({ ageDays }) => (ageDays ?? 99) < 60),
  ),
  slip(
    "a finisher in a nursery",
    "group-class-mismatch",
    "pig.group",
    "pig: {group: nursery-2}",
    inGroup(/^finisher/),
  ),
  slip(
    "fat and wasting",
    "wasting-yet-fat",
    "pig.condition",
    "pig: {condition: 5}\nselection: {signs: [wasting]}",
  ),
  slip(
    "no signs, and a cough",
    "signs-none-and-more",
    "selection.signs",
    "selection: {signs: [none, cough]}",
  ),
  slip(
    "return to oestrus in a castrate",
    "sign-impossible",
    "selection.signs",
    "pig: {sex: castrate}\nselection: {signs: [return-to-oestrus]}",
  ),

  // Death
  slip(
    "found dead, by barbiturate",
    "method-without-kill",
    "death.method",
    "death: {manner: found-dead, method: barbiturate}",
  ),
  slip(
    "slaughtered with barbiturate",
    "slaughtered-by-barbiturate",
    "death.manner",
    "death: {manner: slaughtered, method: barbiturate}",
  ),
  slip(
    "chosen as found dead, then euthanised",
    "basis-contradicts-death",
    "selection.basis",
    "selection: {basis: found-dead}",
    manner("euthanised", "slaughtered"),
  ),
  slip(
    "chosen alive, then found dead",
    "basis-contradicts-death",
    "selection.basis",
    "selection: {basis: clinical}\ndeath: {manner: found-dead, method: }",
  ),
  slip(
    "born dead at some weeks of age",
    "born-dead-contradiction",
    "death.manner",
    "death: {manner: born-dead, method: }",
  ),
  slip(
    "stillborn and euthanised",
    "born-dead-contradiction",
    "death.manner",
    "pig: {class: stillborn}\ndeath: {manner: euthanised, method: barbiturate}",
  ),
  slip(
    "a bolt through a brain that is normal",
    "brain-destroyed",
    "death.method",
    "death: {manner: euthanised, method: captive-bolt}\nnervous: {brain: normal, meninges: normal}",
    brainSeen,
  ),
  slip(
    "stillborn with air in the lungs",
    "stillborn-breathed",
    "respiratory.lungs.float",
    "pig: {age: , class: stillborn}\nrespiratory: {lungs: {state: normal, consolidation: , caudal_cranial_part: , findings: , float: floats}}",
  ),
  slip(
    "stillborn with milk in the stomach",
    "observation-impossible",
    "stomach.stomach_content.milk",
    "pig: {age: , class: stillborn}\nstomach: {stomach_content: {state: normal, milk: full}}",
  ),
  slip(
    "fresh, with two systems autolysed",
    "fresh-yet-autolysed",
    "opened.state",
    "opened: {state: fresh}\nlymphoid: {spleen: {not_assessable: {because: autolysed, why: soft}}}\nintestine: {jejunum: {not_assessable: {because: autolysed, why: green}}}",
  ),
  slip(
    "fresh after two days in the heat",
    "carcass-state-implausible",
    "opened.state",
    (one) => `death: {at: ${before(one, 3)}T10:00}\nopened: {state: fresh, ambient: 30 °C}`,
    hasDay,
  ),

  slip(
    "frozen ten minutes after death",
    "carcass-state-implausible",
    "opened.state",
    steps(
      "death: {manner: euthanised, method: barbiturate, at: DAYT09:00}\nopened: {at: DAYT09:10, state: frozen}\nsamples: ",
    ),
    hasDay,
  ),

  // Words of a finding
  slip(
    "normal, with a lesion",
    "normal-with-finding",
    "lymphoid.spleen",
    "lymphoid: {spleen: {state: normal, findings: [{process: infarct, distribution: focal, size: 8 mm}]}}",
  ),
  slip(
    "not examined, with a lesion",
    "normal-with-finding",
    "lymphoid.spleen",
    "lymphoid: {spleen: {not_examined: forgotten, findings: [{process: infarct, distribution: focal, size: 8 mm}]}}",
  ),
  slip(
    "an abscess without pus",
    "process-impossible",
    "lymphoid.spleen[0].exudate",
    spleen("process: abscess, distribution: focal, size: 8 mm, exudate: none"),
  ),
  slip(
    "an effusion of nothing",
    "process-impossible",
    "cardiovascular.pericardium[0].exudate",
    heartSac("process: effusion, distribution: diffuse, volume: 5 ml, exudate: none"),
  ),
  slip(
    "congestion of unchanged colour",
    "process-impossible",
    "lymphoid.spleen[0].colour",
    spleen("process: congestion, distribution: diffuse, extent: 90 %, colour: unchanged"),
  ),
  slip(
    "icterus that is red",
    "process-impossible",
    "external.skin[0].colour",
    "external: {skin: [{process: icterus, distribution: diffuse, extent: 90 %, colour: red}]}",
  ),
  slip(
    "white blood",
    "process-impossible",
    "cardiovascular.pericardium[0].colour",
    heartSac("process: effusion, distribution: diffuse, volume: 5 ml, exudate: haemorrhagic, colour: white"),
  ),
  slip(
    "a scar of today",
    "process-impossible",
    "lymphoid.spleen[0].duration",
    spleen("process: scar, distribution: focal, size: 8 mm, duration: peracute"),
  ),
  slip(
    "mineralised tissue that is soft",
    "process-impossible",
    "lymphoid.spleen[0].consistency",
    spleen("process: mineralisation, distribution: focal, size: 8 mm, consistency: soft"),
  ),
  slip(
    "focal, five of them",
    "distribution-number-contradiction",
    "lymphoid.spleen[0]",
    spleen("process: infarct, distribution: focal, number: 5"),
  ),
  slip(
    "multifocal, one of them",
    "distribution-number-contradiction",
    "lymphoid.spleen[0]",
    spleen("process: infarct, distribution: multifocal, number: 1"),
  ),
  slip(
    "focal, nearly everywhere",
    "distribution-extent-contradiction",
    "lymphoid.spleen[0]",
    spleen("process: infarct, distribution: focal, extent: 95 %"),
  ),
  slip(
    "diffuse, in a corner",
    "distribution-extent-contradiction",
    "lymphoid.spleen[0]",
    spleen("process: infarct, distribution: diffuse, extent: 4 %"),
  ),
  slip(
    "bilateral, on the left",
    "distribution-side-contradiction",
    "external.eyes[0]",
    "external: {eyes: [{process: discharge, site: left eye, distribution: bilateral, volume: 1 ml, exudate: serous}]}",
  ),
  slip(
    "unilateral, on both sides",
    "distribution-side-contradiction",
    "external.eyes[0]",
    "external: {eyes: [{process: discharge, site: both eyes, distribution: unilateral, volume: 1 ml, exudate: serous}]}",
  ),
  slip(
    "millimetres typed as centimetres",
    "size-implausible",
    "lymphoid.spleen[0].size",
    spleen("process: infarct, distribution: focal, size: 95 cm"),
  ),
  slip(
    "millilitres typed as litres",
    "volume-implausible",
    "cardiovascular.pericardium[0].volume",
    heartSac("process: effusion, distribution: diffuse, volume: 40 l, exudate: serous"),
    weighed,
  ),
  slip(
    "a lesion of nothing",
    "measure-zero",
    "lymphoid.spleen[0]",
    spleen("process: infarct, distribution: focal, extent: 0 %"),
  ),
  slip(
    "an artefact graded as a lesion",
    "artefact-described-as-lesion",
    "lymphoid.spleen[0]",
    spleen(
      "process: discolouration, distribution: focal, size: 9 mm, colour: green, certainty: artefact, severity: marked",
    ),
  ),
  slip(
    "one lesion typed twice",
    "finding-twice",
    "lymphoid.spleen[1]",
    spleen(
      "process: infarct, distribution: focal, size: 8 mm}, {process: infarct, distribution: focal, size: 8 mm",
    ),
  ),
  slip(
    "organ weight in grams typed as kilograms",
    "organ-weight-implausible",
    "lymphoid.spleen.weight",
    "lymphoid: {spleen: {state: normal, weight: 41 kg}}",
    weighed,
  ),
  slip(
    "a uterus in a castrate",
    "organ-impossible",
    "genital.uterus",
    "pig: {sex: castrate}\ngenital: {uterus: normal}",
  ),
  slip(
    "a placenta in a weaned pig",
    "organ-impossible",
    "placental.placenta",
    "placental: {placenta: normal}",
  ),

  // Lungs and pleura
  slip(
    "pneumonia with every lobe at zero",
    "observation-parts-disagree",
    "respiratory.lungs",
    lungs([0, 0, 0, 0, 0, 0, 0], [0, 0], pneumonia("extent: 12 %")),
  ),
  slip(
    "left and right lobes exchanged",
    "site-contradicts-lobes",
    "respiratory.lungs.findings[0].site",
    lungs([0, 0, 0, 30, 40, 5, 0], [0, 10], pneumonia("site: left cranial and middle lobe, extent: 11 %")),
  ),
  slip(
    "caudodorsal, with the caudal lobes at zero",
    "distribution-contradicts-lobes",
    "respiratory.lungs.findings[0].distribution",
    lungs(
      [20, 30, 0, 30, 40, 0, 10],
      [0, 0],
      pneumonia("extent: 12 %").replace("cranioventral", "caudodorsal"),
    ),
  ),
  slip(
    "cranioventral, with only the caudal lobes above zero",
    "distribution-contradicts-lobes",
    "respiratory.lungs.findings[0].distribution",
    lungs([0, 0, 30, 0, 0, 20, 0], [0, 0], pneumonia("extent: 12 %")),
  ),
  slip(
    "a caudodorsal diagnosis of cranioventral lobes",
    "diagnosis-against-lobes",
    "diagnosis.morphologic[0]",
    `${lungs([20, 30, 0, 30, 40, 0, 10], [0, 0], pneumonia("extent: 12 %")).replace(/\}$/, ", pleura: normal}")}\ndiagnosis: {morphologic: ["Lungs: pleuropneumonia, caudodorsal, acute, moderate"]}`,
  ),
  slip(
    "more of the lung than of its worst lobe",
    "extent-contradicts-lobes",
    "respiratory.lungs.findings[0].extent",
    lungs([20, 30, 0, 30, 40, 5, 10], [0, 10], pneumonia("extent: 70 %")),
  ),
  slip(
    "soft consolidation",
    "process-impossible",
    "respiratory.lungs.findings[0].consistency",
    lungs([20, 30, 0, 30, 40, 5, 10], [0, 10], pneumonia("extent: 12 %, consistency: soft")),
  ),
  slip(
    "a part of a caudal lobe that is not in the lobe",
    "caudal-part-contradicts-lobe",
    "respiratory.lungs.caudal_cranial_part.left",
    lungs([20, 30, 0, 30, 40, 5, 10], [40, 10]),
  ),
  slip(
    "a solid lobe with a sound part",
    "caudal-part-contradicts-lobe",
    "respiratory.lungs.caudal_cranial_part.right",
    lungs([80, 90, 0, 90, 90, 95, 90], [0, 10]),
  ),
  slip(
    "cranial and caudal lobes exchanged",
    "caudal-lobes-worse",
    "respiratory.lungs.consolidation",
    lungs([0, 0, 45, 5, 5, 50, 0], [20, 30]),
  ),
  slip(
    "more than the whole of a lobe",
    "observation-out-of-range",
    "respiratory.lungs.consolidation",
    lungs([120, 0, 0, 0, 0, 0, 0], [0, 0]),
  ),
  slip(
    "no pleurisy and pleurisy",
    "pleurisy-none-and-more",
    "respiratory.pleura.pleurisy.left",
    "respiratory: {pleura: {state: , pleurisy: {left: [none, cranioventral], right: none}}}",
  ),
  slip(
    "an adhesion without pleurisy",
    "observation-parts-disagree",
    "respiratory.pleura.pleurisy",
    "respiratory: {pleura: {state: , pleurisy: {left: none, right: none}, findings: [{process: adhesion, site: right caudal lobe, distribution: focal, size: 30 mm}]}}",
  ),

  // Head
  slip(
    "a straight septum with a deviation",
    "observation-parts-disagree",
    "respiratory.turbinates.septum",
    snout(
      `${conchae(0, 1)}, septum: straight, findings: [{process: deviation, site: septum, distribution: focal, size: 4 mm}]`,
    ),
  ),
  slip(
    "grade 1 with conchae all but gone",
    "snout-grade-contradicts-conchae",
    "respiratory.turbinates.grades",
    snout(`${conchae(3, 4)}, septum: slight, grades: {maff-1978: 1, embrapa-1993: 3}`),
  ),
  slip(
    "grade 5 with whole conchae",
    "snout-grade-contradicts-conchae",
    "respiratory.turbinates.grades",
    snout(`${conchae(0, 0)}, septum: straight, grades: {maff-1978: 5, embrapa-1993: 0}`),
  ),
  slip(
    "normal on one scale, severe on another",
    "snout-grades-contradict",
    "respiratory.turbinates.grades",
    snout(`${conchae(1, 2)}, septum: straight, grades: {maff-1978: 4, embrapa-1993: 0}`),
  ),
  slip(
    "a grade that the scale does not have",
    "observation-out-of-range",
    "respiratory.turbinates.grades",
    snout(`${conchae(1, 2)}, septum: straight, grades: {embrapa-1993: 5}`),
  ),
  slip(
    "a grade under a scale that does not exist",
    "grade-scale-unknown",
    "respiratory.turbinates.grades",
    snout(`${conchae(1, 2)}, septum: straight, grades: {maff-1987: 2}`),
  ),
  slip(
    "unilateral, with both sides lost",
    "unilateral-loss-contradiction",
    "respiratory.turbinates.note",
    snout(`${conchae(1, 3)}, septum: straight, grades: , note: "atrophy, unilateral left"`),
  ),
  slip(
    "dorsal and ventral exchanged",
    "dorsal-worse-than-ventral",
    "respiratory.turbinates",
    snout(`${conchae(3, 1)}, septum: straight, grades: `),
  ),
  slip(
    "no loss, with a lost scroll",
    "turbinate-loss-contradiction",
    "respiratory.turbinates.loss_looks",
    snout(`${conchae(1, 3)}, septum: straight, grades: , loss_looks: none`),
  ),
  slip(
    "an infectious loss of nothing",
    "turbinate-loss-contradiction",
    "respiratory.turbinates.loss_looks",
    snout(`${conchae(0, 0)}, septum: straight, grades: , loss_looks: infectious`),
  ),
  slip(
    "a snout without conchae, put down to dust",
    "environmental-loss-severe",
    "respiratory.turbinates.loss_looks",
    snout(`${conchae(3, 4)}, septum: marked, grades: , loss_looks: environmental`),
  ),
  slip(
    "sawn in front of the premolar and graded",
    "snout-section-rostral",
    "respiratory.turbinates.section",
    "respiratory: {turbinates: {section: rostral-to-premolar-1}}",
  ),
  slip(
    "bone dust described as a lesion",
    "bone-dust-as-lesion",
    "respiratory.turbinates.findings",
    snout(
      `${conchae(0, 1)}, septum: straight, grades: , cut_face: bone-dust, findings: [{process: discolouration, distribution: diffuse, extent: 80 %, colour: yellow}]`,
    ),
  ),
  slip(
    "a brain in pieces, and normal",
    "brain-in-pieces-judged",
    "nervous.brain",
    "nervous: {brain: {state: normal, taken: pieces}}",
  ),
  slip(
    "a brain in pieces, and swollen",
    "brain-in-pieces-judged",
    "nervous.brain",
    "nervous: {brain: {taken: pieces, findings: [{process: oedema, distribution: diffuse, extent: 90 %, severity: moderate}]}}",
  ),
  slip(
    "a skull sawn through the eyes",
    "skull-cut-wrong",
    "nervous.brain.skull_cut",
    "nervous: {brain: {state: normal, skull_cut: through-the-eyes}}",
  ),

  // Completeness that contradicts the signs
  slip(
    "lame, with one joint opened",
    "lame-pig-joints",
    "locomotor.joints",
    "selection: {signs: [lameness]}\nlocomotor: {joints: {state: normal, opened: [left-hock]}}",
  ),
  slip(
    "nervous, with the skull left closed",
    "brain-unseen",
    "nervous.brain",
    "selection: {signs: [convulsions]}\nnervous: {brain: {not_examined: no saw}}",
  ),
  slip(
    "sneezing, with the snout left whole",
    "nasal-signs-turbinates-unseen",
    "respiratory.turbinates",
    "selection: {signs: [sneezing]}\nrespiratory: {turbinates: {not_examined: no saw}}",
  ),
  slip(
    "scouring, with the colon left closed",
    "enteric-gut-unseen",
    "intestine.spiral_colon",
    "selection: {signs: [diarrhoea]}\nintestine: {spiral_colon: {not_examined: late}}",
  ),
  slip(
    "fever, with the spleen left in",
    "fever-nodes-unseen",
    "lymphoid.spleen",
    "selection: {signs: [fever]}\nlymphoid: {spleen: {not_examined: late}}",
  ),
  slip(
    "pale, with the stomach left closed",
    "pars-oesophagea-unseen",
    "stomach.pars_oesophagea",
    "selection: {signs: [pallor]}\nstomach: {pars_oesophagea: {not_examined: late}}",
  ),
  slip(
    "kidney infarcts, with the heart left closed",
    "valves-unseen",
    "cardiovascular.valves",
    "urinary: {kidneys: {left: [{process: infarct, distribution: multifocal, number: 3}], right: normal}}\ncardiovascular: {valves: {not_examined: late}}",
  ),
  slip(
    "bloody gut, with the root not felt",
    "mesenteric-root-unpalpated",
    "intestine.mesentery",
    "intestine: {jejunum: [{process: haemorrhage, distribution: diffuse, extent: 90 %, colour: dark-red}], mesentery: {not_examined: late}}",
  ),

  // Samples
  slip(
    "formalin for a culture",
    "culture-in-formalin",
    "samples[0]",
    sample("from: lymphoid.spleen, into: formalin, for: [culture]"),
  ),
  slip(
    "formalin for virus isolation",
    "virus-isolation-in-formalin",
    "samples[0]",
    sample("from: lymphoid.tonsil, into: formalin, for: [virus-isolation]"),
  ),
  slip(
    "formalin for toxicology",
    "toxicology-in-formalin",
    "samples[0]",
    sample("from: urinary.kidneys, into: formalin, for: [toxicology]"),
  ),
  slip(
    "histology of frozen tissue",
    "histology-of-frozen",
    "samples[0]",
    sample("from: liver_pancreas.liver, into: frozen, for: [histology]"),
  ),
  slip(
    "PCR from heparin",
    "pcr-from-heparin",
    "samples[0]",
    sample("from: blood, into: heparin-tube, for: [pcr]"),
  ),
  slip(
    "culture on a dry swab",
    "culture-on-dry-swab",
    "samples[0]",
    sample("from: respiratory.bronchi, into: dry-swab, for: [culture]"),
  ),
  slip(
    "serology from an anticoagulant",
    "serology-from-anticoagulant",
    "samples[0]",
    sample("from: blood, into: edta-tube, for: [serology]"),
  ),
  slip(
    "serology of a lung",
    "test-impossible",
    "samples[0]",
    sample("from: respiratory.lungs, into: chilled, for: [serology]"),
  ),
  slip(
    "serology of a swab",
    "test-impossible",
    "samples[0]",
    sample("from: lymphoid.tonsil, into: dry-swab, for: [serology]"),
  ),
  slip(
    "culture of what was frozen",
    "culture-of-frozen",
    "samples[0]",
    sample("from: respiratory.lungs, into: frozen, for: [culture]"),
  ),
  slip(
    "as much formalin as tissue",
    "formalin-far-too-little",
    "samples[0]",
    sample("from: lymphoid.spleen, into: formalin, for: [histology], formalin_ratio: 1"),
  ),
  slip(
    "a fixed piece in centimetres",
    "fixed-piece-too-thick",
    "samples[0]",
    sample("from: lymphoid.spleen, into: formalin, for: [histology], thickness: 5 cm"),
  ),
  slip(
    "gut fixed with the lumen closed",
    "gut-piece-closed",
    "samples[0]",
    sample("from: intestine.ileum, into: formalin, for: [histology], lumen_opened: no"),
  ),
  slip(
    "gut and liver in one bag",
    "gut-with-other-organs",
    "samples",
    sample(
      "from: intestine.ileum, into: chilled, for: [pcr], bag: 1}, {id: 99-B, from: liver_pancreas.liver, into: chilled, for: [culture], bag: 1",
    ),
  ),
  slip(
    "formalin and fresh tissue in one bag",
    "formalin-beside-fresh",
    "samples",
    sample(
      "from: lymphoid.spleen, into: formalin, for: [histology], bag: 1}, {id: 99-B, from: lymphoid.spleen, into: chilled, for: [culture], bag: 1",
    ),
  ),
  slip(
    "two samples of one number",
    "duplicate-sample",
    "samples[1]",
    sample(
      "from: lymphoid.spleen, into: chilled, for: [pcr]}, {id: 99-A, from: lymphoid.tonsil, into: chilled, for: [pcr]",
    ),
  ),
  slip(
    "a sample of an organ that does not exist",
    "sample-organ-unknown",
    "samples[0]",
    sample("from: respiratory.lung, into: chilled, for: [pcr]"),
  ),
  slip(
    "a placenta of a weaned pig sent in",
    "sample-organ-absent",
    "samples[0]",
    sample("from: placental.placenta, into: chilled, for: [pcr]"),
  ),
  slip(
    "a sample of an organ that was not examined",
    "sample-organ-not-examined",
    "samples[0]",
    "upper_digestive: {oesophagus: {not_examined: left in the neck}}\nsamples: [{id: 99-A, from: upper_digestive.oesophagus, into: formalin, for: [histology]}]",
  ),
  slip(
    "fluid drawn after the brain was out",
    "csf-after-brain-out",
    "",
    steps(
      "steps: {brain_out: DAYT20:30}\nsamples: [{id: 99-A, from: csf, into: plain-tube, for: [culture], at: DAYT20:40}]",
    ),
    hasDay,
  ),
  slip(
    "fluid drawn after the head was off",
    "csf-after-head-off",
    "",
    steps(
      "steps: {head_off: DAYT20:30}\nsamples: [{id: 99-A, from: csf, into: plain-tube, for: [culture], at: DAYT20:40}]",
    ),
    hasDay,
  ),
  slip(
    "meninges swabbed after the brain was out",
    "meningeal-swab-late",
    "",
    steps(
      "steps: {brain_out: DAYT20:30}\nsamples: [{id: 99-A, from: nervous.meninges, into: charcoal-medium, for: [culture], at: DAYT20:40}]",
    ),
    hasDay,
  ),
  slip(
    "fluid drawn after a piece of the brain was fixed",
    "csf-after-brain-out",
    "samples[1]",
    steps(
      "samples: [{id: 99-A, from: nervous.brain, into: formalin, for: [histology], at: DAYT20:30}, {id: 99-B, from: csf, into: plain-tube, for: [culture], at: DAYT20:40}]",
    ),
    hasDay,
  ),
  slip(
    "meninges swabbed after a piece of the brain was fixed",
    "meningeal-swab-late",
    "samples[1]",
    steps(
      "samples: [{id: 99-A, from: nervous.brain, into: formalin, for: [histology], at: DAYT20:30}, {id: 99-B, from: nervous.meninges, into: charcoal-medium, for: [culture], at: DAYT20:40}]",
    ),
    hasDay,
  ),
  slip(
    "the brain out of a skull that was left closed",
    "skull-closed-yet-opened",
    "nervous.brain",
    steps(
      "steps: {brain_out: DAYT23:30}\nnervous: {brain: {state: , findings: , not_examined: skull left closed}}\nsamples: ",
    ),
    hasDay,
  ),
  slip(
    "normal meninges in a skull that was left closed",
    "skull-closed-yet-opened",
    "nervous.meninges",
    "nervous: {meninges: normal, brain: {state: , findings: , taken: , not_examined: skull left closed}}\nsamples: ",
  ),
  slip(
    "gut put into formalin after it was opened",
    "gut-fixed-after-opening",
    "samples[0]",
    steps(
      "steps: {gut_fixed: , gut_opened: DAYT20:00}\nsamples: [{id: 99-A, from: intestine.duodenum, into: formalin, for: [histology], at: DAYT20:05}]",
    ),
    hasDay,
  ),
  slip(
    "blood cultured from a heart after the gut was opened",
    "culture-after-gut-opened",
    "samples[0]",
    steps(
      "steps: {gut_opened: DAYT20:00}\nsamples: [{id: 99-A, from: blood, site: heart, into: plain-tube, for: [culture], at: DAYT20:20}]",
    ),
    hasDay,
  ),
  slip(
    "sterile samples after the gut was opened",
    "sterile-after-gut-opened",
    "",
    steps("steps: {gut_opened: DAYT20:00, sterile_samples: DAYT20:15}\nsamples: "),
    hasDay,
  ),
  slip(
    "culture taken after the gut was opened",
    "culture-after-gut-opened",
    "samples[0]",
    steps(
      "steps: {gut_opened: DAYT20:00}\nsamples: [{id: 99-A, from: lymphoid.spleen, into: chilled, for: [culture], at: DAYT20:20}]",
    ),
    hasDay,
  ),
  slip(
    "gut fixed after it was opened",
    "gut-fixed-after-opening",
    "",
    steps("steps: {gut_opened: DAYT20:20, gut_fixed: DAYT20:25}\nsamples: "),
    hasDay,
  ),
  slip(
    "gut histology hours after death",
    "gut-histology-lost",
    "samples[0]",
    steps("samples: [{id: 99-A, from: intestine.jejunum, into: formalin, for: [histology], at: DAYT23:50}]"),
    all(hasDay, ({ record }) => record.death?.at !== undefined),
  ),
  slip(
    "a joint swabbed after it was fixed",
    "joint-swab-after-fixing",
    "",
    steps(
      "locomotor: {joints: {state: , opened: [left-hock, left-elbow], findings: [{process: inflammation, site: left hock, distribution: focal, size: 40 mm, severity: moderate}]}}\nsamples: [{id: 99-A, from: locomotor.joints, site: left hock, into: formalin, for: [histology], at: DAYT20:00}, {id: 99-B, from: locomotor.joints, site: left hock, into: charcoal-medium, for: [culture], at: DAYT20:10}]",
    ),
    hasDay,
  ),
  slip(
    "culture of a mummy",
    "test-impossible",
    "samples[0]",
    "pig: {class: mummy}\nsamples: [{id: 99-A, from: lymphoid.spleen, into: chilled, for: [culture]}]",
  ),

  // Selection, diagnosis, photographs
  slip(
    "chosen for signs, without a sign",
    "clinical-without-signs",
    "selection",
    "selection: {basis: clinical, signs: [none]}",
  ),
  slip(
    "a healthy comparison that coughs",
    "comparison-with-signs",
    "selection",
    "selection: {basis: comparison, signs: [cough]}",
  ),
  slip(
    "a diagnosis of a normal liver",
    "diagnosis-without-lesion",
    "diagnosis",
    'liver_pancreas: {liver: normal}\ndiagnosis: {morphologic: ["Liver: hepatitis, interstitial, multifocal, chronic, mild"]}',
  ),
  slip(
    "mild in the diagnosis, marked on the table",
    "diagnosis-against-finding",
    "diagnosis",
    'liver_pancreas: {liver: [{process: necrosis, distribution: multifocal, size: 4 mm, colour: white, severity: marked}]}\ndiagnosis: {morphologic: ["Liver: necrosis, multifocal, acute, mild"]}',
  ),
  slip(
    "a cause seen with the naked eye",
    "cause-without-laboratory",
    "diagnosis",
    "diagnosis: {aetiologic: [Mycoplasma hyopneumoniae], basis: gross, differentials: [influenza A virus]}",
  ),
  slip(
    "pending, from the laboratory",
    "pending-against-basis",
    "diagnosis",
    "diagnosis: {aetiologic: [pending], basis: laboratory}",
  ),
  slip(
    "pending, with nothing sent",
    "pending-without-sample",
    "diagnosis",
    "diagnosis: {aetiologic: [pending], basis: pending, comment: }\nsamples: ",
  ),
  slip(
    "a photograph that is not there",
    "photo-absent",
    "photos[0]",
    "photos: [{file: photos/lost.jpg, shows: respiratory.lungs, scale: yes}]",
  ),
  slip(
    "a photograph of an organ that does not exist",
    "photo-organ-unknown",
    "photos[0]",
    "photos: [{file: photos/lost.jpg, shows: respiratory.lung, scale: yes}]",
  ),
  slip(
    "a tracing that is not there",
    "tracing-absent",
    "respiratory.turbinates.tracing",
    "respiratory: {turbinates: {section: premolar-1, tracing: tracings/lost.svg}}",
  ),

  // Safety and alarm
  slip(
    "no formalin, and fixed samples",
    "formalin-denied",
    "safety.formalin",
    "safety: {formalin: none}\nsamples: [{id: 99-A, from: lymphoid.spleen, into: formalin, for: [histology]}]",
  ),
  slip(
    "vesicles recorded, and the work went on",
    ["alarm-sign-recorded", "alarm-pattern"],
    "",
    "alarm_check: {before_knife: {vesicles: seen}}",
  ),
  slip(
    "a vesicle on the snout described like any lesion",
    ["alarm-pattern", "alarm-sign-recorded"],
    "",
    "external: {snout: [{process: vesicle, distribution: focal, size: 12 mm, severity: moderate, duration: acute}]}",
  ),

  // Tables of what cannot be
  slip(
    "a prolapse in the line of the thymus",
    "process-impossible",
    "lymphoid.thymus",
    "lymphoid: {thymus: [{process: prolapse, distribution: focal, size: 20 mm}]}",
  ),
  slip(
    "milk spots in the kidneys",
    "process-impossible",
    "urinary.kidneys",
    "urinary: {kidneys: {left: [{process: milk-spots, distribution: multifocal, number: 4}], right: normal}}",
  ),
  slip(
    "a broken lung",
    "process-impossible",
    "respiratory.lungs",
    lungs(
      [0, 0, 0, 0, 0, 0, 0],
      [0, 0],
      ", findings: [{process: fracture, distribution: focal, size: 20 mm}]",
    ),
  ),
  slip(
    "an ulcer of the liver",
    "process-impossible",
    "liver_pancreas.liver",
    "liver_pancreas: {liver: [{process: ulcer, distribution: focal, size: 9 mm}]}",
  ),
  slip(
    "vesicles that are months old",
    "process-impossible",
    "external.feet",
    "external: {feet: [{process: vesicle, distribution: focal, size: 9 mm, duration: chronic}]}",
  ),
  slip(
    "milk spots on the day of birth",
    "process-impossible",
    "liver_pancreas.liver",
    "pig: {age: 1 d, class: suckling, weight: 1.4 kg}\nliver_pancreas: {liver: [{process: milk-spots, distribution: multifocal, number: 4}]}",
  ),
  slip(
    "an ulcer measured as none",
    "observation-parts-disagree",
    "stomach.pars_oesophagea.ulcer",
    "stomach: {pars_oesophagea: {state: , keratin: 0, erosion: 0, ulcer: 0, findings: [{process: ulcer, distribution: focal, size: 30 mm}]}}",
  ),
  slip(
    "erosion and ulcer of more than the whole",
    "observation-parts-disagree",
    "stomach.pars_oesophagea",
    "stomach: {pars_oesophagea: {state: , findings: , keratin: 0, erosion: 80, ulcer: 60}}",
  ),
  slip(
    "fewer milk spots than were described",
    "observation-parts-disagree",
    "liver_pancreas.liver.milk_spots",
    "liver_pancreas: {liver: {state: , milk_spots: 2, findings: [{process: milk-spots, distribution: multifocal, number: 14}]}}",
  ),
  slip(
    "fibrin in the heart sac, and no pericarditis",
    "observation-parts-disagree",
    "cardiovascular.pericardium",
    "cardiovascular: {pericardium: {state: , pericarditis: none, findings: [{process: fibrin, distribution: diffuse, extent: 90 %}]}}",
  ),
  slip(
    "pleura that adheres, and no pleurisy",
    "observation-parts-disagree",
    "respiratory.pleura",
    "respiratory: {pleura: {state: , findings: , pleurisy: {left: none, right: none}, adhering_area: 30}}",
  ),
  slip(
    "the size of a tail wound that is healed",
    "observation-parts-disagree",
    "external.tail",
    "external: {tail: {state: , findings: , wound: healed, wound_size: 12 mm}}",
  ),
  slip(
    "a total outside its sides",
    "observation-parts-disagree",
    "respiratory.turbinates.measured",
    snout("measured: {perimeter_ratio: {left: 1.1, right: 1.2, total: 2.1}}"),
  ),
  slip(
    "five lobes of a slaughter pig",
    "list-half-filled",
    "respiratory.lungs.consolidation",
    "respiratory: {lungs: {consolidation: {accessory: , left_middle: }}}",
    onTheLine("respiratory.lungs", "consolidation"),
  ),
  slip(
    "a snout of a slaughter pig without its section",
    "list-half-filled",
    "respiratory.turbinates.section",
    "respiratory: {turbinates: {section: }}",
    onTheLine("respiratory.turbinates", "section"),
  ),
  slip(
    "a chronic diagnosis of an acute lesion",
    "diagnosis-against-finding",
    "diagnosis.morphologic",
    'liver_pancreas: {liver: [{process: necrosis, distribution: multifocal, size: 4 mm, colour: white, duration: acute}]}\ndiagnosis: {basis: gross, aetiologic: , morphologic: ["Liver: necrosis, multifocal, chronic, mild"]}',
  ),
  slip(
    "the left kidney in the diagnosis, the right on the table",
    "diagnosis-against-finding",
    "diagnosis.morphologic",
    'urinary: {kidneys: {left: normal, right: [{process: infarct, distribution: focal, size: 9 mm}]}}\ndiagnosis: {morphologic: ["Left kidney: infarct, focal, acute, mild"]}',
  ),
  slip(
    "a virus from a bacterial culture",
    "diagnosis-beyond-basis",
    "diagnosis.aetiologic",
    "diagnosis: {aetiologic: [PRRS virus], basis: laboratory, comment: }\nsamples: [{id: 99-A, from: lymphoid.spleen, into: chilled, for: [culture]}]",
    ({ visit }) => (visit?.record.tests ?? []).length === 0,
  ),
  slip(
    "histology without a slide",
    "diagnosis-beyond-basis",
    "diagnosis.basis",
    "diagnosis: {aetiologic: [Lawsonia intracellularis], basis: histology, comment: }\nsamples: [{id: 99-A, from: lymphoid.spleen, into: chilled, for: [culture]}]",
  ),
  slip(
    "a slide of serum",
    "test-impossible",
    "samples[0]",
    sample("from: serum, into: plain-tube, for: [histology]"),
  ),
  slip(
    "a spleen in a tube",
    "test-impossible",
    "samples[0]",
    sample("from: lymphoid.spleen, into: edta-tube, for: [pcr]"),
  ),
  slip(
    "serum with an anticoagulant",
    "test-impossible",
    "samples[0]",
    sample("from: serum, into: heparin-tube, for: [serology]"),
  ),
  slip(
    "a stillborn piglet that was tail-bitten",
    "sign-impossible",
    "selection.signs",
    "pig: {age: , class: stillborn}\nselection: {signs: [tail-biting]}",
  ),
  slip(
    "the temperature of a stillborn piglet",
    "observation-impossible",
    "pig.temperature",
    "pig: {age: , class: stillborn, temperature: 39.5 °C}",
  ),
];

/** A group of the visit. */
const groupOf = ({ record }: Visit): string => Object.keys(record.groups ?? {})[0] ?? "";

const firstCase = ({ cases }: Visit): Case | undefined => cases[0];
const secondCase = ({ cases }: Visit): Case | undefined => cases[1];

export const visitContradictions: readonly VisitContradiction[] = [
  {
    kind: "blisters in the complaint and in no case",
    rules: ["alarm-word-in-visit"],
    over: () => ({ visit: "complaint: lame pigs with blisters on the snout" }),
  },
  {
    kind: "the toxin gene looked for in the lung",
    rules: ["toxin-test-material"],
    over: ({ record }) => ({
      visit: `tests: [{test: toxin-gene, from: "lungs of two pigs, no nasal swabs", result: negative, at: ${record.date}}]`,
    }),
  },
  {
    kind: "one tag on two pigs",
    rules: ["duplicate-tag"],
    over(visit) {
      const { tag, group, litter = "" } = secondCase(visit)?.record.pig ?? {};
      return tag === undefined
        ? undefined
        : { first: `pig: {tag: "${tag}", group: ${group}, litter: ${litter}}` };
    },
  },
  {
    kind: "one number on two cases",
    rules: ["duplicate-case"],
    over(visit) {
      const other = secondCase(visit);
      return other === undefined ? undefined : { first: `case: ${other.id}` };
    },
  },
  {
    kind: "a case in the list without a file",
    rules: ["visit-case-absent"],
    over: (visit) => ({ visit: `cases: [${[...visit.cases.map(({ id }) => id), "lost-one"].join(", ")}]` }),
  },
  {
    kind: "a case that the list does not name",
    rules: ["case-not-in-visit"],
    over: (visit) => ({
      visit: `cases: [${["lost-one", ...visit.cases.slice(1).map(({ id }) => id)].join(", ")}]`,
    }),
  },
  {
    kind: "one sample number in two pigs",
    rules: ["duplicate-sample-in-visit"],
    over(visit) {
      const id = visit.cases.slice(1).flatMap(({ record }) => record.samples ?? [])[0]?.id;
      return id === undefined
        ? undefined
        : { first: `samples: [{id: ${id}, from: lymphoid.spleen, into: chilled, for: [pcr]}]` };
    },
  },
  {
    kind: "a parcel that arrives before it is sent",
    rules: ["parcel-arrives-before-sent"],
    over: (visit) => ({
      visit: `parcels: [{sent: ${visit.record.date}T16:00, arrives: ${visit.record.date}T12:00}]`,
    }),
  },
  {
    kind: "a parcel with a sample that nobody took",
    rules: ["parcel-sample-unknown"],
    over: () => ({ visit: "parcels: [{samples: [77-Z]}]" }),
  },
  {
    kind: "one sample in two parcels",
    rules: ["sample-in-two-parcels"],
    over(visit) {
      const id = visit.cases.flatMap(({ record }) => record.samples ?? [])[0]?.id;
      return id === undefined ? undefined : { visit: `parcels: [{samples: [${id}]}, {samples: [${id}]}]` };
    },
  },
  {
    kind: "a parcel that left before its sample was taken",
    rules: ["parcel-before-sample"],
    over(visit) {
      const id = visit.cases
        .flatMap(({ record }) => record.samples ?? [])
        .find(({ at }) => at !== undefined)?.id;
      return id === undefined
        ? undefined
        : { visit: `parcels: [{samples: [${id}], sent: 2020-01-01T10:00}]` };
    },
  },
  {
    kind: "more ill pigs than pigs",
    rules: ["group-counts-impossible"],
    over: (visit) => ({ visit: `groups: {${groupOf(visit)}: {at_risk: 40, affected: 238}}` }),
  },
  {
    kind: "more dead pigs than ill ones",
    rules: ["group-dead-unaffected"],
    over: (visit) => ({
      visit: `groups: {${groupOf(visit)}: {at_risk: 100, affected: 2, dead: 40, note: }}`,
    }),
  },
  {
    kind: "a thousand sneezes a minute",
    rules: ["cough-count-implausible"],
    over: (visit) => ({ visit: `groups: {${groupOf(visit)}: {sneezing: 3100 in 2 min}}` }),
  },
  {
    kind: "signs that begin in the year before",
    rules: ["group-onset-year"],
    over: ({ record, ...visit }) => ({
      visit: `complaint: sneezing\nquestion: \nnote: \ngroups: {${groupOf({ record, ...visit })}: {onset: ${Number(record.date?.slice(0, 4)) - 1}${record.date?.slice(4)}, note: }}`,
    }),
  },
  {
    kind: "a pen that the group does not have",
    rules: ["pen-beyond-group"],
    over: (visit) =>
      firstCase(visit)?.record.pig?.group?.startsWith("nursery") === true
        ? { first: "pig: {pen: 33}" }
        : undefined,
  },
  {
    kind: "a parcel of more than a ton",
    rules: ["parcel-figure-implausible"],
    over: () => ({ visit: "parcels: [{weight: 1200 kg}]" }),
  },
  {
    kind: "a mark larger than its box",
    rules: ["parcel-figure-implausible"],
    over: () => ({ visit: "parcels: [{mark_side: 60 cm, outer_side: 250 mm}]" }),
  },
  {
    kind: "air as dry as a desert",
    rules: ["reading-implausible"],
    over: (visit) => ({ visit: `environment: [{group: ${groupOf(visit)}, humidity: 7.6 %}]` }),
  },
  {
    kind: "carbon dioxide without its noughts",
    rules: ["reading-implausible"],
    over: (visit) => ({ visit: `environment: [{group: ${groupOf(visit)}, carbon_dioxide: 34 ppm}]` }),
  },
  {
    kind: "an answer of another decade",
    rules: ["toxin-test-misdated"],
    over: () => ({
      visit: "tests: [{test: toxin-gene, from: nasal swabs, result: negative, at: 2036-04-28}]",
    }),
  },
  {
    kind: "an answer without a day",
    rules: ["toxin-test-misdated"],
    over: () => ({ visit: "tests: [{test: toxin-gene, from: nasal swabs, result: negative}]" }),
  },
  {
    kind: "a dash for the veterinarian",
    rules: ["text-says-nothing"],
    over: () => ({ visit: 'veterinarian: "-"' }),
  },
  {
    kind: "signs that begin after the visit",
    rules: ["group-onset-after-visit"],
    over: (visit) => ({ visit: `groups: {${groupOf(visit)}: {onset: 2031-01-01}}` }),
  },
  {
    kind: "ten times the pigs the room holds",
    rules: ["group-larger-than-farm"],
    over: (visit) => ({ visit: `groups: {${groupOf(visit)}: {at_risk: 2400}}` }),
  },
  {
    kind: "a reading of a group that the farm does not have",
    rules: ["visit-group-unknown"],
    over: () => ({ visit: "environment: [{group: nursery-22, ammonia: 14 ppm}]" }),
  },
  {
    kind: "a reading of another season",
    rules: ["reading-off-visit"],
    over: (visit) => ({
      visit: `environment: [{group: ${groupOf(visit)}, at: 2025-01-01T08:00, ammonia: 14 ppm}]`,
    }),
  },
  {
    kind: "ammonia without its point",
    rules: ["reading-implausible"],
    over: (visit) => ({ visit: `environment: [{group: ${groupOf(visit)}, ammonia: 2200 ppm}]` }),
  },
  {
    kind: "dust in micrograms typed as milligrams",
    rules: ["reading-implausible"],
    over: (visit) => ({ visit: `environment: [{group: ${groupOf(visit)}, dust: 5100 mg/m3}]` }),
  },
  {
    kind: "an answer from before the visit",
    rules: ["toxin-test-misdated"],
    over: () => ({
      visit: "tests: [{test: toxin-gene, from: nasal swabs, result: negative, at: 2020-01-01}]",
    }),
  },
  {
    kind: "a day of the answer that is pending",
    rules: ["toxin-test-misdated"],
    over: () => ({
      visit: "tests: [{test: toxin-gene, from: nasal swabs, result: pending, at: 2031-01-01}]",
    }),
  },
  {
    kind: "the toxin looked for in the lung",
    rules: ["toxin-test-material"],
    over: () => ({ visit: "tests: [{test: toxin-gene, from: pieces of lung, result: negative}]" }),
  },
  {
    kind: "a visit in the folder of another day",
    // Where all pigs stand against the date, the line about them is the one.
    rules: ["visit-date-off-folder", "case-day-off-visit", "opened-before-visit", "year-off-visit"],
    over: () => ({ visit: "date: 2025-01-01" }),
  },
  {
    kind: "the authority called before the visit",
    rules: ["authority-before-visit"],
    over: () => ({ visit: "authority: [{at: 2020-01-01T10:00, stands: reported}]" }),
  },
  {
    kind: "loss put down to the air, and no reading of the air",
    rules: ["environmental-loss-unmeasured"],
    over: (visit) =>
      firstCase(visit)?.record.respiratory === undefined
        ? undefined
        : {
            visit: "environment: ",
            first: snout(`${conchae(1, 2)}, septum: straight, grades: , loss_looks: environmental`),
          },
  },
];
