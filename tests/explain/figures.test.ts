/** Figures of the scales: which scale has one and why, and whether what is drawn can be so in a pig. */
import { describe, expect, it } from "vitest";
import { lobeNames } from "../../src/drawings/lungs.ts";
import { lamellae, septumAt, thick } from "../../src/drawings/snout-section.ts";
import { basalLamella, cavity, scrolls } from "../../src/drawings/snout-shapes.ts";
import {
  bothAt,
  examples,
  type Half,
  losses,
  normal,
  type State,
  septa,
} from "../../src/drawings/snout-states.ts";
import type { Point } from "../../src/drawings/svg.ts";
import { scaleFigure } from "../../src/explain/figures/index.ts";
import type { Scale } from "../../src/knowledge/index.ts";
import { scales } from "../../src/knowledge/scales.ts";

/** Of these the page has the words of the grades in a table, if there are any, and a drawing could add nothing. */
const withoutFigure: Readonly<Record<string, string>> = {
  "body-condition": "read by eye and hand",
  bursitis: "size and number together",
  "baker-1989-kidneys": "spots all over, or not",
  "diana-2017-ears": "blood and infection together",
  "hansen-2024-navel": "one limit",
  "hernia-three-sizes": "sizes of things to compare with",
  "lund-2003-shoulders": "depth of an ulcer, tissue by tissue",
  "zoric-2009-skin": "kind of wound",
  "zoric-2009-soles": "share and loss of horn together",
  "carcass-abscess": "names of classes, read for the whole carcass",
  "danish-joints-1995": "the grades between the ends could not be read",
  "danish-stomach-grade": "the steps within a kind of lesion could not be read",
  "german-key-tail-wound": "kind of wound, with one limit of size",
  "german-rule-liver": "one limit",
  "german-rule-pericardium": "two words",
  "italian-liver-grade": "the limits could not be read",
  "kritas-morrison-2007": "kinds of lesion",
  "madec-kobisch-1982-pleurisy": "the cut points could not be read",
  "milk-spots-present": "present or absent",
  "opriessnig-2004-nodes": "multiples of the normal size, read by eye",
  "papular-dermatitis": "extent, read by eye",
  "pericarditis-three-classes": "three words",
  "polish-stomach-2024": "kinds of lesion",
  "rutter-1984": "one limit",
  "swaby-gregory-2012": "kinds of lesion",
  "valros-2020": "kind of wound, with one limit of size",
};

const named = (id: string): Scale => {
  const scale = scales.get(id);
  if (scale === undefined) throw new Error(`no scale ${id}`);
  return scale;
};
const figureOf = (id: string): string => scaleFigure(named(id)) ?? "";

describe("which scales have a figure", () => {
  it("all but those of which a drawing would say no more than the table", () => {
    const none = [...scales.values()].filter((scale) => scaleFigure(scale) === undefined).map(({ id }) => id);
    expect(none.sort()).toEqual(Object.keys(withoutFigure).sort());
  });

  it("every scale of the snout and of the lungs", () => {
    const owed = [...scales.values()].filter(({ organ }) =>
      ["respiratory.turbinates", "respiratory.lungs"].includes(organ),
    );
    expect(owed.length).toBeGreaterThan(15);
    expect(owed.filter((scale) => scaleFigure(scale) === undefined)).toEqual([]);
  });
});

const drawn = [...scales.keys()].filter((id) => figureOf(id) !== "");

describe.each(drawn)("the figure of %s", (id) => {
  const svg = figureOf(id);

  it("says in words what it shows, for light and dark paper, without scripts or outside files", () => {
    expect(svg).toMatch(/^<svg [^>]*role="img" aria-labelledby="title desc">/);
    expect(svg).toMatch(/<title id="title">[^<]{10,}<\/title>\n<desc id="desc">[^<]{10,}<\/desc>/);
    expect(svg).toContain("prefers-color-scheme: dark");
    expect(svg).not.toMatch(/NaN|undefined|Infinity|<script|href=/);
  });

  it("keeps its words on the paper, at 7.5 units a letter and 8.4 a bold one", () => {
    const texts = [
      ...svg.matchAll(/<text x="([^"]*)" y="([^"]*)" class="([^"]*)"(?: text-anchor="(\w+)")?>([^<]*)</g),
    ];
    expect(texts.length).toBeGreaterThan(0);
    for (const [, x, y, look = "", anchor = "start", words = ""] of texts) {
      const long = words.length * (look.includes("strong") ? 8.4 : 7.5);
      const from =
        Number(x) - { start: 0, middle: long / 2, end: long }[anchor as "start" | "middle" | "end"];
      expect(from, words).toBeGreaterThanOrEqual(0);
      expect(from + long, words).toBeLessThanOrEqual(720);
      expect(Number(y)).toBeGreaterThan(0);
    }
  });
});

