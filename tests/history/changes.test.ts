/** Every edit of a record is named, and nothing else. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { formatPath } from "../../src/cases/model/path.ts";
import { type Change, changesOf } from "../../src/history/changes.ts";
import { sentence } from "../../src/history/sentence.ts";
import { runs } from "../random.ts";
import { edited, editedRecord, editsOf, examples } from "./edits.ts";

const told = ({ change, at }: Change): string =>
  `${change} ${formatPath(at.map((step) => (typeof step === "string" ? step : step.index)))}`;

describe("changes of records", () => {
  it("are what was edited, and nothing else", () => {
    let edits = 0;
    fc.assert(
      fc.property(edited, ({ example, edits: made }) => {
        edits += made.length;
        const changes = changesOf(example.kind, example.record, editedRecord(example, made));
        expect(changes.map(told).sort()).toEqual(
          made.map(({ change, path }) => `${change} ${formatPath(path)}`).sort(),
        );
        for (const { change, path, names } of made) {
          const found = changes.find((one) => told(one) === `${change} ${formatPath(path)}`);
          const said = found === undefined ? "" : sentence(example.kind, found);
          for (const name of names) expect(said).toContain(name);
        }
        expect(new Set(changes.map((one) => sentence(example.kind, one))).size).toBe(changes.length);
      }),
      { numRuns: Math.max(200, runs(1000)) },
    );
    expect(edits).toBeGreaterThan(200);
  });

  it("are of every kind", () => {
    const kinds = new Set(examples.flatMap((example) => editsOf(example)).map(({ what }) => what));
    expect(kinds.size).toBe(8);
  });

  it("are none where only comments, blanks or the way of writing an organ differ", () => {
    const before = {
      case: "a",
      respiratory: { trachea: "normal", lungs: [{ process: "oedema" }] },
      urinary: "normal",
    };
    const after = {
      case: "a",
      history: null,
      respiratory: { trachea: { state: "normal" }, lungs: { findings: [{ process: "oedema" }] } },
      urinary: { rest: "normal" },
    };
    expect(changesOf("case", before, after)).toEqual([]);
  });
});
