/** Scale files of the practice: their worked examples are worked out before anybody relies on them. */
import { type Archive, type Fault, type HouseScale, type Path, placedFault } from "../cases/index.ts";
import type { HerdExample, Scale } from "../knowledge/index.ts";
import { classOf, type ExampleFault, exampleFaults, rounded } from "../score/index.ts";
import { indexValue } from "./herd-index.ts";

/**
 * The same archive, in which the scale files carry what is wrong with their worked examples as well (rule
 * `scale-example`); `lintCases` reports it at its line.
 */
export const checkHouseScales = <Read extends Pick<Archive, "scales">>(archive: Read): Read => ({
  ...archive,
  scales: archive.scales.map((one) => ({ ...one, faults: [...one.faults, ...faultsOf(one)] })),
});

function faultsOf(file: HouseScale): Fault[] {
  const { scale } = file;
  if (scale === undefined) return [];
  return [...exampleFaults(scale), ...herdFaults(scale)].map(({ path, message }) =>
    placedFault(file, path, message, { rule: "scale-example" }),
  );
}

const herdFaults = (scale: Scale): ExampleFault[] =>
  (scale.herd_examples ?? []).flatMap((example, index) =>
    herdFault(scale, example, ["herd_examples", index]),
  );

function herdFault(scale: Scale, example: HerdExample, at: Path): ExampleFault[] {
  const values = Object.entries(example.counts).flatMap(([value, pigs]) =>
    Array.from({ length: pigs }, () => Number(value)),
  );
  const results = new Map(
    (scale.indices ?? []).map((index) => [index.id, { index, value: indexValue(index, values) }]),
  );
  const says = (key: string, id: string, message: string): ExampleFault[] => [
    { path: [...at, key, id], message: `${at[0]}[${at[1]}] ("${example.case}"): ${message}` },
  ];
  return [
    ...Object.entries(example.indices ?? {}).flatMap(([id, value]) => {
      const found = results.get(id);
      if (found === undefined) return says("indices", id, `this scale has no index "${id}".`);
      if (found.value !== null && toDigitsOf(found.value, value) === value) return [];
      return says("indices", id, `it says ${value} for ${id}, but the counts give ${found.value}.`);
    }),
    ...Object.entries(example.index_classes ?? {}).flatMap(([id, named]) => {
      const found = results.get(id);
      const given = found && classOf(found.index.classes, found.value, found.index.round);
      return given === named
        ? []
        : says("index_classes", id, `it says ${named}, but ${id} is classed ${given ?? "nowhere"}.`);
    }),
  ];
}

/** A value to as many decimals as the other is written with. */
function toDigitsOf(value: number, written: number): number {
  const decimals = String(written).split(".")[1]?.length ?? 0;
  return rounded(value, decimals);
}