const sides = ["left", "right"] as const;
const conchae = ["dorsal", "ventral"] as const;
const linesOf = (state: State, side: "left" | "right"): Point[][] =>
  conchae.flatMap((concha) => lamellae(state[side], concha, side === "left" ? state.septum : -state.septum));

/** Whether a point lies in the cavity, by counting crossings of a ray (even-odd rule). */
function inCavity([x, y]: Point): boolean {
  const outline: Point[] = [[0, 44], ...cavity, [0, 234]];
  return (
    outline.filter(([x1, y1], index) => {
      const [x2, y2] = outline[(index + 1) % outline.length] ?? [0, 0];
      return y1 > y !== y2 > y && x < x1 + ((x2 - x1) * (y - y1)) / (y2 - y1);
    }).length %
      2 ===
    1
  );
}

/** Tissue that is left of one side: length of all its lamellae. */
const length = (half: Half): number =>
  conchae
    .flatMap((concha) => lamellae(half, concha, 0))
    .flatMap((points) =>
      points.slice(1).map(([x, y], index) => {
        const [a, b] = points[index] ?? [x, y];
        return Math.hypot(x - a, y - b);
      }),
    )
    .reduce((sum, one) => sum + one, 0);

const states: readonly (readonly [string, State])[] = [
  ...Object.entries(examples).flatMap(([id, list]) =>
    list.map((state, grade) => [`${id}, grade ${grade}`, state] as const),
  ),
  ...losses.map((half, grade) => [`concha at ${grade}`, bothAt(half)] as const),
  ...Object.entries(septa).map(([word, off]) => [`septum ${word}`, { ...normal, septum: off }] as const),
];

describe.each(states)("the section drawn for %s", (_, state) => {
  it.each(sides)("has its conchae within the cavity and clear of the septum (%s)", (side) => {
    const off = side === "left" ? state.septum : -state.septum;
    for (const [x, y] of linesOf(state, side).flat()) {
      expect(inCavity([x, y])).toBe(true);
      expect(x - septumAt(off, y)).toBeGreaterThan(thick);
    }
  });
});

describe("the normal section", () => {
  const floor = 235;
  const heights = linesOf(normal, "left").map((points) => points.map(([, y]) => y));

  it("is alike on both sides, with a straight septum", () => {
    expect(normal.left).toEqual(normal.right);
    expect(normal.septum).toBe(0);
  });

  it("has a ventral concha of two scrolls from one lamella at the wall, and a small dorsal one at the wall above", () => {
    const [dorsal = [], basal = [], upper = [], lower = []] = heights;
    expect(Math.max(...dorsal)).toBeLessThan(Math.min(...upper));
    expect(Math.max(...upper)).toBeLessThanOrEqual(Math.min(...basal) + 2);
    expect(Math.min(...lower)).toBeGreaterThanOrEqual(Math.min(...basal));
    expect(
      length({ ...normal.left, upper: { size: 0, turns: 0 }, lower: { size: 0, turns: 0 } }),
    ).toBeLessThan(length(normal.left) / 2);
    const ends = [basalLamella[0], scrolls.dorsal.root[0]];
    for (const [x, y] of ends.flatMap((one) => (one === undefined ? [] : [one]))) {
      expect(inCavity([x, y])).toBe(true);
      expect(inCavity([x + 7, y - 3])).toBe(false);
    }
  });

  it("has no wide gap below the ventral concha: less than a twentieth of the height of the cavity", () => {
    const lowest = Math.max(...heights.flat()) + thick / 2;
    expect(floor - lowest).toBeGreaterThan(0);
    expect(floor - lowest).toBeLessThan((floor - 44) / 20);
  });
});

