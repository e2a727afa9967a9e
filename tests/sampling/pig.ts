/** A pig with some keys of its own, read as the only one of its folder. */
import { type Case, readCases } from "../../src/cases/index.ts";
import type { Sample } from "../../src/record/index.ts";
import { folderInTurns } from "../cases/temporary.ts";

const inTurns = folderInTurns();

/** Reads a case with these lines, under these settings. */
export function pig(lines: string, settings = ""): Case {
  const folder = inTurns({
    "carcase.yaml": `format: 1\n${settings}`,
    "pig.yaml": `format: 1\ncase: birch-2026-04-20-01\n${lines}\n`,
  });
  const archive = readCases([folder]);
  const [one] = archive.cases;
  if (one === undefined) throw new Error(`no case: ${archive.unreadable.map((fault) => fault.message)}`);
  return one;
}

/** A pig that died at eight and was opened then, at a temperature. */
export const pigAt = (ambient: string, more = "", settings = ""): Case =>
  pig(
    `death: {at: 2026-04-20T08:00}\nopened: {at: 2026-04-20T08:00, ambient: ${ambient} °C${more}}`,
    settings,
  );

/** A sample so many minutes after eight. */
export function sampleAfter(minutes: number, sample: Partial<Sample>): Sample {
  const at = new Date(Date.UTC(2026, 3, 20, 8, minutes)).toISOString().slice(0, 16);
  return { id: "01-A", from: "liver_pancreas.liver", at, ...sample };
}
