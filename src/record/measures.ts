/** The figures of a finding as numbers: per cent, millimetres, millilitres. The schema has checked their form. */
import type { Finding } from "../cases/index.ts";
import { description, type Process } from "../knowledge/index.ts";

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

/** Whether a finding says how much there is, by one of the fields that mean something for its process. */
export const saysHowMuch = (finding: Finding): boolean => {
  const { how_much } = processOf(finding);
  return (
    how_much.length === 0 ||
    how_much.some((field) =>
      field === "diffuse" ? finding.distribution === "diffuse" : finding[field] !== undefined,
    )
  );
};
