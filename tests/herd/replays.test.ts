/**
 * Published surveys played through the real reader: herds of YAML records with the published grade distribution, slaughtered and
 * drawn at random, must give the published indices and percentages. Herds are smaller than the surveys where that keeps every
 * printed digit.
 */
import { beforeAll, describe, expect, test } from "vitest";
import { type HerdReport, herdEstimates } from "../../src/herd/index.ts";
import { scoreCases } from "../../src/score/index.ts";
import { consolidation, type Json, organ, snout } from "../score/pigs.ts";
import { archiveOf, farm, visit } from "./archive.ts";

interface Survey {
  readonly scales: readonly string[];
  readonly indicators?: readonly string[];
}

/** A batch of one slaughter day. @param pigs how many pigs have each record */
function batchOf(
  pigs: readonly (readonly [number, Json])[],
  { scales, indicators = [] }: Survey,
): HerdReport {
  const records = pigs.flatMap(([count, record]) => Array<Json>(count).fill(record));
  const files: Record<string, object> = {
    "hazel-farm/farm.yaml": farm("hazel-farm"),
    "hazel-farm/2026-05-04/visit.yaml": visit("hazel-2026-05-04", "2026-05-04"),
  };
  for (const [place, record] of records.entries())
    files[`hazel-farm/2026-05-04/pig-${place + 1}.yaml`] = {
      format: 1,
      case: `hazel-2026-05-04-${place + 1}`,
      protocol: "slaughter-check",
      pig: { group: "finishers", class: "finisher" },
      selection: { basis: "random" },
      death: { manner: "slaughtered" },
      ...record,
    };
  const archive = archiveOf(files);
  expect(archive.cases.flatMap(({ faults }) => faults)).toEqual([]);
  for (const { scores } of scoreCases(archive, { scales }).cases)
    for (const { value } of scores) expect(value).not.toBeNull();
  return herdEstimates(archive, { scales, indicators });
}

const scoreOf = ({ scores }: HerdReport, scale: string) => {
  const found = scores.filter((one) => one.scale === scale);
  expect(found.length).toBe(1);
  const [only] = found;
  if (only === undefined) throw new Error(`no scores on ${scale}`);
  return only;
};

const indexIn = (report: HerdReport, scale: string, id: string) => {
  const index = scoreOf(report, scale).indices.find((one) => one.id === id);
  if (index === undefined) throw new Error(`no index ${id}`);
  return index;
};

/** Per cent of pigs that answer yes, to one decimal. */
const percentOf = ({ estimates }: HerdReport, indicator: string): string => {
  const found = estimates.find((one) => one.indicator === indicator);
  return (100 * (found?.proportion ?? Number.NaN)).toFixed(1);
};

/** Per cent of pigs at each grade or a higher one. */
const atOrAbove = (report: HerdReport, scale: string, decimals: number): string[] =>
  (scoreOf(report, scale).at_or_above ?? []).map(({ share }) =>
    (100 * (share ?? Number.NaN)).toFixed(decimals),
  );

/** A record for each pleurisy score, through the words of both sides. */
const pleura = [
  ["none", "none"],
  ["cranioventral", "none"],
  ["none", "dorsocaudal-focal"],
  ["dorsocaudal-focal", "dorsocaudal-focal"],
  ["dorsocaudal-extensive", "dorsocaudal-extensive"],
].map(([left, right]) => organ("respiratory.pleura", { pleurisy: { left, right } }));
const pleurisy = (counts: readonly number[]) =>
  counts.map((count, score): readonly [number, Json] => [count, pleura[score] ?? {}]);

const graded = (scale: string, counts: readonly number[]) =>
  counts.map((count, grade): readonly [number, Json] => [
    count,
    organ("respiratory.turbinates", snout(Math.min(grade, 4), { grades: { [scale]: grade } })),
  ]);

describe("pleurisy of Italian heavy pigs 2008-2011, 14,195 pigs in 139 batches (SIPAS 2011)", () => {
  let report: HerdReport;
  beforeAll(() => {
    report = batchOf(pleurisy([580, 178, 143, 83, 16]), {
      scales: ["dottori-2007"],
      indicators: ["pleurisy", "pleurisy-dorsocaudal"],
    });
  });

  test("published: index 0.60, in the third quarter of those batches", () => {
    const index = indexIn(report, "dottori-2007", "pleuropneumonia-index");
    expect(index.value?.toFixed(2)).toBe("0.60");
    expect(index.class).toBe("third quarter");
    expect(index.population).toContain("14,195 pigs");
  });

  test("published: 42 % with pleurisy, 24.2 % dorsocaudal, 1.6 % at grade 4", () => {
    expect(percentOf(report, "pleurisy")).toBe("42.0");
    expect(percentOf(report, "pleurisy-dorsocaudal")).toBe("24.2");
    expect(atOrAbove(report, "dottori-2007", 1)).toEqual(["42.0", "24.2", "9.9", "1.6"]);
  });
});

