/** What follows from outlines: ratios, asymmetry, septum, affected shares; and what is said when an outline is missing. */
import { describe, expect, it } from "vitest";
import { type Measure, measures, organById } from "../../src/knowledge/index.ts";
import { lungMeasures } from "../../src/measure/measure.ts";
import { lobes, partOf } from "../../src/measure/parts.ts";
import type { Region } from "../../src/measure/region.ts";
import { snoutMeasures } from "../../src/measure/snout.ts";
import { problemsOf, soundFile, svg } from "./drawn.ts";

const box = (id: string, x: number, y: number, width: number, height: number): string =>
  `<rect id="${id}" x="${x}" y="${y}" width="${width}" height="${height}"/>`;

/** Left: cavity 20 x 40, conchae 10 x 10 and 10 x 20; right: cavity 20 x 40, conchae 5 x 10 and 10 x 10. */
const snout = [
  box("cavity-left", 30, 0, 20, 40),
  box("dorsal-left", 35, 2, 10, 10),
  box("ventral-left", 35, 15, 10, 20),
  box("cavity-right", 0, 0, 20, 40),
  box("dorsal-right", 5, 2, 5, 10),
  box("ventral-right", 5, 15, 10, 10),
  box("septum", 24, 0, 2, 40),
];
const without = (...parts: string[]): string =>
  svg(snout.filter((line) => !parts.some((part) => line.includes(`"${part}"`))).join("\n"));

describe("a snout of rectangles, by hand", () => {
  const { snout: found, outlines } = soundFile(without());

  it("has the ratios of Collins et al. and the free area of Done et al.", () => {
    // Perimeters: cavity 120; left conchae 40 + 60, right 30 + 40. Areas: cavity 800; left 100 + 200, right 50 + 100.
    expect(found?.perimeter_ratio.left.value).toBeCloseTo(100 / 120, 12);
    expect(found?.perimeter_ratio.right.value).toBeCloseTo(70 / 120, 12);
    expect(found?.perimeter_ratio.total.value).toBeCloseTo(170 / 240, 12);
    expect(found?.concha_area_fraction.left.value).toBeCloseTo(300 / 800, 12);
    expect(found?.concha_area_fraction.total.value).toBeCloseTo(450 / 1600, 12);
    expect(found?.free_area_percent.right.value).toBeCloseTo(100 * (650 / 800), 10);
    expect(found?.free_area_percent.total.value).toBeCloseTo(100 * (1150 / 1600), 10);
    expect(found?.asymmetry.value).toBeCloseTo(30 / 170, 12);
    expect(found?.septum_deviation.value).toBeCloseTo(0, 9);
  });

  it("lists every outline, in the order of the agreed ids", () => {
    expect(outlines.map(({ part }) => part)).toEqual([
      "cavity-left",
      "dorsal-left",
      "ventral-left",
      "cavity-right",
      "dorsal-right",
      "ventral-right",
      "septum",
    ]);
  });

  it("says what is missing instead of a value, and keeps the other side", () => {
    const { snout: part } = soundFile(without("ventral-left", "septum"));
    expect(part?.perimeter_ratio.left).toEqual({ value: null, missing: ["ventral-left"] });
    expect(part?.perimeter_ratio.right.value).toBeCloseTo(70 / 120, 12);
    expect(part?.free_area_percent.total).toEqual({ value: null, missing: ["ventral-left"] });
    expect(part?.asymmetry).toEqual({ value: null, missing: ["ventral-left"] });
    expect(part?.septum_deviation).toEqual({ value: null, missing: ["septum"] });
  });

  it("takes a concha that is gone as nothing, when that is said", () => {
    const { snout: part } = soundFile(
      without("ventral-right").replace("</svg>", '<circle id="ventral-right-absent" r="1"/></svg>'),
    );
    expect(part?.perimeter_ratio.right.value).toBeCloseTo(30 / 120, 12);
    expect(part?.free_area_percent.right.value).toBeCloseTo(100 * (750 / 800), 10);
  });

  it("is measured in the millimetres of its scale bar", () => {
    const half = soundFile(without().replace("scale-bar-10-mm", "scale-bar-5-mm"));
    expect(half.mm_per_unit).toBe(0.5);
    expect(half.outlines[0]?.area_mm2).toBeCloseTo(200, 9);
    expect(half.outlines[0]?.perimeter_mm).toBeCloseTo(60, 9);
    expect(half.snout?.perimeter_ratio.total.value).toBeCloseTo(170 / 240, 12);
  });
});

