/** The figures of a finding as numbers: per cent, millimetres, millilitres. The schema has checked their form. */
import type { Case, Finding } from "../cases/index.ts";
import { description, type Process } from "../knowledge/index.ts";
import type { PlacedFinding } from "./organs.ts";

export const extentPercent = (finding: Finding): number | undefined => firstNumber(finding.extent);

export function volumeMl(finding: Finding): number | undefined {
  const value = firstNumber(finding.volume);
  return value === undefined ? undefined : value * (/\dl$|\sl$/.test(finding.volume ?? "") ? 1000 : 1);
}

/** Every dimension of the size. */
export function sizesMm(finding: Finding): number[] {
  if (finding.size === undefined) return [];
  const factor = finding.size.endsWith("cm") ? 10 : 1;
  return [...finding.size.matchAll(/\d+(?:\.\d+)?/g)].map(([text]) => Number(text) * factor);
}

function firstNumber(text: string | undefined): number | undefined {
  const match = text === undefined ? null : /^\d+(?:\.\d+)?/.exec(text);
  return match === null ? undefined : Number(match[0]);
}

/** What a process asks of its description: how much there is, how it lies, what it says little without. */
export const processOf = ({ process }: Finding): Process =>
  description.processes[process] ?? { how_much: ["extent", "size", "number", "severity"] };

/** Whether nobody asks how much there is of a lesion in this organ of this pig, or how it lies. */
export function isUnasked({ ageClass }: Case, { organ, finding }: PlacedFinding): boolean {
  const { unasked = [] } = processOf(finding);
  return unasked.some(
    ({ organs, classes }) =>
      (organs.includes(organ.id) || organs.includes(organ.system)) &&
      (classes === undefined || (ageClass !== undefined && classes.includes(ageClass))),
  );
}

/** Whether a finding says how much there is: by its severity, or by a field that means something for its process. */
export const saysHowMuch = (finding: Finding): boolean => {
  const { how_much } = processOf(finding);
  return (
    how_much.length === 0 ||
    finding.severity !== undefined ||
    how_much.some((field) =>
      field === "diffuse" ? finding.distribution === "diffuse" : finding[field] !== undefined,
    )
  );
};

/** The measures that mean something for this lesion in this organ: no extent of a tube, no size of a content. */
export function measuresOf({ organ, finding }: PlacedFinding): Measure[] {
  const { kind } = organ.definition;
  return processOf(finding).how_much.filter(
    (field): field is Measure =>
      field !== "severity" &&
      field !== "diffuse" &&
      !(field === "extent" && (kind === "content" || kind === "tube")) &&
      !(field === "size" && kind === "content"),
  );
}
type Measure = Exclude<Process["how_much"][number], "severity" | "diffuse">;
