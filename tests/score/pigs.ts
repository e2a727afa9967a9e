/** Pigs for the tests, made through the real reader: a record in, a case out. */
import { type Case, readCases } from "../../src/cases/index.ts";
import type { Scale } from "../../src/knowledge/index.ts";
import { scales as allScales } from "../../src/knowledge/scales.ts";
import { type CaseScore, scoreCases } from "../../src/score/index.ts";

export type Json = { readonly [key: string]: unknown };

/** A case from a record, read as YAML (of which JSON is a part). Values at fault are dropped by the reader. */
export function pig(record: Json, name = "pig.yaml"): Case {
  const text = JSON.stringify({ format: 1, case: "pig-1", ...record });
  const { cases, unreadable } = readCases(["-"], { input: { bytes: new TextEncoder().encode(text), name } });
  const [one] = cases;
  if (one === undefined) throw new Error(`not read: ${JSON.stringify(unreadable)}`);
  return one;
}

/** `respiratory.lungs` and its entry as the record of a case. */
export function organ(id: string, entry: unknown): Json {
  const [system = "", key] = id.split(".");
  return { [system]: key === undefined ? entry : { [key]: entry } };
}

export function scaleNamed(id: string): Scale {
  const scale = allScales.get(id);
  if (scale === undefined) throw new Error(`no scale ${id}`);
  return scale;
}

/** The score of a record on one scale. */
export function scoreOf(scale: string, record: Json): CaseScore {
  const score = scoreCases([pig(record)], { scales: [scale] }).cases[0]?.scores[0];
  if (score === undefined) throw new Error(`no score on ${scale}`);
  return score;
}

/** The score of what is recorded on the organ of the scale. */
export const scoreOn = (scale: string, entry: unknown): CaseScore =>
  scoreOf(scale, organ(scaleNamed(scale).organ, entry));

export const lobes = [
  "left_cranial",
  "left_middle",
  "left_caudal",
  "right_cranial",
  "right_middle",
  "right_caudal",
  "accessory",
] as const;

/** Per cent of each lobe, 0 unless given. */
export const consolidation = (some: Partial<Record<(typeof lobes)[number], number>> = {}): Json => ({
  ...Object.fromEntries(lobes.map((lobe) => [lobe, 0])),
  ...some,
});

/** A snout sawn at the first premolar, all conchae at the same loss unless given. */
export const snout = (loss: number, some: Json = {}): Json => ({
  section: "premolar-1",
  left: { dorsal: loss, ventral: loss },
  right: { dorsal: loss, ventral: loss },
  septum: "straight",
  ...some,
});

/** A plain copy of an entry without what stands at a path. */
export function without(entry: Json, path: string): Json {
  const [key = "", ...rest] = path.split(".");
  const { [key]: inner, ...others } = entry;
  if (rest.length === 0 || typeof inner !== "object" || inner === null) return others;
  return { ...others, [key]: without(inner as Json, rest.join(".")) };
}
