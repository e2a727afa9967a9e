/** Times of steps and samples against death, opening and each other: what is found, at which place, and what is silent. */
import { describe, expect, it } from "vitest";
import type { Example } from "../../src/lint/index.ts";
import { lintExample } from "./lay-example.ts";

const found = (example: Example): string[] =>
  lintExample(example).findings.map(({ rule, path }) => `${rule} ${path}`);
const step = (text: string): string[] => found({ case: `steps: {${text}}\nsamples: ` });
const sample = (id: string, from: string, rest: string): string => `{id: 01-${id}, from: ${from}, ${rest}}`;
const lungs =
  "{id: 01-L, from: respiratory.lungs, site: 4 pieces, into: formalin, for: [histology], at: 2026-04-20T10:05}";
const samples = (...all: readonly string[]): string => `samples: [${[lungs, ...all].join(", ")}]`;

// The pig died at 09:10 and was opened at 09:40.
describe("a step", () => {
  it.each([
    ["sterile_samples: 2026-04-31T09:50", ["date-impossible steps.sterile_samples"]],
    ["brain_out: 2026-04-20T09:20", ["dates-out-of-order steps.brain_out"]],
    ["gut_opened: 2026-04-20T08:55", ["dates-out-of-order steps.gut_opened"]],
    ["gut_fixed: 2026-04-20T09:05", ["dates-out-of-order steps.gut_fixed"]],
    ["csf: 2026-04-20T08:30", ["dates-out-of-order steps.csf"]],
    ["blood: 2026-04-02T09:05", ["dates-out-of-order steps.blood"]],
    ["blood: 2026-04-25T16:00", ["dates-out-of-order steps.blood"]],
    ["gut_opened: 2026-05-20T10:00", ["dates-out-of-order steps.gut_opened"]],
    ["gut_opened: 2025-04-20T10:00", ["year-off-visit steps.gut_opened"]],
    ["brain_out: 2062-04-20T10:00", ["year-off-visit steps.brain_out"]],
    [
      "brain_out: 2026-04-20T09:20, gut_opened: 2026-04-20T09:25, sterile_samples: 2026-04-20T09:15",
      ["dates-out-of-order opened.at"],
    ],
    // Honest
    ["blood: 2026-04-18T09:05", []],
    ["blood: 2026-04-20T09:12", []],
    ["csf: 2026-04-20T08:50", []],
    ["csf: 2026-04-20T09:15", []],
    ["brain_out: 2026-04-22T08:00", []],
    ["gut_opened: 2026-04-20T08:30Z", []],
  ])("%s: %j", (text, rules) => {
    expect(step(text)).toEqual(rules);
  });

  it("with a wrong time tells nothing about what was taken after it", () => {
    const culture = sample("A", "lymphoid.spleen", "into: chilled, for: [culture], at: 2026-04-20T10:20");
    expect(found({ case: `steps: {gut_opened: 2026-04-20T08:55}\n${samples(culture)}` })).toEqual([
      "dates-out-of-order steps.gut_opened",
    ]);
  });
});

describe("a month", () => {
  const dead = (at: string, state: string): string[] =>
    found({ case: `death: {at: ${at}}\nopened: {state: ${state}}\nsamples: ` });

  it.each([
    ["2026-03-20T09:10", "fresh", ["dates-out-of-order death.at"]],
    ["2026-03-20T09:10", "frozen", []],
    ["2026-04-14T09:10", "frozen", []],
  ])("died %s, opened %s: %j", (at, state, rules) => {
    expect(dead(at, state)).toEqual(rules);
  });

  it("too late on samples is one line, and they are not called late", () => {
    const late = ["A", "B"].map((id) =>
      sample(id, "lymphoid.spleen", "into: chilled, for: [culture], at: 2026-05-20T10:20"),
    );
    const steps = "steps: {gut_opened: 2026-04-20T10:50}\n";
    expect(found({ case: `${steps}${samples(...late)}` })).toEqual(["dates-out-of-order samples[1].at"]);
    const year = `${steps}${samples(...late.slice(1))}`.replace("2026-05", "2027-04");
    expect(found({ case: year })).toEqual(["year-off-visit samples[1].at"]);
  });

  it("later feed may still be fetched", () => {
    const feed = sample("A", "feed", "into: chilled, for: [toxicology], amount: 1 kg, at: 2026-05-20T10:20");
    expect(found({ case: samples(feed) })).toEqual([]);
  });
});

