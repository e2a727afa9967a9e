/** An invented archive in which every text and every name that a person may type begins with one mark. */
import { stringify } from "yaml";

/** In no pseudonym, and in no word of the program. */
export const mark = "zqx";
const text = (what: string): string => `${mark} ${what}`;
const id = (what: string): string => `${mark}-${what}`;

const organ = {
  findings: [{ process: "abscess", site: text("site"), note: text("finding"), number: 2 }],
  photos: [`${mark}-lungs.jpg`],
  note: text("organ"),
};

const authority = [
  {
    at: "2026-03-14T09:00",
    reached: text("reached"),
    stands: "released",
    for: ["vesicles"],
    ground: text("ground"),
    sample: text("negative sample"),
    note: text("authority"),
  },
];
const accepted = [{ rule: "treated-pig", at: id("at"), because: text("accepted") }];
const seals = [
  {
    by: text("sealed by"),
    at: "2026-03-20T17:00",
    because: text("amended"),
    files: { [`${mark}-1.jpg`]: "ab".repeat(32) },
    sha256: "cd".repeat(32),
    signature: `-----BEGIN SSH SIGNATURE-----\n${mark}\n-----END SSH SIGNATURE-----\n`,
  },
];
const diagnosed = (what: string) => [
  text(what),
  {
    text: text(`${what} reasoned`),
    disease: id("disease"),
    agent: "mycoplasma-hyopneumoniae",
    rests_on: { findings: ["respiratory.lungs"], results: [id("sample")], criteria: [text("criterion")] },
    comment: text(`${what} comment`),
  },
];

const whole = {
  format: 1,
  case: id("case-1"),
  protocol: id("protocol"),
  examiner: text("examiner"),
  pig: {
    tag: id("tag"),
    group: id("group"),
    pen: id("pen"),
    litter: id("litter"),
    age: "58 d",
    sex: "female",
    weight: "17.5 kg",
  },
  selection: {
    basis: "random",
    signs: ["cough"],
    onset: "36 h",
    treated: { with: text("treated with"), antimicrobial: "yes", last: "12 h" },
    typical: "yes",
    note: text("selection"),
  },
  death: { manner: "euthanised", method: "barbiturate", at: "2026-03-14T09:10", note: text("death") },
  opened: { at: "2026-03-14T09:40", state: "fresh", place: text("place"), note: text("opened") },
  authority,
  closed: { because: text("closed") },
  safety: { note: text("safety") },
  history: text("history"),
  not_examined: [{ systems: ["nervous"], because: text("left alone") }],
  external: {
    skin: { not_examined: text("not examined") },
    ears: { not_assessable: { because: "autolysed", why: text("why") } },
  },
  respiratory: {
    lungs: {
      ...organ,
      consolidation: {
        left_cranial: 20,
        left_middle: 0,
        left_caudal: 0,
        right_cranial: 10,
        right_middle: 0,
        right_caudal: 0,
        accessory: 0,
      },
      tracing: `${mark}.svg`,
    },
    turbinates: { section: "premolar-1", grades: { "maff-1978": 3, [id("scale")]: 1 } },
  },
  liver_pancreas: { liver: [{ process: "scar", site: text("liver"), note: text("scar") }] },
  samples: [
    {
      id: id("sample"),
      from: mark,
      site: text("sample site"),
      into: "chilled",
      for: ["pcr"],
      bag: id("bag"),
      pooled_with: [id("case-2")],
      note: text("sample"),
    },
  ],
  diagnosis: {
    morphologic: diagnosed("morphologic"),
    aetiologic: diagnosed("aetiologic"),
    disease: diagnosed("disease"),
    differentials: [text("differential")],
    basis: "laboratory",
    comment: text("diagnosis"),
  },
  readings: [{ reader: text("reader"), grades: { "maff-1978": 2, [id("scale")]: 2 }, note: text("reading") }],
  photos: [`${mark}-1.jpg`, { file: `${mark}-2.jpg`, shows: "carcass", note: text("photograph") }],
  accepted,
  note: text("case"),
  seals,
};

const visit = {
  format: 1,
  visit: id("visit"),
  date: "2026-03-14",
  veterinarian: text("veterinarian"),
  complaint: text("complaint"),
  question: { indicator: "pleurisy", direction: "fewer", text: text("question") },
  groups: {
    [id("group")]: {
      at_risk: 240,
      affected: 12,
      dead: 3,
      arm: { treated: [id("pen")], control: [id("pen-2")] },
      feed: { note: text("feed") },
      water: { note: text("water") },
      note: text("group"),
    },
  },
  environment: [{ group: id("group"), ammonia: "18 ppm", note: text("environment") }],
  tests: [
    {
      test: "toxin-gene",
      from: text("tested"),
      result: "negative",
      laboratory: text("herd laboratory"),
      note: text("test"),
    },
  ],
  treatments: [
    text("treatment"),
    { group: id("group"), with: text("drug given"), for: text("reason"), note: text("treated") },
  ],
  trial: { treatment: text("trial"), note: text("trial note") },
  vaccinations: [text("vaccine")],
  changes: [text("change")],
  recommendations: [text("advice"), { do: text("do"), who: text("who"), because: text("advice because") }],
  pigs: {
    drawn: text("drawn"),
    few: text("few"),
    comparison: text("comparison"),
    left_closed: text("closed skulls"),
    readers: text("readers"),
  },
  defaults: {
    protocol: id("protocol"),
    examiner: text("examiner 2"),
    pig: { group: id("group") },
    opened: { place: text("default place") },
    safety: { note: text("default safety") },
  },
  cases: [id("case-1"), id("case-2")],
  parcels: [{ samples: [id("sample")], contact: text("contact"), note: text("parcel") }],
  authority,
  accepted,
  note: text("visit"),
  seals,
};

