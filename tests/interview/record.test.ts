/** `carcase record` in a terminal of 80 columns: what is typed, what is seen, and what stands in the file. */
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { put, temporaryFolder } from "../cases/temporary.ts";
import { carcase } from "../end-to-end/run.ts";
import { runs } from "../random.ts";
import { Terminal } from "./terminal.ts";

/** 200 in a long search. */
const kills = runs(20);
const folder = temporaryFolder();
const blank =
  "format: 1\ncase: v-01\nprotocol: respiratory\npig: {age: 58 d, group: nursery-2}\nselection: {basis: clinical, signs: [cough], treated: no}\n";
const visit = "format: 1\nvisit: v\ndate: 2026-03-14\nveterinarian: A. Example\n";

/** A new visit of one pig. @returns the folder, and the text of the pig now */
function newPig(name: string, text = blank) {
  put(folder, { [`${name}/visit.yaml`]: visit, [`${name}/pig.yaml`]: text });
  const cwd = join(folder, name);
  return { cwd, text: () => readFileSync(join(cwd, "pig.yaml"), "utf8") };
}

const open = (cwd: string, env: Readonly<Record<string, string>> = {}): Terminal =>
  new Terminal(["record", "pig.yaml"], cwd, env);

const looked =
  "alarm_check: {before_knife: {vesicles: none, skin_haemorrhage: none, throat_swelling: none, bloody_orifices: none}}\n";
const none = { Vesicle: "n", "Haemorrhage of the skin": "n", "Swelling of throat": "n", "Blood at": "n" };

