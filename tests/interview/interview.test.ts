/** The interview without a terminal: what is asked, what it writes, and that nothing is lost. */
import { join } from "node:path";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readCases } from "../../src/cases/index.ts";
import { type Choice, type Desk, type Ended, interview, type Reply } from "../../src/interview/index.ts";
import { put, temporaryFolder } from "../cases/temporary.ts";
import { runs } from "../random.ts";

const folder = temporaryFolder();
put(folder, {
  "visit.yaml":
    "format: 1\nvisit: v\ndate: 2026-03-14\nveterinarian: A. Example\ndefaults:\n  pig: {age: 58 d}\n  opened: {ambient: 12 °C}\n",
});
const file = join(folder, "pig-01.yaml");
const blank =
  "format: 1\ncase: v-01\nselection: {basis: clinical, signs: [cough]}\nrespiratory:\n  lungs:  # look twice\n";

interface Asked {
  readonly text: string;
  readonly choices?: readonly Choice[];
  readonly words?: readonly string[];
}

interface Told extends Ended {
  readonly asked: readonly string[];
  /** The file after each answer. */
  readonly saved: readonly string[];
  readonly said: readonly string[];
}

async function tell(text: string, reply: (asked: Asked, index: number) => Reply): Promise<Told> {
  const asked: string[] = [];
  const saved: string[] = [text];
  const said: string[] = [];
  const answer = (one: Asked): Promise<Reply> => {
    asked.push(one.text);
    return Promise.resolve(asked.length > 600 ? "stop" : reply(one, asked.length - 1));
  };
  const desk: Desk = {
    ask: {
      say: (lines) => said.push(...lines.map((line) => line.text)),
      key: (question, choices) => answer({ text: question, choices }),
      line: (question, complete) => answer({ text: question, words: complete("") }),
    },
    read(now) {
      const { cases, unreadable } = readCases(["-"], { input: { bytes: Buffer.from(now), name: file } });
      const [one] = cases;
      if (one === undefined) throw new Error(now);
      return { one, faults: [...unreadable, ...one.faults].map(({ message }) => message) };
    },
    save(before, after) {
      expect(before).toBe(saved.at(-1));
      saved.push(after);
      return true;
    },
    remarks: () => [],
    notice: () => ["an alarm"],
  };
  const ended = await interview(desk, text, { skipped: new Set(), wanted: false, isStopped: false });
  return { ...ended, asked, saved, said };
}

const recordOf = (text: string): Record<string, unknown> => {
  const [one] = readCases(["-"], { input: { bytes: Buffer.from(text), name: file } }).cases;
  expect(one?.faults).toEqual([]);
  return { ...one?.record };
};

const key =
  (name: string) =>
  ({ choices = [] }: Asked): Reply => ({
    answer: choices.find((choice) => choice.key === name)?.value ?? choices[0]?.value ?? "",
  });
const normal = (asked: Asked): Reply =>
  asked.choices === undefined ? (asked.words?.[0] ? { answer: asked.words[0] } : "skip") : key("n")(asked);