describe("the knowledge file", () => {
  it.each(Object.entries(measures) as [string, Measure][])(
    "%s computes its worked examples",
    (key, measure) => {
      for (const { cavity, conchae, left, right, lobe, affected, value } of measure.examples) {
        const [dorsal, ventral] = conchae ?? [];
        let found: number | null | undefined;
        if (cavity !== undefined && dorsal !== undefined && ventral !== undefined) {
          const region = (size: number) => ({ area: size, perimeter: size });
          const regions = new Map([
            ["cavity-left", region(cavity)],
            ["dorsal-left", region(dorsal)],
            ["ventral-left", region(ventral)],
          ]);
          const all = snoutMeasures(regions, undefined);
          found = all?.[key as "perimeter_ratio" | "concha_area_fraction" | "free_area_percent"].left.value;
        } else if (left !== undefined && right !== undefined) {
          const regions = new Map<string, Region>();
          for (const [side, ratio] of [["left", left] as const, ["right", right] as const]) {
            regions.set(`cavity-${side}`, { area: 1, perimeter: 1 });
            regions.set(`dorsal-${side}`, { area: 0, perimeter: ratio });
            regions.set(`ventral-${side}`, { area: 0, perimeter: 0 });
          }
          found = snoutMeasures(regions, undefined)?.asymmetry.value;
        } else if (lobe !== undefined && affected !== undefined) {
          const area = affected.reduce((sum, one) => sum + one, 0);
          const all = lungMeasures(
            new Map([["lobe-accessory", { area: lobe, perimeter: 1 }]]),
            new Map([["accessory", area]]),
          );
          found = all?.affected_percent.accessory?.value;
        }
        expect(found).toBeCloseTo(value, 10);
      }
      // The deviation of the septum has no arithmetic to show; its tests are below.
      expect(measure.examples.length > 0 || key === "septum_deviation").toBe(true);
    },
  );

  it("has the published means of Collins, Backstrom & Brim 1989 and of Hamilton et al. 1999", () => {
    const means = (measure: Measure) => measure.references[0]?.values.map(({ mean }) => mean);
    expect(means(measures.perimeter_ratio)).toEqual([1.54, 1.25, 0.97, 0.73]);
    expect(measures.perimeter_ratio.references[0]?.values.map(({ n }) => n)).toEqual([35, 65, 41, 30]);
    expect(means(measures.free_area_percent)).toEqual([41.12, 49.65, 51.04, 49.88, 50.77]);
  });

  it("gives no value the name that papers use in two senses", () => {
    for (const { title, short } of Object.values(measures) as Measure[])
      expect(`${title} ${short}`).not.toMatch(/turbinate area ratio/i);
  });

  it("knows the same figures as the case format", () => {
    const figures = (organ: string): string[] =>
      Object.keys(organById(organ)?.definition.observations?.measured?.figures ?? {});
    expect([...figures("respiratory.turbinates"), ...figures("respiratory.lungs")].sort()).toEqual(
      Object.keys(measures).sort(),
    );
  });
});

