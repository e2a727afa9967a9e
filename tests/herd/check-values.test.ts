/** The 29 check values of the published methods, each with its number, its source and how sure it is. */
import { describe, expect, test } from "vitest";
import { herdIndices, predictedIndex } from "../../src/herd/index.ts";
import { clinicalPredictors, type ScaleReference } from "../../src/knowledge/index.ts";
import { classOf } from "../../src/score/index.ts";
import { binomialInterval, summarise } from "../../src/statistics/index.ts";
import { consolidation, scaleNamed, scoreOn, snout } from "../score/pigs.ts";

/** Scores from the number of pigs at each. */
const spread = (counts: Readonly<Record<string, number>>): number[] =>
  Object.entries(counts).flatMap(([value, pigs]) => Array<number>(pigs).fill(Number(value)));

const indexOf = (scale: string, index: string, counts: Readonly<Record<string, number>>) => {
  const pigs = { basis: "random", slaughtered: true };
  const found = herdIndices(scaleNamed(scale), spread(counts), pigs).find(({ id }) => id === index);
  if (found === undefined) throw new Error(`${scale} has no index ${index}`);
  return found;
};

/** The class of an index value itself, without pigs to make it from. */
const classOfIndex = (scale: string, id: string, value: number) => {
  const index = scaleNamed(scale).indices?.find((one) => one.id === id);
  return classOf(index?.classes, value, index?.round);
};

const reference = (scale: string, population: RegExp): ScaleReference => {
  const found = scaleNamed(scale).references?.find((one) => population.test(one.population));
  if (found === undefined) throw new Error(`${scale} has no reference ${population}`);
  return found;
};

/** Proportion and 95 % limits in per cent, two decimals. */
const percents = (affected: number, examined: number) => {
  const { proportion, lower, upper } = binomialInterval(affected, examined);
  return [proportion, lower, upper].map((value) => (100 * value).toFixed(2));
};

/** A lung with these lobes, the rest without consolidation. */
const lung = (lobes: Parameters<typeof consolidation>[0]) => ({ consolidation: consolidation(lobes) });
const full = lung({
  left_cranial: 100,
  left_middle: 100,
  left_caudal: 100,
  right_cranial: 100,
  right_middle: 100,
  right_caudal: 100,
  accessory: 100,
});
const cranioventral = lung({
  left_cranial: 20,
  left_middle: 50,
  right_cranial: 40,
  right_middle: 60,
  right_caudal: 5,
  accessory: 10,
});

describe("pleurisy", () => {
  test("1. 580/178/143/83/16 of 1000: index 0.599, f 0.242, m2 2.4752, mean 0.777 (SIPAS 2011: index verified, rest derived)", () => {
    const counts = { 0: 580, 1: 178, 2: 143, 3: 83, 4: 16 };
    expect(indexOf("dottori-2007", "pleuropneumonia-index", counts).value).toBeCloseTo(0.599, 12);
    expect(indexOf("dottori-2007", "mean-pleurisy", counts).value).toBeCloseTo(0.777, 12);
    const dorsocaudal = spread(counts).filter((score) => score >= 2);
    expect(dorsocaudal.length / 1000).toBe(0.242);
    expect(summarise(dorsocaudal).mean?.toFixed(4)).toBe("2.4752");
  });

  test("2. mean 0.83, 47.5 % at 1 or more, 25.1 % at 2 or more: index 0.606 (Merialdi et al. 2012: 0.61, verified)", () => {
    const index = indexOf("dottori-2007", "pleuropneumonia-index", { 0: 525, 1: 224, 2: 147, 3: 104 });
    expect(index.value).toBeCloseTo(0.83 - 0.224, 12);
    expect(reference("dottori-2007", /4,889/).values).toMatchObject({ index: 0.61, mean: 0.83 });
  });

  test("3. all scores at most 1: index 0, no division error (by definition, derived)", () => {
    expect(indexOf("dottori-2007", "pleuropneumonia-index", { 0: 1, 1: 5 }).value).toBe(0);
    expect(indexOf("dottori-2007", "pleuropneumonia-index", { 0: 3 }).value).toBe(0);
  });

  test.each([
    [0.2, "best quarter"],
    [0.4, "second quarter"],
    [0.7, "third quarter"],
    [0.9, "worst quarter"],
  ])("16. index %d: %s (SIPAS 2011, verified)", (value, name) => {
    expect(classOfIndex("dottori-2007", "pleuropneumonia-index", value)).toBe(name);
  });
});