describe("universal time beside local time", () => {
  it("leaves the hours unknown", () => {
    const gut = sample("A", "intestine.jejunum", "into: formalin, for: [histology], at: 2026-04-20T09:20");
    expect(
      found({ case: `death: {at: 2026-04-20T07:10Z}\nopened: {at: 2026-04-20T09:15}\n${samples(gut)}` }),
    ).toEqual([]);
  });

  it("on the evening before is not before the day of the visit", () => {
    const text = "death: {at: 2026-04-19T22:40Z}\nopened: {at: 2026-04-19T23:00Z}\nsamples: ";
    expect(found({ case: text })).toEqual([]);
    expect(found({ case: text.replaceAll("04-19", "04-18") })).toEqual(["opened-before-visit opened.at"]);
  });
});

describe("the brain", () => {
  const half = (id: string, into: string): string =>
    sample(
      id,
      "nervous.brain",
      `into: ${into}, for: [${into === "formalin" ? "histology" : "pcr"}], at: 2026-04-20T10:20`,
    );
  const halves = [half("B", "formalin"), half("C", "chilled")];
  const swab = sample("D", "nervous.meninges", "into: charcoal-medium, for: [culture], at: 2026-04-20T10:40");
  const fluid = sample("D", "csf", "into: plain-tube, for: [culture], at: 2026-04-20T10:40");

  it.each([
    ["a piece before the fluid", samples(...halves, fluid), ["csf-after-brain-out samples[3].at"]],
    ["a piece before the swab", samples(...halves, swab), ["meningeal-swab-late samples[3].at"]],
    [
      "fluid by step and sample",
      `steps: {csf: 2026-04-20T10:40, brain_out: 2026-04-20T10:20}\n${samples(fluid)}`,
      ["csf-after-brain-out samples[1].at"],
    ],
    ["a piece after the fluid", samples(...halves, fluid).replaceAll("10:40", "10:10"), []],
    [
      "halved before the swab",
      `nervous: {brain: {state: normal, taken: halved}}\n${samples(...halves, swab)}`,
      [],
    ],
    [
      "halved before the step of the swab",
      "nervous: {brain: {state: normal, taken: halved}}\nsteps: {brain_out: 2026-04-20T10:30, meningeal_swab: 2026-04-20T10:40}\nsamples: ",
      [],
    ],
  ])("%s", (_name, text, rules) => {
    expect(found({ case: text })).toEqual(rules);
  });

  it.each([
    ["steps: {brain_out: 2026-04-20T10:20}\nnervous: {brain: CLOSED, meninges: CLOSED}", ["nervous.brain"]],
    ["nervous: {brain: {taken: whole, not_examined: skull not opened}, meninges: CLOSED}", ["nervous.brain"]],
    [
      "nervous: {brain: {skull_cut: behind-the-eyes, not_examined: no saw}, meninges: CLOSED}",
      ["nervous.brain"],
    ],
    ["nervous: {brain: CLOSED, meninges: normal}", ["nervous.meninges"]],
    ["nervous: {brain: normal, meninges: CLOSED}", ["nervous.brain"]],
    ["nervous: {brain: CLOSED, meninges: CLOSED}", []],
    ["nervous: {brain: {not_examined: sent uncut}, meninges: normal}", []],
    ["nervous: {brain: {not_assessable: {because: damaged, why: bolt}}, meninges: CLOSED}", []],
  ])("in a closed skull: %s", (text, paths) => {
    const written = text.replaceAll("CLOSED", "{not_examined: skull left closed}");
    expect(found({ case: `${written}\nsamples: ` })).toEqual(
      paths.map((path) => `skull-closed-yet-opened ${path}`),
    );
  });

  it("may go to the laboratory in its head", () => {
    const whole = sample("H", "nervous.brain", "into: chilled, for: [histology, pcr]");
    const closed = "meninges: {not_examined: whole head sent}";
    expect(
      found({
        case: `nervous: {${closed}, brain: {taken: left-in-skull, not_examined: whole head sent}}\n${samples(whole)}`,
      }),
    ).toEqual([]);
    expect(
      found({
        case: `nervous: {${closed}, brain: {not_examined: sent}}\n${samples(whole.replace("into", "site: whole head, into"))}`,
      }),
    ).toEqual([]);
    expect(found({ case: `nervous: {${closed}, brain: {not_examined: sent}}\n${samples(whole)}` })).toEqual([
      "sample-organ-not-examined samples[1].from",
      "histology-unfixed samples[1].into",
    ]);
  });

  it("with fluid drawn and no tube listed is told so", () => {
    const signs =
      "selection: {signs: [convulsions]}\nendocrine: {pituitary: normal}\nnervous: {middle_ears: normal, spinal_cord: normal}";
    const text = `${signs}\nsteps: {csf: 2026-04-20T09:50}\n${samples(...halves)}`;
    const [one] = lintExample({ case: text }).findings;
    expect(one?.rule).toBe("meningitis-without-fluid");
    expect(one?.message).toContain("no sample of cerebrospinal fluid");
  });
});