describe("the septum", () => {
  const septum = (drawn: string): number | null | undefined =>
    soundFile(svg(`<g fill="none">${drawn}</g>`)).snout?.septum_deviation.value;

  it("as a line: the greatest distance from the line between its ends", () => {
    // The arc of a circle of radius 25 over a chord of 40: its rise is 25 - √(25² - 20²) = 10.
    expect(septum('<path id="septum" d="M0 0A25 25 0 0 1 0 40"/>')).toBeCloseTo(10, 5);
    expect(septum('<polyline id="septum" points="0 0 3 20 0 40"/>')).toBeCloseTo(3, 9);
    expect(septum('<line id="septum" x1="3" y2="40" x2="9"/>')).toBeCloseTo(0, 9);
  });

  it("as a band that is straight: nothing, however it stands and whatever its ends are", () => {
    expect(septum('<rect id="septum" width="3" height="40" transform="rotate(17)"/>')).toBeCloseTo(0, 6);
    expect(septum('<ellipse id="septum" rx="2" ry="20" transform="rotate(-40)"/>')).toBeCloseTo(0, 6);
    expect(septum('<path id="septum" d="M-3 0L3 0L1 4L1 36L4 40L-4 40L-1 36L-1 4z"/>')).toBeCloseTo(0, 6);
  });

  it("as a band along a parabola: its rise between the ends of the midline", () => {
    // y = 5 (1 - (x / 20)²) ± 1 over -20 to 20; 2 % of the length is left out at either end, so the chord lies at x = ±19.2.
    const rise = 5 * (19.2 / 20) ** 2;
    const band = "M-20-1Q0 9 20-1L20 1Q0 11-20 1z";
    expect(septum(`<path id="septum" d="${band}"/>`)).toBeCloseTo(rise, 2);
    expect(septum(`<path id="septum" d="${band}" transform="rotate(63)"/>`)).toBeCloseTo(rise, 2);
  });
});

describe("lungs", () => {
  const lung = (body: string) => soundFile(svg(body)).lungs?.affected_percent;

  it("share of each lobe: areas of one lobe are added, a lobe without any has 0", () => {
    expect(
      lung(
        [
          box("lobe-left-cranial", 0, 0, 20, 20),
          box("affected-left-cranial-1", 1, 1, 10, 4),
          box("affected-left-cranial-2", 1, 8, 10, 4),
          box("lobe-accessory", 40, 0, 10, 10),
        ].join("\n"),
      ),
    ).toEqual({ left_cranial: { value: 20, missing: [] }, accessory: { value: 0, missing: [] } });
  });

  it("areas in a group of one lobe need no ids of their own", () => {
    const spots =
      '<g id="affected-accessory"><rect width="5" height="2"/><rect y="5" width="5" height="2"/></g>';
    expect(lung(`${box("lobe-accessory", 0, 0, 10, 10)}${spots}`)).toEqual({
      accessory: { value: 20, missing: [] },
    });
  });

  it("an affected area without its lobe has no share", () => {
    expect(lung(box("affected-right-middle-1", 0, 0, 5, 5))).toEqual({
      right_middle: { value: null, missing: ["lobe-right-middle"] },
    });
  });

  it("an id for every lobe of the case format", () => {
    expect(lobes).toHaveLength(7);
    for (const lobe of lobes) {
      expect(partOf(`lobe-${lobe.replace("_", "-")}`)?.kind).toBe("outline");
      expect(partOf(`affected-${lobe.replace("_", "-")}-3`)).toMatchObject({ kind: "affected", lobe });
    }
  });
});