describe("snouts", () => {
  test("4. grades 52.6/31.4/11.9/4.9 %: 0.699 over 100, 0.693 over 100.8, moderate to severe (Sobestiansky et al. 1990 and Embrapa 1993, derived)", () => {
    const overHundred = indexOf("embrapa-1993", "embrapa-index", { 0: 518, 1: 314, 2: 119, 3: 49 });
    const overPrinted = indexOf("embrapa-1993", "embrapa-index", { 0: 526, 1: 314, 2: 119, 3: 49 });
    expect(overHundred.value?.toFixed(3)).toBe("0.699");
    expect(overPrinted.value?.toFixed(3)).toBe("0.693");
    for (const { class: name } of [overHundred, overPrinted])
      expect(name).toBe("moderately to severely affected");
  });

  test.each([
    [0.3, "free or insignificant"],
    [0.31, "slightly affected"],
    [0.45, "slightly affected"],
    [0.46, "moderately to severely affected"],
    [3, "moderately to severely affected"],
  ])("5. index %d: %s (Embrapa 1993, verified)", (value, name) => {
    expect(classOfIndex("embrapa-1993", "embrapa-index", value)).toBe(name);
  });

  test("6. 5 % sneezes: 0.685; 5 % coughs: 0.90 (Morés et al. 2001: equations verified, values derived)", () => {
    expect(predictedIndex("embrapa-index", 5)).toBe(0.685);
    expect(predictedIndex("pneumonia-index", 5)).toBe(0.9);
    for (const [index, { examples }] of clinicalPredictors)
      for (const { percent, value } of examples) expect(predictedIndex(index, percent)).toBe(value);
    expect(() => predictedIndex("snout-index", 5)).toThrow(/embrapa-index and pneumonia-index/);
    expect(() => predictedIndex("embrapa-index", -1)).toThrow(/0 or more/);
  });

  test("7. grades 35/65/41/30: N 171, mean 1.386, 136 of 171 = 79.5 % affected (Collins et al. 1989: counts verified, mean derived)", () => {
    const counts = { 0: 35, 1: 65, 2: 41, 3: 30 };
    expect(spread(counts).length).toBe(171);
    expect(indexOf("collins-1989-grade", "mean-visual-grade", counts).value?.toFixed(3)).toBe("1.386");
    expect(percents(136, 171)[0]).toBe("79.53");
    expect(Object.values(reference("collins-1989-grade", /171/).values)).toEqual([35, 65, 41, 30]);
  });

  test("8. perimeter ratio by visual grade 1.54, 1.25, 0.97, 0.73, falling (Collins et al. 1989, verified)", () => {
    const means = Object.values(reference("collins-1989-perimeter", /Collins/).values);
    expect(means).toEqual([1.54, 1.25, 0.97, 0.73]);
    expect(means).toEqual([...means].sort((a, b) => b - a));
    for (const total of means) {
      const entry = { section: "premolar-1", measured: { perimeter_ratio: { total } } };
      expect(scoreOn("collins-1989-perimeter", entry)).toMatchObject({ value: total, class: null });
    }
  });

  test("9. UK 1974: 75.7, 44.7 and 17.5 % at 1, 2, 3 or more of 2,701; so 24.3, 31.0 and 27.2 % at 0, 1, 2 (verified, derived)", () => {
    const { values } = reference("maff-1978", /2,701/);
    const [one = 0, two = 0, three = 0] = Object.values(values);
    expect([one, two, three]).toEqual([75.7, 44.7, 17.5]);
    expect([100 - one, one - two, two - three].map((value) => value.toFixed(1))).toEqual([
      "24.3",
      "31.0",
      "27.2",
    ]);
  });

  test.each([
    [snout(0), 0, "normal"],
    [snout(0, { left: { dorsal: 0, ventral: 1 } }), 1, "mild"],
    [snout(2, { left: { dorsal: 1, ventral: 2 } }), 7, "mild"],
    [snout(2), 8, "moderate"],
    [snout(3, { left: { dorsal: 4, ventral: 4 } }), 14, "moderate"],
    [snout(4), 16, "severe"],
  ])("10. summed nose %j: %d, %s (SIPAS 2018, verified)", (entry, value, name) => {
    expect(scoreOn("polloni-2018", entry)).toMatchObject({ value, class: name });
  });

  test("10. exactly 15 has no class in the source and is read as severe, which the boundary rule says (SIPAS 2018)", () => {
    expect(classOf(scaleNamed("polloni-2018").classes, 15)).toBe("severe");
    expect(scaleNamed("polloni-2018").boundary).toContain("15");
  });

  test("11. four conchae at 4 and a marked septum: 18 (Ph. Eur. 1361, from memory)", () => {
    expect(scoreOn("polloni-2018", snout(4, { septum: "marked" }))).toMatchObject({
      value: 18,
      confidence: "from-memory",
    });
  });

  test("29. free area 41.12 % in clean air against about 50 % with pollutant or infection (Hamilton et al. 1999, verified)", () => {
    const [clean = 0, ...others] = Object.values(reference("done-1984", /exposure trial/).values);
    expect(clean).toBe(41.12);
    expect(others).toEqual([49.65, 51.04, 49.88, 50.77]);
    for (const other of others) expect(Math.abs(other - 50)).toBeLessThan(1.1);
  });
});

