/** A figure of each kind, from invented pigs; `told` is put wherever a name stands. */
import {
  bodyMap,
  caseTimes,
  completeness,
  type Drawing,
  distribution,
  forest,
  type Looked,
  lungMap,
  type Snout,
  snoutSections,
  timetable,
  visitToVisit,
} from "../../src/figures/index.ts";

const lobes = [
  "left_cranial",
  "left_middle",
  "left_caudal",
  "right_cranial",
  "right_middle",
  "right_caudal",
  "accessory",
] as const;
const systems = [
  "external",
  "lymphoid",
  "respiratory",
  "cardiovascular",
  "upper_digestive",
  "stomach",
  "intestine",
  "liver_pancreas",
  "serosa",
  "urinary",
  "endocrine",
  "genital",
  "placental",
  "nervous",
  "locomotor",
];
const looked: readonly Looked[] = ["lesion", "normal", "left", "blank"];
const percent = (share: number): string => `${Math.round(share * 100)} %`;
const quarters = ["none", "up to 25 %", "up to 50 %", "up to 75 %", "more"];

export const figures = (told = (name: string): string => name): Readonly<Record<string, Drawing>> => ({
  "lungs-of-a-pig": lungMap({
    id: "pig",
    lobes: lobes.map((lobe, index) => ({
      lobe,
      share: index === 6 ? undefined : index / 6,
      shown: index === 6 ? "" : percent(index / 6),
      hint: told(lobe),
    })),
    pleurisy: { left: ["dorsocaudal-focal", "cranioventral"], right: ["dorsocaudal-extensive"] },
    words: { left: "left", right: "right", steps: quarters, pleurisy: told("adhesions of the pleura") },
  }),
  "lungs-of-a-group": lungMap({
    id: "group",
    lobes: lobes.map((lobe, index) => ({ lobe, share: index / 7, shown: `${index}/7`, hint: told(lobe) })),
    words: { left: "left", right: "right", steps: quarters },
  }),
  snouts: snoutSections({
    snouts: Array.from(
      { length: 30 },
      (_, index): Snout => ({
        left: { dorsal: index % 5, ventral: (index + 2) % 5 },
        right: index === 7 ? { dorsal: undefined, ventral: undefined } : { dorsal: 0, ventral: index % 3 },
        septum: index % 4 === 0 ? "marked" : "straight",
        name: told(`alder-${index}`),
        grade: String(index % 6),
        hint: told("a snout"),
      }),
    ).map((snout, index) =>
      index === 7 ? { ...snout, left: { dorsal: undefined, ventral: undefined } } : snout,
    ),
    words: { left: "the pig's left", right: "the pig's right" },
  }),
  distribution: distribution({
    groups: ["2026-03-14", "2026-09-19, healthy comparison"].map((name, index) => ({
      name: told(name),
      number: "n 14",
      counts: new Map([0, 1, 2, 3, 4, 5].map((grade) => [grade, (grade * 3 + index) % 5])),
      hint: told(name),
    })),
    grades: [0, 1, 2, 3, 4, 5].map((grade) => ({ grade, shown: String(grade) })),
    words: { grade: "grade" },
  }),
  forest: forest({
    parts: [
      {
        heading: told("Snout grade 2 or more"),
        rows: [
          {
            name: told("2026-03-14, drawn at random"),
            counted: "7 of 10",
            share: 0.71,
            limits: [0.29, 0.96],
            hint: told("a row"),
          },
          {
            name: told("2026-03-14, chosen for signs"),
            counted: "3 of 3",
            share: 1,
            limits: undefined,
            hint: told("a row"),
          },
          {
            name: told("2026-09-19, drawn at random"),
            counted: "0 of 10",
            share: 0,
            limits: [0, 0.31],
            hint: told("a row"),
          },
        ],
      },
      {
        heading: told("Any lung consolidation"),
        rows: [
          {
            name: told("2026-03-14"),
            counted: "0 of 0",
            share: undefined,
            limits: undefined,
            hint: told("none"),
          },
        ],
      },
    ],
    percent,
    words: { limits: "share with its 95 % interval", thesePigs: "of these pigs alone" },
  }),
  "visit-to-visit": visitToVisit({
    visits: ["2026-03-14", "2026-09-19"].map((name, visit) => ({
      name: told(name),
      number: "n 60",
      median: visit === 0 ? 2.5 : 0,
      pigs: Array.from({ length: 60 }, (_, index) => ({
        value: visit === 0 ? index % 6 : index % 2,
        hint: told("a pig"),
        stands: index < 50,
      })),
    })),
    least: 0,
    most: 5,
    whole: true,
    number: String,
    words: {
      median: "middle pig",
      drawn: "drawn at random",
      chosen: "chosen",
      scale: told("snout grade 0 to 5"),
    },
  }),
  completeness: completeness({
    systems: systems.map((name) => told(name.replaceAll("_", " and "))),
    pigs: Array.from({ length: 12 }, (_, row) => ({
      name: told(`alder-2026-03-14-${row + 1}`),
      looked: systems.map((_, index) => ({
        state: looked[(index * 7 + row) % 4] ?? "blank",
        hint: told("looked at"),
      })),
    })),
    words: {
      lesion: "something found",
      normal: "looked at, normal",
      left: "not examined, with a reason",
      blank: "nothing written",
    },
  }),
  "times-of-a-case": caseTimes({
    steps: [
      { hours: 0.4, name: told("opened"), hint: told("opened"), late: false },
      { hours: 0.8, name: told("gut into formalin"), hint: told("late"), late: true },
    ],
    limits: [
      { hours: 0.5, name: told("gut histology") },
      { hours: 12, name: told("culture") },
    ],
    hours: String,
    words: { hours: "hours after death", limit: "keeps its full worth so long" },
  }),
  "body-map": bodyMap({
    systems: systems.map((id, index) => ({
      id,
      name: told(id),
      affected: index % 8,
      examined: index === 10 ? 0 : 8,
      hint: told(id),
    })),
    words: { notExamined: "not examined" },
  }),
  timetable: timetable({
    rows: [
      {
        name: told("Onset of signs"),
        entries: [
          { from: "2026-01-19", name: told("finisher-3") },
          { from: "2026-02-09", name: told("nursery-2") },
        ],
      },
      { name: told("Treatments"), entries: [] },
      {
        name: told("Changes on the farm"),
        entries: [
          { from: "2026-03-16", to: "2026-09-02", name: told("inlets and fan mended") },
          {
            from: "2026-09-19",
            name: told("twelve pigs opened, and a sentence that goes on for long after that"),
          },
        ],
      },
    ],
    day: (date) => date.toISOString().slice(0, 7),
    near: (date) => date.toISOString().slice(5, 10),
  }),
});
