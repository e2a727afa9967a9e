/** What is told of an observation. */
import type { Observation } from "../knowledge/index.ts";
import { listing } from "../words/listing.ts";

export type Value = string | number | readonly string[];
type One = { readonly value: Value } | { readonly fault: string };

/** The value of an observation, or of one of its parts. */
export function oneValue({ kind, range, values = [] }: Observation, text: string): One {
  if (kind === "choice" || kind === "choices") {
    const words = text.split(/[ \t]+/);
    const fits = words.every((word) => values.includes(word)) && (kind === "choices" || words.length === 1);
    return fits ? { value: kind === "choices" ? words : text } : { fault: `write ${listing(values, "or")}` };
  }
  if (kind === "length" || kind === "signed-length")
    return /^-?\d+(\.\d+)? (mm|cm)$/.test(text) ? { value: text } : { fault: "write a length such as 3 mm" };
  const [least, most] = range ?? [0, Number.POSITIVE_INFINITY];
  const value = /^\d+(\.\d+)?(?: ?%)?$/.test(text) ? Number.parseFloat(text) : Number.NaN;
  return value >= least && value <= most ? { value } : { fault: `write a number from ${least} to ${most}` };
}

type Read = { readonly part: readonly string[]; readonly value: Value }[];

/** `straight`; with parts `dorsal 1 ventral 2`. @returns what is wrong, in a sentence, where it does not fit */
export function observed(observation: Observation, text: string): Read | string {
  const { parts } = observation;
  if (parts === undefined) {
    const one = oneValue(observation, text);
    return "fault" in one ? one.fault : [{ part: [], value: one.value }];
  }
  const words = text.split(/[ \t]+/);
  const names = Object.keys(parts);
  const starts = words.flatMap((word, at) => (names.includes(word) ? [at] : []));
  if (starts[0] !== 0) return `write ${listing(names, "or")}, each with its value behind it`;
  const read: Read = [];
  for (const [index, at] of starts.entries()) {
    const part = words[at] ?? "";
    const one = oneValue(observation, words.slice(at + 1, starts[index + 1]).join(" "));
    if ("fault" in one) return `${part}: ${one.fault}`;
    read.push({ part: [part], value: one.value });
  }
  return read;
}