describe("lungs", () => {
  test("12. all lobes full: 28 with seven lobes, 24 with six (Madec & Kobisch 1982; Henninger et al. 2014, verified)", () => {
    expect(scoreOn("madec-kobisch-1982", full).value).toBe(28);
    expect(scoreOn("madec-kobisch-1982-six-lobes", full).value).toBe(24);
  });

  test("13. all parts full: 4 x 10 + 3 x 5 = 55 (Holt et al. 2011, verified)", () => {
    const entry = { ...full, caudal_cranial_part: { left: 100, right: 100 } };
    expect(scoreOn("goodwin-1971", entry).value).toBe(55);
  });

  test.each([
    [lung({ left_cranial: 100, left_middle: 40 }), 14, "mild"],
    [lung({ left_cranial: 100, left_middle: 50 }), 15, "moderate"],
    [lung({ left_cranial: 100, left_middle: 100, right_cranial: 90 }), 29, "moderate"],
    [lung({ left_cranial: 100, left_middle: 100, right_cranial: 100 }), 30, "severe"],
  ])("14. %j: %d of 55, %s (J. Carr form, verified)", (entry, value, name) => {
    expect(scoreOn("goodwin-1971", entry)).toMatchObject({ value, class: name });
  });

  test.each([
    [0.6, "best quarter"],
    [0.8, "second quarter"],
    [1.2, "third quarter"],
    [1.5, "worst quarter"],
  ])("15. batch mean %d: %s (SIPAS 2013, verified)", (value, name) => {
    expect(classOfIndex("madec-kobisch-1982", "mean-lung-score", value)).toBe(name);
  });

  test.each([
    // The right middle lobe is 10 % of the lung, the left caudal 29, the left cranial 5 (weights from memory).
    [lung({ right_middle: 100 }), 10, 0],
    [lung({ right_middle: 100, left_cranial: 2 }), 10.1, 1],
    [lung({ left_caudal: 100, left_cranial: 20 }), 30, 1],
    [lung({ left_caudal: 100, left_cranial: 22 }), 30.1, 2],
  ])(
    "17. %j: %d % of the lung, class %d (German rule, verified; boundary read here)",
    (entry, percent, value) => {
      expect(scoreOn("christensen-1999", entry).value).toBe(percent);
      expect(scoreOn("german-rule-lungs", entry).value).toBe(value);
    },
  );

  test("19. one lung on six scales (weights from memory, values derived)", () => {
    const points = scoreOn("madec-kobisch-1982", cranioventral);
    expect(points.value).toBe(11);
    expect(Object.values(points.parts)).toEqual([1, 3, 0, 2, 3, 1, 1]);
    expect(scoreOn("christensen-1999", cranioventral).value).toBe(16.6);
    expect(scoreOn("halbur-1995", cranioventral).value).toBe(18.875);
    expect(scoreOn("vaccine-trial-weights", cranioventral).value).toBe(19.25);
    expect(scoreOn("piffer-brito-1991", cranioventral).value).toBe(2);
    expect(scoreOn("sobestiansky-1990-lungs", cranioventral).value).toBe(3);
  });
});

