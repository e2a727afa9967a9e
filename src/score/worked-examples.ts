/** The worked examples of a scale, worked out again: what comes out otherwise than the file says. */
import { validate } from "../cases/faults/validate.ts";
import { formatPath, type Path, pathOf } from "../cases/index.ts";
import { organState } from "../cases/model/organ-state.ts";
import type { CaseFile } from "../generated/case.types.ts";
import type { Scale, ScaleExample } from "../knowledge/index.ts";
import { listing } from "../words/listing.ts";
import type { CaseScore } from "./case-score.ts";
import { scoreOrgan } from "./score-organ.ts";
import { stateFor } from "./state-for.ts";

export interface ExampleFault {
  /** In the scale file. */
  readonly path: Path;
  readonly message: string;
}

/** What is wrong with the worked examples of a scale that fits its schema; nothing when all come out as written. */
export const exampleFaults = (scale: Scale): ExampleFault[] =>
  scale.examples.flatMap((example, index) => checked(scale, example, ["examples", index]));

function checked(scale: Scale, example: ScaleExample, at: Path): ExampleFault[] {
  const keys = pathOf(scale.organ).map(String);
  const record = keys.reduceRight<object>((inner, key) => ({ [key]: inner }), example.record);
  const { faults, raw } = validate("case", { format: 1, case: "example", ...record });
  if (faults.length > 0)
    return faults.map(({ path, message }) => ({
      path: [...at, "record", ...path.slice(keys.length)],
      message: `${name(at)}: its record does not fit the case format. ${message}`,
    }));
  const state = stateFor(
    { record: raw as unknown as CaseFile, organ: (organ) => organState(raw, organ) },
    scale,
  );
  return differences(example, scoreOrgan(scale, state), at);
}

function differences(example: ScaleExample, score: CaseScore, at: Path): ExampleFault[] {
  const differs = (key: string, message: string): ExampleFault[] => [
    { path: [...at, key], message: `${name(at)} ("${example.case}"): ${message}` },
  ];
  if (score.value !== example.value)
    return differs("value", `it says ${said(example.value)}, but the scale gives ${given(score)}.`);
  if (example.class !== undefined && score.class !== example.class)
    return differs(
      "class",
      `it says ${example.class}, but ${score.value} is classed ${score.class ?? "nowhere"}.`,
    );
  if (example.missing !== undefined && !sameList(example.missing, score.missing))
    return differs(
      "missing",
      `it says that ${listing(example.missing) || "nothing"} is missing, but it is ${listing(score.missing) || "nothing"}.`,
    );
  if (example.bounds !== undefined && example.bounds.join() !== score.bounds?.join())
    return differs(
      "bounds",
      `it says ${example.bounds.join(" to ")}, but the scale gives ${score.bounds?.join(" to ") ?? "no bounds"}.`,
    );
  return Object.entries(example.parts ?? {}).flatMap(([part, value]) =>
    score.parts[part] === value
      ? []
      : differs(
          "parts",
          `it says ${value} for ${part}, but the scale gives ${score.parts[part] ?? "no value"}.`,
        ),
  );
}

const name = (at: Path): string => formatPath(at);
const said = (value: number | null): string => (value === null ? "no score" : String(value));
const sameList = (a: readonly string[], b: readonly string[]): boolean =>
  a.length === b.length && a.every((item) => b.includes(item));

function given({ value, missing, reason }: CaseScore): string {
  if (value !== null) return String(value);
  const why = [missing.length === 0 ? "" : `missing ${listing(missing)}`, reason ?? ""].filter(
    (text) => text !== "",
  );
  return `no score (${why.join("; ")})`;
}