describe("the whole carcass", () => {
  it("is fixed by the laboratory", () => {
    expect(found({ case: samples(sample("W", "carcass", "into: chilled, for: [histology, pcr]")) })).toEqual(
      [],
    );
  });
});

describe("gut", () => {
  const gut = (id: string, rest: string): string =>
    sample(id, "intestine.ileum", `into: formalin, for: [histology], ${rest}`);
  const opened = "steps: {gut_opened: 2026-04-20T09:43}\n";
  const times = "death: {at: 2026-04-20T09:30}\nopened: {at: 2026-04-20T09:35}\n";

  it.each([
    [
      "fixed after it was opened",
      `${times}${opened}samples: [${gut("A", "at: 2026-04-20T09:48")}]`,
      ["gut-fixed-after-opening samples[0].at"],
    ],
    [
      "of a lesion found in the opened gut, after closed pieces",
      `${times}${opened}samples: [${gut("A", "at: 2026-04-20T09:38")}, ${gut("B", "site: ulcer, at: 2026-04-20T09:48")}]`,
      [],
    ],
    [
      "of a lesion that was looked for, without diarrhoea",
      `${times}${opened}intestine: {ileum: [{process: abscess, distribution: focal, size: 12 mm, severity: mild}]}\nsamples: [${gut("A", "at: 2026-04-20T09:48")}]`,
      [],
    ],
    [
      "chilled for histology, hours late",
      `samples: [${sample("A", "intestine.ileum", "into: chilled, for: [histology], at: 2026-04-20T12:20")}]`,
      ["histology-unfixed samples[0].into"],
    ],
  ])("%s", (_name, text, rules) => {
    expect(found({ case: text })).toEqual(rules);
  });

  it("without a time was fixed at least so late, and that is told once", () => {
    const set = ["jejunum", "ileum", "spiral_colon"].map((part, at) =>
      sample("ABC"[at] ?? "", `intestine.${part}`, "into: formalin, for: [histology]"),
    );
    const text = (died: string): string =>
      `selection: {signs: [diarrhoea]}\ndeath: {at: 2026-04-20T${died}}\nsamples: [${set.join(", ")}]`;
    expect(found({ case: text("09:20") })).toEqual([0, 1, 2].map((at) => `gut-time-missing samples[${at}]`));
    const late = lintExample({ case: text("09:00") }).findings;
    expect(late.map(({ rule }) => rule)).toEqual(Array(3).fill("gut-histology-late"));
    expect(late[0]?.message).toContain("fixed at least 40 min after death");
  });

  it("names the two hours that no setting lengthens", () => {
    const [one] = lintExample({
      settings: "autolysis: {up-to-15: {gut-histology: 5}}",
      case: `samples: [${gut("A", "at: 2026-04-20T11:30")}]`,
    }).findings;
    expect(one?.message).toContain("2 h 20 min after death between 4 and 15 °C (limit 2 h):");
  });

  it("leaves no gap where the number of the sample is blank", () => {
    const { findings } = lintExample({
      case: "samples: [{id: , from: intestine.jejunum, into: formalin, for: [histology], at: 2026-04-20T12:10}]",
    });
    const lost = findings.find(({ rule }) => rule === "gut-histology-lost");
    expect(lost?.message).toContain("samples[0].for: gut was fixed");
  });
});

describe("what is not of the carcass", () => {
  it.each(["feed", "water", "bedding", "oral_fluid"])("has no clock of it: %s", (from) => {
    const text = `death: {at: 2026-04-18T09:10}\nopened: {state: slight-autolysis, note: lay outside}\nsamples: [SAMPLE]`;
    const of = (what: string): string[] =>
      found({ case: text.replace("SAMPLE", sample("A", what, "into: chilled, for: [culture]")) });
    expect(of(from)).toEqual([]);
    expect(of("lymphoid.spleen")).toEqual(["culture-late samples[0].for"]);
  });
});

