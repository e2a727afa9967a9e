/** The sets of samples: their worked examples, and that nothing in them contradicts the rest of the program. */
import { describe, expect, it } from "vitest";
import { defaultSettings } from "../../src/cases/settings/settings.ts";
import { organById, sampleCare, sampleSets } from "../../src/knowledge/index.ts";
import { isMaterial } from "../../src/record/index.ts";
import { type PigAsked, samplesDue, setsOf } from "../../src/samples/index.ts";
import { every } from "../every.ts";

const pig = (asked: Partial<PigAsked>): PigAsked => ({
  ageClass: "weaner",
  sex: "female",
  signs: [],
  isFoundDead: false,
  isHealthy: false,
  sets: [],
  settings: defaultSettings,
  ...asked,
});
const key = ({ from, into }: { readonly from: string; readonly into: string }): string =>
  `${from} into ${into}`;

const examples = [...sampleSets.values()].flatMap(({ id, examples: all }) =>
  all.map((example, at) => ({ id: `${id} ${at + 1}`, set: id, ...example })),
);

describe("each set", () => {
  every(
    "takes and leaves what its worked examples say",
    examples,
    ({ set, pig: { class: ageClass, signs = [], manner, sets = [] }, takes = [], leaves = [] }) => {
      const asked = pig({ ageClass, signs, isFoundDead: manner === "found-dead", sets });
      const due = samplesDue(asked).map(key);
      expect(takes.filter((one) => !due.includes(one))).toEqual([]);
      expect(leaves.filter((one) => due.includes(one))).toEqual([]);
      if (takes.length > 0) expect(setsOf(asked).map(({ id }) => id)).toContain(set);
    },
    ({ id }) => id,
  );

  every("names materials and containers that there are", [...sampleSets.values()], (set) => {
    const all = [...set.samples, ...(set.mates ?? []), ...(set.once ?? [])];
    expect(all.filter(({ from }) => !isMaterial(from)).map(key)).toEqual([]);
    expect(all.filter(({ into }) => sampleCare.containers[into] === undefined).map(key)).toEqual([]);
    expect(set.samples.map(key)).toEqual([...new Set(set.samples.map(key))]);
  });

  it("has a worked example in which it is taken", () => {
    const taken = examples.filter(({ takes = [] }) => takes.length > 0).map(({ set }) => set);
    expect([...sampleSets.keys()].filter((id) => !taken.includes(id))).toEqual([]);
  });
});

describe("what is due", () => {
  it("of two complaints is one list without doubles, with the tests of both", () => {
    const both = samplesDue(pig({ signs: ["cough", "diarrhoea"] }));
    const one = samplesDue(pig({ signs: ["cough"] }));
    const other = samplesDue(pig({ signs: ["diarrhoea"] }));
    const keys = both.map(key);
    expect(keys).toEqual([...new Set(keys)]);
    expect([...keys].sort()).toEqual([...new Set([...one, ...other].map(key))].sort());
    expect(both.length).toBeLessThan(one.length + other.length);
    const serum = samplesDue(pig({ signs: ["convulsions"] })).find(
      (sample) => key(sample) === "blood into plain-tube",
    );
    expect(serum?.for).toEqual(["serology", "chemistry"]);
  });

  it("is a must where one of the sets takes it in any case", () => {
    const where = (signs: string[]): number | undefined =>
      samplesDue(pig({ signs })).find((sample) => key(sample) === "nervous.brain into formalin")?.where
        .length;
    expect([where(["fever"]), where(["fever", "convulsions"])]).toEqual([1, 0]);
  });

  it("comes sterile before gut, but with scour the fixed gut comes first", () => {
    const order = (signs: string[], ...keys: string[]): string[] =>
      samplesDue(pig({ signs }))
        .map(key)
        .filter((one) => keys.includes(one));
    const jejunum = "intestine.jejunum into formalin";
    const chilled = "intestine.jejunum into chilled";
    const spleen = "lymphoid.spleen into chilled";
    expect(order(["diarrhoea", "fever"], jejunum, chilled, spleen)).toEqual([jejunum, spleen, chilled]);
    expect(order(["convulsions"], chilled, spleen)).toEqual([spleen, chilled]);
  });

  it("of a healthy pig is what may be found in healthy pigs too, and nothing that needs a lesion", () => {
    const ill = pig({ signs: ["cough"] });
    const healthy = samplesDue(pig({ isHealthy: true }), [ill]);
    expect(healthy.map(key)).toContain("respiratory.lungs into formalin");
    expect(healthy.every(({ where }) => where.length === 0)).toBe(true);
    expect(samplesDue(pig({ isHealthy: true })).map(key)).toEqual(["blood into plain-tube"]);
    // A set without comparison is not taken of a healthy pig.
    expect(samplesDue(pig({ isHealthy: true }), [pig({ signs: ["lameness"] })]).length).toBe(1);
  });

  it("is of organs that the pig has", () => {
    for (const ageClass of ["mummy", "aborted", "suckling", "weaner", "finisher", "adult"] as const)
      for (const { from } of samplesDue(
        pig({ ageClass, signs: ["cough", "diarrhoea", "haematuria", "fever"] }),
      )) {
        const exists = organById(from)?.definition.exists;
        expect(exists === undefined || exists.includes(ageClass), `${ageClass} ${from}`).toBe(true);
      }
  });
});
