/** What a part of a scale reads, as the anatomy file calls it. */
import { type Observation, organById, type Scale, type ScalePart } from "../../knowledge/index.ts";

/** The observation a part reads, if it is one of the organ. */
export const observationOf = ({ organ }: Scale, { read }: ScalePart): Observation | undefined =>
  organById(organ)?.definition.observations?.[read.split(".")[0] ?? ""];

/** The figure of a tracing that a scale reads: its key, and how it is defined. */
export function measuredFigure(scale: Scale): { readonly key: string; readonly look: string } | undefined {
  for (const part of Object.values(scale.parts)) {
    const [first, key = ""] = part.read.split(".");
    const figure = first === "measured" ? observationOf(scale, part)?.figures?.[key] : undefined;
    if (figure !== undefined) return { key, look: figure.look };
  }
  return undefined;
}