describe("joints", () => {
  const inflamed =
    "locomotor: {joints: {state: , opened: [left-hock, right-hock], findings: [{process: inflammation, site: left hock, distribution: focal, size: 40 mm, severity: moderate}]}}\n";
  const eroded = inflamed.replace("inflammation", "erosion");
  const lame =
    "selection: {signs: [lameness]}\nendocrine: {adrenals: {left: normal, right: normal}}\nlocomotor: {costochondral_junctions: normal, growth_plates: normal, bone_marrow: normal, muscles: normal}\n";
  const only = (text: string, rule: string): string[] =>
    found({ case: text }).filter((one) => one.startsWith(rule));
  const piece = (from: string, site: string): string =>
    sample("A", from, `site: ${site}, into: formalin, for: [histology], at: 2026-04-20T10:10`);

  it.each([
    ["inflamed", inflamed, "locomotor.joints", "left hock", 1],
    ["inflamed, by the system", inflamed, "locomotor", "left hock", 1],
    ["inflamed, and muscle was fixed", inflamed, "locomotor", "muscle", 0],
    ["eroded", eroded, "locomotor.joints", "left hock", 0],
    ["normal in a lame pig", lame, "locomotor.joints", "left hock", 0],
  ])("%s", (_name, text, from, site, count) => {
    expect(only(`${text}${samples(piece(from, site))}`, "joint-only-fixed")).toHaveLength(count);
  });

  it.each(["left hock", "Left-hock", "left  hock"])("%s is the left hock", (site) => {
    const swab = sample(
      "B",
      "locomotor.joints",
      `site: "${site}", into: charcoal-medium, for: [culture], at: 2026-04-20T10:20`,
    );
    const text = `${inflamed}${samples(piece("locomotor.joints", "left hock"), swab)}`;
    expect(only(text, "joint-swab-after-fixing")).toEqual(["joint-swab-after-fixing samples[2].at"]);
  });
});

describe("blood for culture", () => {
  const blood = sample("A", "blood", "site: heart, into: plain-tube, for: [culture], at: 2026-04-20T10:40");

  it("after the gut was opened is found", () => {
    expect(found({ case: `steps: {gut_opened: 2026-04-20T10:30}\n${samples(blood)}` })).toEqual([
      "culture-after-gut-opened samples[1].at",
    ]);
  });

  it("is named among the samples that are not sterile", () => {
    const text = `steps: {gut_opened: 2026-04-20T10:30, sterile_samples: 2026-04-20T10:40}\n${samples(blood)}`;
    expect(lintExample({ case: text }).findings.map(({ message }) => message)).toEqual([
      expect.stringContaining("01-A may carry gut bacteria"),
    ]);
  });
});

describe("a carcass opened late", () => {
  const text = (more: string): string[] =>
    found({ case: `death: {at: 2026-04-19T18:10}\nopened: {${more}}\nsamples: ` });

  it.each(["place: lab room 3", 'note: "?"'])("is asked where it lay, whatever %s", (more) => {
    expect(text(more)).toContain("carcass-storage-unstated opened.at");
  });

  it("is not asked when the note says so", () => {
    expect(text("place: lab room 3, note: in the cold room overnight")).toEqual([]);
  });
});

describe("a snout sawn too far forward", () => {
  const snout = (section: string): string[] =>
    found({
      case: `respiratory: {turbinates: {section: ${section}, left: {dorsal: 4, ventral: 4}, right: {dorsal: 4, ventral: 4}, septum: marked, grades: {maff-1978: 5, embrapa-1993: 3}}}`,
    });

  it("has not lost a concha by that", () => {
    expect(snout("premolar-1")).toContain("toxin-gene-not-asked respiratory.turbinates");
    expect(snout("rostral-to-premolar-1")).not.toContain("toxin-gene-not-asked respiratory.turbinates");
  });
});

describe("a brain that is fixed and not kept fresh", () => {
  const said = (site: string): string | undefined =>
    lintExample(
      {
        case: `selection: {signs: [convulsions]}\nsamples: [${sample("A", "nervous.brain", `${site}into: formalin, for: [histology]`)}]`,
      },
      { only: ["brain-not-halved"] },
    ).findings[0]?.message;

  it("is all of it only where no part is named", () => {
    expect(said("")).toContain("all of the brain is fixed");
    expect(said("site: stem and cerebellum, ")).toBe(
      "samples[0].into: no part of the brain was kept chilled or frozen: keep one.",
    );
  });
});