describe.each(Object.entries(examples))("the examples of %s", (id, list) => {
  it("are one for each grade, from a normal section to an empty cavity", () => {
    expect(list.length).toBe(Object.keys(named(id).meaning ?? {}).length);
    expect(list[0]).toEqual(normal);
    const last = list.at(-1) ?? normal;
    for (const side of sides) {
      expect(last[side].upper.size + last[side].lower.size).toBe(0);
      expect(length(last[side])).toBeLessThan(length(normal.left) / 6);
    }
  });

  it("lose more with every grade: the lower scroll of the ventral concha first, then the upper, then the dorsal concha", () => {
    const left = list.map((state) => length(state.left) + length(state.right));
    for (const [grade, one] of left.slice(1).entries()) expect(one).toBeLessThan(left[grade] ?? 0);
    for (const side of sides)
      for (const { [side]: half } of list) {
        const [dorsal, upper, lower] = [half.dorsal, half.upper, half.lower].map(
          ({ size, turns }) => size * turns,
        );
        expect(lower).toBeLessThanOrEqual(upper ?? 0);
        if ((upper ?? 0) > 0) expect(dorsal).toBeGreaterThanOrEqual((upper ?? 0) * 0.9);
      }
    const septum = list.map((state) => state.septum);
    expect(septum).toEqual(septum.toSorted((a, b) => a - b));
  });
});

describe("the snout section", () => {
  it("names each part where it is read, with its range", () => {
    const words = figureOf("polloni-2018").replaceAll(/<\/text>\s*<text[^>]*>/g, " ");
    for (const [name, { max }] of Object.entries(named("polloni-2018").parts))
      expect(words).toContain(`${name} (0 to ${max})`);
  });

  it("names the anatomy where the section is graded as a whole", () => {
    for (const name of [
      "dorsal concha",
      "upper scroll",
      "lower scroll",
      "basal lamella",
      "vomer",
      "hard palate",
    ])
      expect(figureOf("maff-1978")).toContain(`>${name}<`);
  });
});

describe("the lung map", () => {
  it("has the weight of each lobe written in", () => {
    for (const { weight } of Object.values(named("christensen-1999").parts))
      expect(figureOf("christensen-1999")).toContain(`>${weight}</text>`);
  });

  it("names every part that is read as the data name it", () => {
    for (const { parts, organ } of scales.values())
      if (organ === "respiratory.lungs" && "left cranial lobe" in parts)
        for (const [lobe] of Object.entries(parts).filter(([, { read }]) =>
          read.startsWith("consolidation."),
        ))
          expect(lobeNames.map((one) => `${one.replace("_", " ")} lobe`)).toContain(lobe);
    const words = figureOf("goodwin-1971").replaceAll(/<\/text>\s*<text[^>]*>/g, " ");
    for (const part of Object.keys(named("goodwin-1971").parts)) expect(words).toContain(part);
  });

  it("says which side is seen, and what is not read", () => {
    expect(figureOf("goodwin-1971")).toContain("dorsal view");
    expect(figureOf("madec-kobisch-1982-six-lobes")).toContain("accessory lobe: not read");
    expect(figureOf("madec-kobisch-1982")).not.toContain("not read");
  });
});

describe("cut points", () => {
  it("show on which side the cut point itself lies", () => {
    // German rule: exactly 10 per cent is class 0, so its segment ends filled and the next begins with a ring; 30 likewise.
    const dots = [
      ...figureOf("german-rule-pleura").matchAll(/<circle cx="([\d.]+)"[^>]*class="(dot|ring)"/g),
    ];
    const at = (share: number): string => String(190 + (share / 100) * 490);
    const kinds = (share: number): string[] =>
      dots.filter(([, x]) => x === at(share)).map(([, , kind]) => kind ?? "");
    expect(kinds(10)).toEqual(["dot", "ring"]);
    expect(kinds(30)).toEqual(["dot", "ring"]);
    // Three quarters of the Madec grades: exactly 25 per cent counts 2, so the segment below ends with a ring.
    const madec = [
      ...figureOf("madec-kobisch-1982").matchAll(/<circle cx="([\d.]+)"[^>]*class="(dot|ring)"/g),
    ];
    expect(madec.filter(([, x]) => x === at(25)).map(([, , kind]) => kind)).toEqual(["ring", "dot"]);
  });
});