describe("carcase record", () => {
  it("goes back, shows what does not fit, and goes on where it was left", async () => {
    const { cwd, text } = newPig("typed", blank + looked);
    const first = open(cwd);
    await first.see("mark (such as 2217): ");
    first.press("2217\r");
    await first.see("The sex");
    first.press("c");
    await first.see("When the signs began");
    first.press("<\r");
    await first.see("The sex");
    first.press("f");
    await first.see("When the signs began");
    first.press("36 h\r");
    await first.see("typical of the group");
    first.press("y");
    await first.see("How the pig died");
    first.press("e");
    await first.see("How the pig was killed");
    first.press("q");
    await first.see("To go on: carcase record pig.yaml");
    expect(await first.exit).toBe(0);
    expect(text()).toContain("sex: female");
    expect(text()).toMatch(
      /treated: no,\s+onset: 36 h,\s+typical: yes}|onset: 36 h, treated: no,\s+typical: yes}/,
    );

    const second = open(cwd);
    await second.see("How the pig was killed");
    second.press("b");
    await second.see("This is the first question.");
    second.press("\r");
    await second.see("(or was found)");
    second.press("9:10\r");
    await second.see("External examination. Skin");
    second.press("n");
    await second.see("body weight");
    second.press("much\r");
    await second.see('"much"');
    second.press("17,5\r");
    await second.play(
      { "When the pig was opened": "0940\r", "state of the carcass": "f", "Are samples": "n" },
      "Jelly or",
    );
    second.press("\u0003");
    expect(await second.exit).toBe(0);
    expect(text()).toContain("death: {manner: euthanised, at: 2026-03-14T09:10}");
    expect(text()).toContain("weight: 17.5 kg");
    // No colours, and no line that a terminal would break.
    expect(second.raw).not.toMatch(/\u001b\[(?:\d+;)*(?:1|2|3\d|9\d)m/);
    expect(second.brokenLines).toEqual([]);
  });

  it("completes words of the vocabulary, as far as one goes on so", async () => {
    const { cwd, text } = newPig("words", blank + looked);
    const terminal = open(cwd);
    await terminal.see("mark (such as 2217): ");
    const skipped = [
      "The sex",
      "When the signs",
      "typical of",
      "How the pig died",
      "(or was found)",
      "External examination. Skin",
      "body weight",
      "Are samples taken from this pig (9 due)?",
      "was opened",
      "air temperature",
      "Jelly or",
      "state of",
    ];
    terminal.press("\r");
    await terminal.play(
      Object.fromEntries(skipped.map((question) => [question, "\r"])),
      "Body cavities. Pleural space",
    );
    terminal.press("f");
    await terminal.see("Pleural space: what is wrong");
    terminal.press("fibr");
    await terminal.see("fibrin fibrosis");
    terminal.press("i\t");
    await terminal.see("Pleural space: what is wrong: fibrin");
    terminal.press("\r");
    await terminal.see("Pleural space, fibrin: where");
    terminal.press("\u0003");
    expect(await terminal.exit).toBe(0);
    expect(text()).toContain("  pleural_space:\n    - {process: fibrin}\n");
  });

  it("asks for samples and the diagnosis at the end, and says what a diagnosis lacks", async () => {
    const { cwd, text } = newPig(
      "samples",
      `format: 1
case: v-07
protocol: respiratory
pig: {tag: "7", age: 58 d, group: nursery-2, sex: female, weight: 17 kg}
selection: {basis: comparison, signs: [none], treated: no}
death: {manner: euthanised, method: barbiturate, at: 2026-03-14T09:10}
opened: {at: 2026-03-14T09:40, ambient: 12 °C, state: fresh}
alarm_check:
  before_knife: {vesicles: none, skin_haemorrhage: none, throat_swelling: none, bloody_orifices: none}
  at_knife: {bloody_nodes: none, petechiae: none, bloody_fluid: none, pale_heart: none}
normal: [external, lymphoid, cardiovascular, serosa, intestine, liver_pancreas, urinary, stomach]
respiratory:
  trachea: [{process: haemorrhage, distribution: focal, size: 4 mm, severity: marked}]
  turbinates: {not_examined: snout not sawn}
  rest: normal
`,
    );
    const terminal = open(cwd);
    for (const [question, answer] of [
      ["Are samples taken from this pig (its marked lesion has none)?", "y"],
      ["Taken: Trachea, edge of lesion, formalin, for histology?", "y"],
      ["Taken: Trachea, edge of lesion, chilled?", "n"],
      ["Morphologic diagnosis", "Trachea: haemorrhage, focal, acute, marked; Liver: necrosis, mild\r"],
      ["none is described under liver_pancreas.liver", ""],
      ["What the cause rests on so far", "p"],
    ] as const) {
      await terminal.see(question);
      if (answer !== "") terminal.press(answer);
    }
    await terminal.see("Nothing more is asked.");
    expect(await terminal.exit).toBe(0);
    expect(text().split("rest: normal\n")[1]).toBe(`samples:
  - {id: "07-A", from: respiratory.trachea, into: formalin, for: [histology],
     site: edge of lesion}
diagnosis:
  morphologic: ["Trachea: haemorrhage, focal, acute, marked",
                "Liver: necrosis, mild"]
  basis: pending
`);
    expect(terminal.brokenLines).toEqual([]);
  });

  it("shows the notice of an alarm, and asks for nothing more that would be cut", async () => {
    const { cwd, text } = newPig("alarm");
    const terminal = open(cwd);
    await terminal.see("Vesicle");
    terminal.press("s");
    await terminal.see("STOP: this may be a notifiable disease");
    const rest = {
      ...none,
      "mark (such as 2217)": "1\r",
      "The sex": "f",
      "When the signs": "36 h\r",
      "typical of": "y",
      "How the pig died": "f",
      "(or was found)": "\r",
    };
    await terminal.play(rest, "Nothing that must be cut is asked while the alarm stands");
    expect(await terminal.exit).toBe(0);
    expect(text()).toContain("vesicles: seen");
    expect(terminal.said).not.toMatch(/Lungs|body weight|was opened/);
  });

  it("asks for nothing that would be cut while an alarm stands in another pig", async () => {
    const { cwd } = newPig("other", blank + looked);
    put(cwd, {
      "ill.yaml": "format: 1\ncase: v-02\npig: {age: 58 d}\nalarm_check: {before_knife: {vesicles: seen}}\n",
    });
    const terminal = open(cwd);
    const rest = {
      "mark (such as 2217)": "1\r",
      "The sex": "f",
      "When the signs": "36 h\r",
      "typical of": "y",
      "How the pig died": "f",
      "(or was found)": "\r",
    };
    await terminal.play(rest, "while the alarm stands");
    expect(await terminal.exit).toBe(0);
    expect(terminal.said).not.toMatch(/External examination|was opened/);
  });

  it("asks by plain lines where the terminal can do no more", async () => {
    const { cwd, text } = newPig("dumb");
    const terminal = open(cwd, { TERM: "dumb" });
    await terminal.see("Vesicle");
    terminal.press("z\n");
    await terminal.see("There is no z here.");
    terminal.press("n\n");
    await terminal.see("Haemorrhage of the skin");
    terminal.press("q\n");
    expect(await terminal.exit).toBe(0);
    expect(text()).toContain("vesicles: none");
    expect(terminal.raw).not.toContain("\u001b");
  });

  it("says in one line what keeps it from asking", () => {
    const { cwd } = newPig("none");
    const { code, err } = carcase(["record", "pig.yaml"], { cwd });
    expect([code, err.trim().split("\n").length]).toEqual([2, 1]);
    expect(err).toContain("this is none");
  });

  it("loses one answer at most where it is killed, and the next call goes on", {
    timeout: 3_600_000,
  }, async () => {
    // What stands in the file after each answer, one after the other.
    const before = newPig("steps");
    const whole = [before.text()];
    const steps = open(before.cwd);
    const questions = Object.keys(none);
    for (const question of questions) {
      await steps.see(question);
      if (question !== questions[0]) whole.push(before.text());
      steps.press("n");
    }
    await steps.see("mark (such as 2217)");
    whole.push(before.text());
    steps.press("\u0003");
    await steps.exit;
    expect(new Set(whole).size).toBe(5);

    const { cwd, text } = newPig("killed");
    for (let kill = 0; kill < kills; kill++) {
      const at = kill % questions.length;
      writeFileSync(join(cwd, "pig.yaml"), whole[at] ?? "");
      const terminal = open(cwd);
      await terminal.see(questions[at] ?? "");
      terminal.press("n");
      // Before, while or after the answer is written, by a share of what it takes.
      await new Promise((done) => setTimeout(done, (kill * 7) % 30));
      terminal.kill();
      await terminal.exit;
      expect([whole[at], whole[at + 1]]).toContain(text());
    }
    const last = open(cwd);
    await last.see(...questions, "mark (such as 2217)");
    last.press("\u0003");
    expect(await last.exit).toBe(0);
    expect(readdirSync(cwd).filter((name) => name.endsWith(".tmp"))).toEqual([]);
  });
});