describe("the interview", () => {
  it("asks for alarm signs first, and names each organ before it is normal", async () => {
    const { asked, text, how } = await tell(blank, normal);
    expect(how).toBe("done");
    expect(asked.slice(0, 4).join()).toMatch(/^Vesicle.*blood/is);
    expect(asked.join("\n")).toContain("Respiratory system. Lungs");
    expect(text).toContain("  lungs: normal  # look twice\n");
    // Wanted organs were named besides, and not answered for.
    expect(text).not.toContain("thymus");
  });

  it("writes rest only where every organ of the system was named", async () => {
    const { asked, text } = await tell(blank, normal);
    expect(asked.join("\n")).toMatch(/Body cavities\. Peritoneum.*pleural space/i);
    expect(text).toContain("serosa:\n  rest: normal\n");
    expect(text).toContain("  skin: normal\n");
    expect(text).not.toMatch(/external:\n(?: {2}\w+: \w+\n)* {2}rest/);
  });

  it("stops asking for what would be cut where an alarm sign was seen", async () => {
    const { asked, how, said, text } = await tell(blank, (one) =>
      one.text.startsWith("Vesicle") ? key("s")(one) : normal(one),
    );
    expect(how).toBe("alarm");
    expect(said).toContain("an alarm");
    expect(asked.join("\n")).not.toContain("Lungs");
    expect(asked.join("\n")).toContain("treated");
    expect(text).toContain("vesicles: seen");
  });

  it("asks for a lesion what its process asks, and says what does not fit", async () => {
    const replies: Record<string, Reply> = {
      "Respiratory system. Lungs": { answer: "finding" },
      "Which one": { answer: "respiratory.lungs" },
      "Lungs: what is wrong": { answer: "consol" },
      "Lungs, consolidation: where": { answer: "left middle lobe" },
      "Lungs, consolidation: how it lies": { answer: "cranio" },
      "Lungs, consolidation: share": { answer: "15" },
    };
    const once = new Map(Object.entries(replies));
    let misses = 0;
    const { text, said } = await tell(blank, (one) => {
      if (one.text.includes("left cranial") && misses++ === 0) return { answer: "400" };
      const found = [...once].find(([start]) => one.text.startsWith(start));
      if (found === undefined) return normal(one);
      once.delete(found[0]);
      return found[1];
    });
    expect([...once.keys()]).toEqual([]);
    expect(text).toContain("process: consolidation, site: left middle lobe");
    expect(text).toContain("extent: 15 %");
    expect(text).toContain("distribution: cranioventral");
    expect(said.join("\n")).toMatch(/left_cranial.*400/);
  });

  /** Answers by the beginning of the question, each once; all else is normal. */
  const telling = async (text: string, replies: Readonly<Record<string, Reply>>) => {
    const once = new Map(Object.entries(replies));
    const told = await tell(text, (one) => {
      const found = [...once].find(([start]) => one.text.startsWith(start));
      if (found === undefined) return normal(one);
      once.delete(found[0]);
      return found[1];
    });
    expect([...once.keys()], told.asked.join("\n")).toEqual([]);
    return { ...told, record: recordOf(told.text) };
  };
  const enteric =
    "format: 1\ncase: v-03\nprotocol: enteric\nselection: {basis: clinical, signs: [diarrhoea], treated: no}\n";

  it("asks for each sample in the step in which it is due, and for the time of gut", async () => {
    const { record, asked } = await telling(enteric, {
      "Are samples taken from this pig (8 due)": { answer: "yes" },
      "Taken: Blood, plain tube, for serology": { answer: "no" },
      "Taken: Jejunum, formalin, for histology": { answer: "yes" },
      "03-A, Jejunum: when it went into formalin": { answer: "0942" },
      "Taken: Ileum, formalin": { answer: "yes" },
      "03-B, Ileum: when": "skip",
      "Taken: Ileum, chilled, for PCR and culture": { answer: "yes" },
    });
    expect(record.samples).toEqual([
      { id: "03-A", from: "intestine.jejunum", into: "formalin", for: ["histology"], at: "2026-03-14T09:42" },
      { id: "03-B", from: "intestine.ileum", into: "formalin", for: ["histology"] },
      { id: "03-C", from: "intestine.ileum", into: "chilled", for: ["pcr", "culture"] },
    ]);
    const at = (start: string): number => asked.findIndex((text) => text.startsWith(start));
    expect(at("Taken: Jejunum")).toBeLessThan(at("Liver and pancreas"));
    expect(at("Taken: Spiral colon")).toBeGreaterThan(0);
  });

  it("asks once whether samples are taken, of none where the protocol goes by no signs, nor beside ill pigs", async () => {
    const gate = (texts: readonly string[]) => texts.filter((text) => /samples|^Taken/.test(text));
    expect(gate((await tell(enteric, normal)).asked)).toEqual(["Are samples taken from this pig (8 due)?"]);
    for (const [word, other] of [
      ["enteric", "slaughter-check"],
      ["clinical", "comparison"],
    ] as const)
      expect(gate((await tell(enteric.replace(word, other), normal)).asked)).toEqual([]);
  });

  it("asks for the edge of a marked lesion, for tests, and for what it all adds up to", async () => {
    const found =
      "format: 1\ncase: v-04\nprotocol: respiratory\nselection: {basis: comparison, signs: [none], treated: no}\nrespiratory:\n  trachea: [{process: haemorrhage, distribution: focal, size: 4 mm, severity: marked}]\n";
    const { record, text, asked } = await telling(found, {
      "Are samples taken from this pig (its marked lesion has none)": { answer: "yes" },
      "Taken: Trachea, edge of lesion, formalin, for histology": { answer: "yes" },
      "Taken: Trachea, edge of lesion, chilled": { answer: "yes" },
      "04-B, Trachea: for which tests": { answer: "pcr, cult" },
      "Morphologic diagnosis": {
        answer: "Trachea: haemorrhage, focal, acute, marked; Lungs: no pneumonia",
      },
      "What the cause rests on so far": { answer: "pending" },
    });
    expect(record.samples).toEqual([
      {
        id: "04-A",
        from: "respiratory.trachea",
        into: "formalin",
        for: ["histology"],
        site: "edge of lesion",
      },
      {
        id: "04-B",
        from: "respiratory.trachea",
        into: "chilled",
        site: "edge of lesion",
        for: ["pcr", "culture"],
      },
    ]);
    expect(record.diagnosis).toEqual({
      morphologic: ["Trachea: haemorrhage, focal, acute, marked", "Lungs: no pneumonia"],
      basis: "pending",
    });
    expect(asked.slice(-2).map((one) => one.slice(0, 10))).toEqual(["Morphologi", "What the c"]);
    // Without a lesion there is nothing to name.
    expect((await tell(blank, normal)).asked.join("\n")).not.toContain("Morphologic");
    expect(text).toContain("process: haemorrhage");
  });

  it("takes the grades of conchae without a finding", async () => {
    const { record } = await telling(blank.replace("cough", "sneezing"), {
      "Respiratory system. Turbinates": { answer: "grades" },
      "Turbinates (conchae) and nasal septum: left dorsal concha": { answer: "1" },
      "Turbinates (conchae) and nasal septum: left ventral concha": { answer: "2" },
      "Turbinates (conchae) and nasal septum: right dorsal concha": { answer: "0" },
      "Turbinates (conchae) and nasal septum: right ventral concha": { answer: "1" },
    });
    expect(record.respiratory).toMatchObject({
      turbinates: { left: { dorsal: 1, ventral: 2 }, right: { dorsal: 0, ventral: 1 }, septum: "straight" },
    });
  });

  it("asks what prevents a look, and what had happened", async () => {
    const { record } = await telling(blank, {
      "Body cavities. ": { answer: "not_assessable" },
      "Which one": { answer: "all" },
      "Peritoneum and abdominal cavity, pleural space: what prevents it": { answer: "autolysed" },
      Autolysed: { answer: "dead for a day in the sun" },
      "Intestine. Mesentery": { answer: "not_assessable" },
      "Mesentery and its root: what prevents it": { answer: "damaged" },
      Damaged: "skip",
    });
    const because = { not_assessable: { because: "autolysed", why: "dead for a day in the sun" } };
    expect(record.serosa).toEqual({ peritoneum: because, pleural_space: because });
    expect(record.intestine).toMatchObject({ mesentery: { not_assessable: { because: "damaged" } } });
  });

  it("goes back to what stood there before", async () => {
    let times = 0;
    const { saved } = await tell(blank, (one) =>
      one.text.includes("Swelling of throat") && times++ === 0 ? "back" : normal(one),
    );
    expect(saved[3]).toBe(saved[1]);
  });

  it("goes on where it was stopped", async () => {
    const whole = await tell(blank, normal);
    const part = await tell(blank, (one, index) => (index === 12 ? "stop" : normal(one)));
    expect(part.how).toBe("stopped");
    expect((await tell(part.text, normal)).text).toBe(whole.text);
  });

  it("loses nothing that was answered, whatever is answered", async () => {
    const choice = fc.nat(999);
    await fc.assert(
      fc.asyncProperty(fc.array(choice, { minLength: 20, maxLength: 150 }), async (numbers) => {
        const { saved } = await tell(blank, ({ choices, words = [] }, index) => {
          const number = numbers[index];
          if (number === undefined) return "stop";
          if (number % 11 === 0) return "skip";
          const options =
            choices?.map(({ value }) => value) ?? (words.length > 0 ? words : ["20", "0910", "a, b: c"]);
          return { answer: options[number % options.length] ?? "" };
        });
        for (const [index, after] of saved.entries()) {
          const before = saved[index - 1];
          if (before !== undefined) expect(lost(before, after)).toEqual([]);
        }
      }),
      { numRuns: Math.ceil(runs(100) / 10) },
    );
  });
});

/** Words and values of a text that another one does not have: blanks apart, an answer takes nothing out. */
function lost(before: string, after: string): string[] {
  const words = (text: string): string[] => text.split(/[\s,{}[\]]+/).filter((word) => word !== "");
  const there = words(after);
  return words(before).filter((word) => !there.includes(word));
}