describe("GeoJSON", () => {
  const rectangle = (x: number, y: number, width: number, height: number) => [
    [x, y],
    [x + width, y],
    [x + width, y + height],
    [x, y + height],
    [x, y],
  ];
  const collection = (features: readonly (readonly [object, unknown, string?])[]): string =>
    JSON.stringify(
      {
        type: "FeatureCollection",
        features: features.map(([properties, coordinates, type = "Polygon"]) => ({
          type: "Feature",
          properties,
          geometry: { type, coordinates },
        })),
      },
      null,
      1,
    );

  it("in a written unit", () => {
    const text = collection([
      [{ part: "cavity-left", unit: "cm" }, [rectangle(0, 0, 2, 4)]],
      [{ part: "dorsal-left", unit: "cm" }, [rectangle(0.5, 0.2, 1, 1)]],
      [{ part: "ventral-left", unit: "cm" }, [rectangle(0.5, 1.5, 1, 2)]],
    ]);
    const found = soundFile(text, "pig.geojson");
    expect(found.outlines[0]?.area_mm2).toBeCloseTo(800, 9);
    expect(found.outlines[0]?.perimeter_mm).toBeCloseTo(120, 9);
    expect(found.snout?.perimeter_ratio.left.value).toBeCloseTo(100 / 120, 12);
  });

  it("by a scale bar, with holes and several polygons", () => {
    const text = collection([
      [
        { part: "scale-bar", length: "10 mm" },
        [
          [0, 0],
          [20, 0],
        ],
        "LineString",
      ],
      [
        { part: "lobe-accessory" },
        [[rectangle(0, 0, 40, 40), rectangle(10, 10, 20, 20)], [rectangle(60, 0, 10, 10)]],
        "MultiPolygon",
      ],
      [
        { part: "septum" },
        [
          [0, 0],
          [4, 20],
          [0, 40],
        ],
        "LineString",
      ],
      [
        { name: "note" },
        [
          [0, 0],
          [4, 20],
          [0, 40],
        ],
        "LineString",
      ],
    ]);
    const found = soundFile(text, "pig.geojson");
    expect(found.outlines.find(({ part }) => part === "lobe-accessory")?.area_mm2).toBe(
      (1600 - 400 + 100) / 4,
    );
    expect(found.snout?.septum_deviation.value).toBeCloseTo(2, 9);
    expect(found.passed_over).toEqual(["note"]);
  });

  it.each([
    [{ name: "cavity-left" }],
    [{ name: "Annotation 3", classification: { name: "cavity-left", color: [255, 0, 0] } }],
    [{ name: null, classification: "cavity-left", objectType: "annotation" }],
    [{ part: "cavity-left", name: "the left side" }],
  ])("by the name or the class that a program for annotation writes: %j", (properties) => {
    const text = collection([[{ ...properties, unit: "mm" }, [rectangle(0, 0, 20, 40)]]]);
    expect(soundFile(text, "pig.geojson").outlines).toMatchObject([{ part: "cavity-left", area_mm2: 800 }]);
    const mistyped = text.replace("cavity-left", "Cavity left");
    expect(problemsOf(mistyped, "pig.geojson")).toEqual([expect.stringContaining("part-unknown")]);
  });

  it("takes nothing away for a part inside another part, and adds nothing", () => {
    const outer = rectangle(0, 0, 200, 200);
    const hole = rectangle(20, 20, 100, 100);
    const inside = rectangle(50, 50, 50, 50);
    const size = (polygons: unknown, type = "MultiPolygon") =>
      soundFile(collection([[{ part: "lobe-accessory", unit: "mm" }, polygons, type]]), "a.geojson").outlines;
    const near = (area: number, around: number) => ({
      area_mm2: expect.closeTo(area, 6),
      perimeter_mm: expect.closeTo(around, 8),
    });
    const back = [...inside].reverse();
    for (const part of [inside, back]) {
      expect(size([[outer], [part]])).toMatchObject([near(40_000, 800)]);
      expect(size([outer, part], "Polygon")).toMatchObject([near(37_500, 1000)]);
      // An island in a hole is filled.
      expect(size([[outer, hole], [part]])).toMatchObject([near(32_500, 1400)]);
    }
  });

  it("an affected area in the middle of such a lobe lies inside it", () => {
    const lobe = [[rectangle(0, 0, 200, 200)], [rectangle(50, 50, 50, 50)]];
    const text = collection([
      [{ part: "lobe-accessory", unit: "mm" }, lobe, "MultiPolygon"],
      [{ part: "affected-accessory-1", unit: "mm" }, [rectangle(60, 60, 20, 20)]],
    ]);
    expect(problemsOf(text, "a.geojson")).toEqual([]);
  });

  it("names the line of a feature", () => {
    const text = collection([
      [{ part: "cavity-left", unit: "mm" }, [rectangle(0, 0, 20, 40)]],
      [{ part: "dorsal-left", unit: "mm" }, [rectangle(30, 0, 5, 5)]],
    ]);
    const line = text.split("\n").findIndex((row, index) => index > 5 && /^ {2}\{$/.test(row)) + 1;
    expect(problemsOf(text, "pig.geojson")).toEqual([`concha-outside-cavity ${line}`]);
  });
});
