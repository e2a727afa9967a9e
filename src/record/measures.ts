/** The figures of a finding as numbers: per cent, millimetres, millilitres. The schema has checked their form. */
import type { Finding } from "../cases/index.ts";

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

/** Whether the finding says at all how much there is. */
export const hasMeasure = ({ extent, size, number, volume }: Finding): boolean =>
  extent !== undefined || size !== undefined || number !== undefined || volume !== undefined;