const farm = {
  format: 1,
  farm: id("farm"),
  name: text("farm"),
  system: text("system"),
  groups: { [id("group")]: { head: 250, place: text("building"), note: text("usual group") } },
  note: text("farm note"),
};

const results = {
  format: 1,
  results: id("visit"),
  laboratory: {
    name: text("laboratory"),
    reference: id("submission"),
    received: "2026-03-16",
    reported: "2026-03-20",
  },
  entries: [
    {
      sample: id("sample"),
      test: "antibiogram",
      agent: "pasteurella-multocida",
      method: text("method"),
      reference: id("entry"),
      antibiogram: [{ drug: text("drug"), mic: "> 16", standard: text("standard"), category: "R" }],
      text: text("report"),
      lesions: [{ organ: "respiratory.lungs", process: "inflammation", note: text("histology") }],
      sequence: { type: text("genotype"), similarity: "98.7 %", to: text("strain") },
      note: text("result"),
    },
    {
      pool: [id("sample"), id("sample-2")],
      test: "toxicology",
      analyte: text("analyte"),
      value: "< 0.5",
      unit: text("unit"),
    },
    { test: "serology", pair: { first: id("sample"), second: id("sample-2") }, titre: "1:160" },
  ],
  accepted,
  note: text("results"),
};

const ours = { cite: text("practice"), confidence: "common-practice" };

const scale = {
  format: 1,
  id: id("scale"),
  title: text("scale"),
  short: [mark, "0-3"],
  organ: "respiratory.turbinates",
  source: ours,
  meaning: { 0: text("no gap"), 1: text("slight"), 2: text("wide"), 3: text("very wide") },
  requires: { section: ["premolar-1"] },
  parts: {
    [text("left gap")]: { read: "gap.left", unit: "mm" },
    [text("right gap")]: { read: "gap.right", unit: "mm" },
  },
  steps: [
    { from: 0, value: 0 },
    { above: 5, value: 1 },
    { above: 7, value: 2 },
    { above: 9, value: 3 },
  ],
  combine: "max",
  whole: true,
  range: [0, 3],
  unit: text("points"),
  when_normal: 0,
  boundary: text("limits belong to the lower grade"),
  classes: [
    { name: text("fine"), from: 0 },
    { name: text("watch"), from: 2 },
  ],
  class_source: ours,
  indices: [{ id: id("index"), title: text("index"), statistic: "mean", source: ours }],
  examples: [
    {
      case: text("example"),
      record: { section: "premolar-1", gap: { left: "6 mm", right: "8 mm" } },
      value: 2,
      class: text("watch"),
      source: { cite: text("by hand"), confidence: "derived" },
    },
  ],
};

const settings = {
  format: 1,
  scales: ["shipped", "scales/ours.yaml"],
  protocols: { [id("protocol")]: { title: text("protocol"), extends: "full" } },
  indicators: {
    [id("indicator")]: { title: text("indicator"), score: { scale: "maff-1978", at_least: 2 } },
    [id("wide")]: { title: text("wide gap"), score: { scale: id("scale"), at_least: 2 } },
  },
};

export const records: readonly { readonly kind: string; readonly record: object }[] = [
  { kind: "case", record: whole },
  { kind: "visit", record: visit },
  { kind: "farm", record: farm },
  { kind: "results", record: results },
];

/** The files, in folders that have the mark as well. */
export const files: Readonly<Record<string, string>> = {
  "carcase.yaml": stringify(settings),
  "scales/ours.yaml": stringify(scale),
  [`${mark}-farm/farm.yaml`]: stringify(farm),
  [`${mark}-farm/${mark}-visit/visit.yaml`]: stringify(visit),
  [`${mark}-farm/${mark}-visit/results.yaml`]: stringify(results),
  [`${mark}-farm/${mark}-visit/${mark}-1.yaml`]: stringify(whole),
  [`${mark}-farm/${mark}-visit/${mark}-2.yaml`]: stringify({
    format: 1,
    case: id("case-2"),
    pig: { tag: id("tag-2"), age: "60 d" },
    selection: { basis: "random" },
    samples: [{ id: id("sample-2"), from: "blood", into: "plain-tube" }],
  }),
  [`${mark}-loose/${mark}-3.yaml`]: stringify({
    format: 1,
    case: id("case-3"),
    pig: { tag: id("tag-3"), group: id("group-3"), age: "70 d" },
    respiratory: { turbinates: { section: "premolar-1", gap: { left: "6 mm", right: "8 mm" } } },
  }),
};