describe("other organs", () => {
  test.each([
    [5, 0],
    [6, 1],
  ])("18. %d milk spots: class %d (German rule, verified)", (milk_spots, value) => {
    expect(scoreOn("german-rule-liver", { milk_spots }).value).toBe(value);
  });

  test.each([
    // Keratin and ulcer counts 1 to 4 are no area, less than 25, 25-75, more than 75 per cent.
    [80, 0, 4, 1, 5],
    [0, 0, 1, 1, 2],
    [80, 80, 4, 4, 12],
    [10, 10, 2, 2, 8],
  ])(
    "20. keratin %d %, ulcer %d %: K%d U%d, index %d (JAS 2016: first two verified, rest derived)",
    (keratin, ulcer, k, u, value) => {
      const score = scoreOn("stomach-index-2016", { keratin, ulcer });
      expect(score.parts).toEqual({ keratin: k, ulcer: u });
      expect(score.value).toBe(value);
    },
  );

  test("21. stomachs 6,176/2,551/2,088/15,228: 23.71/9.80/8.02/58.47 %, mean 2.0125, any 76.29 % (Polish survey 2024: counts verified, mean derived)", () => {
    const counts = { 0: 6176, 1: 2551, 2: 2088, 3: 15228 };
    const all = spread(counts);
    expect(all.length).toBe(26043);
    expect(Object.values(counts).map((pigs) => ((100 * pigs) / all.length).toFixed(2))).toEqual([
      "23.71",
      "9.80",
      "8.02",
      "58.47",
    ]);
    expect(indexOf("polish-stomach-2024", "mean-polish-stomach", counts).value?.toFixed(4)).toBe("2.0125");
    expect((100 * (indexOf("polish-stomach-2024", "polish-stomach-any", counts).value ?? 0)).toFixed(2)).toBe(
      "76.29",
    );
  });

  test("22. 173 of 400 at grade 3: 43.25 % (38.34-48.26); 5 of 400 at 0: 1.25 % (0.41-2.89); any 98.75 % (Brazil 2014: counts verified, intervals derived)", () => {
    expect(percents(173, 400)).toEqual(["43.25", "38.34", "48.26"]);
    expect(percents(5, 400)).toEqual(["1.25", "0.41", "2.89"]);
    expect(percents(395, 400)[0]).toBe("98.75");
    expect(reference("brazil-stomach-2014", /400/).values).toMatchObject({
      "any lesion": 98.75,
      "grade 3": 43.25,
    });
  });

  test.each([
    [49, 0.49, "free of mange or no problem"],
    [50, 0.5, "not below the limit"],
  ])(
    "28. %d of 100 pigs at grade 1: average %d, %s (US survey: limit verified, equality not stated)",
    (ones, value, name) => {
      const index = indexOf("papular-dermatitis", "average-dermatitis-score", { 0: 100 - ones, 1: ones });
      expect(index).toMatchObject({ value, class: name });
    },
  );
});

describe("exact intervals", () => {
  test.each([
    [0, 10, "30.85"],
    [0, 20, "16.84"],
    [0, 30, "11.57"],
  ])("23. %d of %d: upper limit %s % (exact binomial, derived)", (affected, examined, upper) => {
    expect(percents(affected, examined)[2]).toBe(upper);
  });

  test.each([
    [1, "0.08", "17.22"],
    [5, "5.64", "34.72"],
    [15, "31.30", "68.70"],
    [30, "88.43", "100.00"],
  ])("24. %d of 30: %s-%s % (exact binomial, derived)", (affected, lower, upper) => {
    expect(percents(affected, 30).slice(1)).toEqual([lower, upper]);
  });

  test("25. 28 of 50 herds: 56.0 % (41.25-70.01); 215 of 1,500: 14.33 % (12.60-16.21) (Davies et al. 1996 counts, derived)", () => {
    expect(percents(28, 50)).toEqual(["56.00", "41.25", "70.01"]);
    expect(percents(215, 1500)).toEqual(["14.33", "12.60", "16.21"]);
  });

  test("26. 284 of 436 lungs: 65.14 % (60.46-69.61); the paper prints 65.13 (Pernambuco, derived)", () => {
    expect(percents(284, 436)).toEqual(["65.14", "60.46", "69.61"]);
    expect(reference("piffer-brito-1991", /Pernambuco/).values).toEqual({ affected: 65.13 });
  });

  test("27. 3,249 of 6,380: 50.92 % (49.69-52.16); 6,976 of 15,174: 45.97 % (45.18-46.77), printed 45.9 (SIPAS 2013, derived)", () => {
    expect(percents(3249, 6380)).toEqual(["50.92", "49.69", "52.16"]);
    expect(percents(6976, 15174)).toEqual(["45.97", "45.18", "46.77"]);
    expect(reference("madec-kobisch-1982", /15,174 pigs/).values).toMatchObject({ affected: 45.9 });
  });
});
