// Real cases, read by the real reader, from which each simulated visit is put together.
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";

const DATES = ["2026-03-02", "2026-09-07", "2027-03-01"];
const GRADES = [0, 1, 2, 3, 4, 5];
const HEALTHY = Object.fromEntries(
  [
    "left_cranial",
    "left_middle",
    "left_caudal",
    "right_cranial",
    "right_middle",
    "right_caudal",
    "accessory",
  ].map((lobe) => [lobe, 0]),
);

/** Heads of the groups; pigs of pens are of the first two. */
export const HEADS = { "nursery-1": 60, "nursery-2": 540, "nursery-3": 300 };
const GROUPS = Object.keys(HEADS);

/** Pens of twelve places, and pigs whose pen is not recorded. */
const HOUSE = { pens: 20, places: 12, single: 40 };
/** The first half of the pens against the second. */
const ARMS = {
  control: Array.from({ length: HOUSE.pens / 2 }, (_, pen) => pen + 1),
  treated: Array.from({ length: HOUSE.pens / 2 }, (_, pen) => HOUSE.pens / 2 + pen + 1),
};

/** What may be allocated: whole groups, and groups with one pen of either arm. Two pens of five pigs each. */
const TRIALS = {
  whole: (group) => (group % 2 === 0 ? "control" : "treated"),
  pairs: () => ({ control: [1], treated: [2] }),
};
const TRIAL = { groups: 20, pens: 2, places: 5 };

/**
 * A pig for each visit, group or pen, place and grade (and, with `lungs`, lungs healthy or not): no two are the same.
 *
 * @param readCases of the library
 * @param settings of carcase.yaml @param small pigs of the first group alone, none of pens
 * @param trials whether farms with trials of many groups are made besides
 * @param farms names of farms that are made besides, with one visit each
 * @returns `single(visit, group, place, grade)`, `penned(visit, pen, place, grade, group)`,
 *   `both(visit, place, grade, lung)`, `farm(name, pen, place, grade)`, in pen 0 without a pen,
 *   `trial(name, group, pen, place, grade)`
 */
export function makePool(readCases, { settings = {}, small = false, farms = [], trials = false } = {}) {
  const folder = mkdtempSync(join(tmpdir(), "carcase-simulate-"));
  const put = (path, record) => {
    const file = join(folder, path);
    mkdirSync(dirname(file), { recursive: true });
    writeFileSync(file, JSON.stringify(record));
  };
  const groups = Object.fromEntries(GROUPS.map((name) => [name, { head: HEADS[name] }]));
  put("carcase.yaml", { format: 1, ...settings });
  for (const name of farms) {
    put(`${name}/farm.yaml`, { format: 1, farm: name });
    put(`${name}/visit.yaml`, { format: 1, visit: name, date: DATES[0] });
    for (const grade of [0, 3])
      for (let pen = 0; pen <= 6; pen++)
        for (let place = 0; place < (pen === 0 ? 30 : 5); place++) {
          const id = idOf(name, pen, place, grade);
          const pig = { group: "nursery-1", ...(pen > 0 && { pen }) };
          put(`${name}/${id}.yaml`, caseOf(id, pig, grade));
        }
  }
  for (const [name, armOf] of Object.entries(trials ? TRIALS : {})) {
    const own = Array.from({ length: TRIAL.groups }, (_, group) => [`room-${group + 1}`, group]);
    put(`${name}/farm.yaml`, { format: 1, farm: name });
    put(`${name}/visit.yaml`, {
      format: 1,
      visit: name,
      date: DATES[0],
      groups: Object.fromEntries(own.map(([room, group]) => [room, { arm: armOf(group) }])),
    });
    for (const [room, group] of own)
      for (const grade of [0, 3])
        for (let pen = 1; pen <= TRIAL.pens; pen++)
          for (let place = 0; place < TRIAL.places; place++) {
            const id = idOf(name, group, pen, place, grade);
            put(`${name}/${id}.yaml`, caseOf(id, { group: room, pen }, grade));
          }
  }
  put("farm.yaml", { format: 1, farm: "alder", groups });
  for (const [visit, date] of DATES.entries()) {
    put(`${date}/visit.yaml`, {
      format: 1,
      visit: `alder-${date}`,
      date,
      groups: { "nursery-1": { arm: ARMS }, "nursery-2": { arm: ARMS } },
    });
    for (const grade of GRADES) {
      for (const [group, name] of GROUPS.slice(0, small ? 1 : undefined).entries())
        for (let place = 0; place < HOUSE.single; place++)
          put(
            `${date}/${idOf("s", visit, group, place, grade)}.yaml`,
            caseOf(idOf("s", visit, group, place, grade), { group: name }, grade),
          );
      for (const [group, name] of GROUPS.slice(0, small ? 0 : 2).entries())
        for (let pen = 1; pen <= HOUSE.pens; pen++)
          for (let place = 0; place < HOUSE.places; place++)
            put(
              `${date}/${idOf("p", visit, group, pen, place, grade)}.yaml`,
              caseOf(idOf("p", visit, group, pen, place, grade), { group: name, pen }, grade),
            );
      for (const lung of [0, 20])
        for (let place = 0; place < HOUSE.single && visit < 2 && !small; place++)
          put(
            `${date}/${idOf(`l${lung}`, visit, 0, place, grade)}.yaml`,
            caseOf(idOf(`l${lung}`, visit, 0, place, grade), { group: "nursery-1" }, grade, lung),
          );
    }
  }
  try {
    const { cases, unreadable } = readCases([folder]);
    const faulty = cases.find(({ faults }) => faults.length > 0);
    if (unreadable.length > 0 || faulty !== undefined)
      throw new Error(unreadable[0]?.message ?? faulty?.faults[0]?.message);
    const byId = new Map(cases.map((one) => [one.id, one]));
    const get = (...parts) => {
      const found = byId.get(idOf(...parts));
      if (found === undefined) throw new RangeError(`no pig ${idOf(...parts)}`);
      return found;
    };
    return {
      single: (visit, group, place, grade) => get("s", visit, group, place, grade),
      penned: (visit, pen, place, grade, group = 0) => get("p", visit, group, pen, place, grade),
      trial: (name, group, pen, place, grade) => get(name, group, pen, place, grade),
      farm: (name, pen, place, grade) => get(name, pen, place, grade),
      both: (visit, place, grade, lung) => get(`l${lung === 0 ? 0 : 20}`, visit, 0, place, grade),
    };
  } finally {
    rmSync(folder, { recursive: true });
  }
}

const idOf = (...parts) => parts.join("-");

const caseOf = (id, pig, grade, lung) => ({
  format: 1,
  case: id,
  examiner: "H. Marlow",
  pig: { ...pig, age: "50 d" },
  selection: { basis: "random" },
  death: { manner: "euthanised" },
  respiratory: {
    turbinates: { section: "premolar-1", grades: { "maff-1978": grade } },
    ...(lung !== undefined && {
      lungs: { consolidation: { ...HEALTHY, left_cranial: lung } },
    }),
  },
});