describe("snouts of UK pigs killed March to July 1974, 2,701 snouts (abattoir survey)", () => {
  test("published: 75.7 % suspicious, 44.7 % obvious, 17.5 % severe", () => {
    // Of 17.5 % at grade 3 or more the survey does not say how many are at 4 and 5.
    const report = batchOf(graded("maff-1978", [243, 310, 272, 175]), {
      scales: ["maff-1978"],
      indicators: ["snout-grade-2-up", "snout-grade-3-up"],
    });
    expect(atOrAbove(report, "maff-1978", 1).slice(0, 3)).toEqual(["75.7", "44.7", "17.5"]);
    expect(percentOf(report, "snout-grade-2-up")).toBe("44.7");
    expect(percentOf(report, "snout-grade-3-up")).toBe("17.5");
    expect(indexIn(report, "maff-1978", "snouts-grade-3-up").value).toBe(0.175);
  });
});

describe("stomachs of Polish pigs 2024, 26,043 stomachs (Porcine Health Management 2024)", () => {
  test("published counts: mean 2.01 (derived), 76.29 % with a lesion, 58.47 % with an ulcer", () => {
    const stomach = (keratin: number, erosion: number, ulcer: number) =>
      organ("stomach.pars_oesophagea", { keratin, erosion, ulcer });
    // 561 pigs: the smallest herd in which every printed digit comes out.
    const report = batchOf(
      [
        [133, stomach(0, 0, 0)],
        [55, stomach(40, 0, 0)],
        [45, stomach(40, 10, 0)],
        [328, stomach(40, 10, 20)],
      ],
      { scales: ["polish-stomach-2024", "swaby-gregory-2012"] },
    );
    for (const scale of ["polish-stomach-2024", "swaby-gregory-2012"]) {
      expect(scoreOf(report, scale).mean?.toFixed(2)).toBe("2.01");
      expect(atOrAbove(report, scale, 2)).toEqual(["76.29", "66.49", "58.47"]);
    }
    const any = indexIn(report, "polish-stomach-2024", "polish-stomach-any");
    expect((100 * (any.value ?? 0)).toFixed(2)).toBe("76.29");
  });
});

describe("snouts of Santa Catarina 1985, 3,607 heads of 133 herds (Sobestiansky, Piffer & Freitas 1990)", () => {
  test.each([
    ["0.69 with the printed total of 100.8 as divisor", [526, 314, 119, 49], "0.69"],
    ["0.70 over 100", [518, 314, 119, 49], "0.70"],
  ])("index %s (derived): moderately to severely affected", (_, counts, value) => {
    const report = batchOf(graded("embrapa-1993", counts), { scales: ["embrapa-1993"] });
    const index = indexIn(report, "embrapa-1993", "embrapa-index");
    expect(index.value?.toFixed(2)).toBe(value);
    expect(index.class).toBe("moderately to severely affected");
  });
});

describe("lungs and pleura of Italian heavy pigs, 4,889 pigs in 48 batches (Merialdi et al. 2012)", () => {
  test("published: consolidation 46.4 %, Madec 1.03; pleurisy 47.5 %, 0.83; dorsocaudal 25.1 %, index 0.61", () => {
    const lungs = (lobes: Parameters<typeof consolidation>[0]) =>
      organ("respiratory.lungs", { consolidation: consolidation(lobes) }).respiratory as Json;
    const lung = [lungs({}), lungs({ right_middle: 30 }), lungs({ right_middle: 30, left_cranial: 5 })];
    // 464 of 1000 affected, 362 at 2 and 102 at 3: sum 1030. The two organs are spread over the pigs independently.
    const lungsOf = [
      ...Array<number>(536).fill(0),
      ...Array<number>(362).fill(1),
      ...Array<number>(102).fill(2),
    ];
    const scores = pleurisy([525, 224, 147, 104]).flatMap(([count, record]) =>
      Array<Json>(count).fill(record),
    );
    const report = batchOf(
      scores.map((record, place) => {
        const other = lung[lungsOf[(place * 7) % 1000] ?? 0];
        return [1, { respiratory: { ...(record.respiratory as Json), ...other } }] as const;
      }),
      {
        scales: ["madec-kobisch-1982", "dottori-2007"],
        indicators: ["lung-consolidation", "pleurisy", "pleurisy-dorsocaudal"],
      },
    );
    expect(percentOf(report, "lung-consolidation")).toBe("46.4");
    expect(percentOf(report, "pleurisy")).toBe("47.5");
    expect(percentOf(report, "pleurisy-dorsocaudal")).toBe("25.1");
    expect(indexIn(report, "madec-kobisch-1982", "mean-lung-score")).toMatchObject({
      class: "third quarter",
    });
    expect(scoreOf(report, "madec-kobisch-1982").mean?.toFixed(2)).toBe("1.03");
    // Severity among affected, worked from the published mean and prevalence: 1.03 / 0.464.
    expect(scoreOf(report, "madec-kobisch-1982").affected).toEqual({ pigs: 464, mean: 1030 / 464 });
    expect(scoreOf(report, "dottori-2007").mean?.toFixed(2)).toBe("0.83");
    expect(indexIn(report, "dottori-2007", "pleuropneumonia-index").value?.toFixed(2)).toBe("0.61");
  });
});
