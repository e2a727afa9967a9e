/** What goes into the car: counts, pots and formalin, worked out by hand. */
import { describe, expect, it } from "vitest";
import { buildSettings, defaultSettings } from "../../src/cases/settings/settings.ts";
import {
  ageClassNamed,
  ComplaintFault,
  pigsOfComplaint,
  type SamplePlan,
  samplePlan,
} from "../../src/samples/index.ts";

const asked = (text: string, rest: object = {}, settings = defaultSettings): SamplePlan =>
  samplePlan(
    pigsOfComplaint({ text, ages: [], pigs: undefined, healthy: undefined, ...rest }, settings),
    settings,
  );
const lines = ({ bring }: SamplePlan): string[] => bring.map(({ count, what }) => `${count} ${what}`);

describe("a plan", () => {
  it("counts what two pigs with a joint need", () => {
    // Of each: 10 g of joint in two pieces, 10 g of growth plate, 5 g of ribs: 25 g, so 275 ml of pot and 250 ml of formalin.
    const plan = asked("lame finishers", { pigs: 2 });
    expect(lines(plan)).toEqual([
      "2 pots of formalin, 500 ml",
      "2 bags or pots to freeze",
      "6 swabs in transport medium",
      "6 plain tubes",
    ]);
    expect(plan.formalin).toEqual({ tissue: 50, litres: 0.5, ratio: 10 });
    // Valve and bone only where something is found.
    expect(plan.bring.map(({ only }) => only)).toEqual([0, 2, 2, 0]);
  });

  it("keeps gut and brain in pots of their own", () => {
    const scour = asked("scour in weaners", { pigs: 1, healthy: 0 });
    // Gut: (3 + 3 + 2 + 1 + 1) pieces of 3 g, 330 ml. Liver, stomach, node: 6 g, 66 ml.
    expect(lines(scour).slice(0, 2)).toEqual(["1 pot of formalin, 500 ml", "1 pot of formalin, 125 ml"]);
    expect(lines(asked("convulsions in weaners", { pigs: 1 }))[1]).toBe("1 pot of formalin, 1 l");
  });

  it("asks for three fetuses of three litters, and bleeds sows", () => {
    const plan = asked("abortion in sows");
    expect(plan.groups.map(({ ageClass, pigs }) => [ageClass, pigs.length])).toEqual([["aborted", 9]]);
    expect(plan.mates.map(({ number }) => number)).toEqual([5, 5]);
    // One tube of chest fluid and one of stomach content a fetus, one a sow.
    expect(lines(plan)).toContain("28 plain tubes");
  });

  it("of two complaints has the pigs of the one that needs more", () => {
    const plan = asked("cough and scour in weaners");
    expect(plan.sets.map(({ id }) => id)).toEqual(["every-pig", "post-weaning-scour", "respiratory"]);
    expect(plan.groups.map(({ isHealthy, pigs }) => [isHealthy, pigs.length])).toEqual([
      [false, 4],
      [true, 2],
    ]);
  });

  it("takes poison, which no sign asks for, by its words", () => {
    expect(asked("poisoning suspected in finishers").once.map(({ from }) => from)).toEqual(["feed", "water"]);
  });
});

describe("a complaint", () => {
  it("must tell what to sample, and at which age", () => {
    expect(() => asked("hello")).toThrow(ComplaintFault);
    expect(() => asked("scour")).toThrow("--ages");
    expect(asked("scour", { ages: ["suckling"] }).sets.map(({ id }) => id)).toContain("neonatal-scour");
    expect(() => asked("abortion", { ages: ["weaner"] })).toThrow("weaner");
  });

  it("that is denied is none", () => {
    expect(asked("cough, no scour, in weaners").sets.map(({ id }) => id)).not.toContain("post-weaning-scour");
  });

  it.each([
    ["5 wk", "weaner"],
    ["6 d", "suckling"],
    ["118 d", "finisher"],
    ["sows", "adult"],
    ["mummies", "mummy"],
    ["finishers", "finisher"],
    ["old", undefined],
  ])("of pigs called %s means %s", (text, ageClass) => expect(ageClassNamed(text)).toBe(ageClass));
});

describe("the practice", () => {
  const settings = buildSettings(
    {
      format: 1,
      samples: {
        sets: {
          respiratory: {
            leave_out: ["blood into edta-tube"],
            samples: [{ from: "respiratory.lungs", into: "frozen", for: ["archive"], ask: "panel R2" }],
          },
          "our-boars": { extends: "lameness", title: "Boars of the station", words: ["boar station"] },
        },
        pots: ["2.5 l"],
        formalin_ratio: 20,
        containers: { "plain-tube": "10 ml, red cap" },
      },
    },
    "carcase.yaml",
  );

  it("changes sets, pots, formalin and names", () => {
    const plan = asked("cough in finishers", { pigs: 1, healthy: 0 }, settings);
    expect(plan.groups[0]?.samples.map(({ from, into }) => `${from} ${into}`)).toContain(
      "respiratory.lungs frozen",
    );
    expect(lines(plan)).toContain("1 pot of formalin, 2.5 l");
    expect(plan.formalin.litres).toBe((plan.formalin.tissue * 20) / 1000);
    expect(lines(plan).filter((line) => line.includes("EDTA"))).toEqual([]);
    expect(lines(plan).some((line) => line.endsWith("plain tubes, 10 ml, red cap"))).toBe(true);
  });

  it("adds sets of its own", () => {
    const plan = asked("boar station", { ages: ["adult"], pigs: 1 }, settings);
    expect(plan.sets.map(({ id }) => id)).toContain("our-boars");
  });
});
