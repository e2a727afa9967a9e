/** Aborted fetuses: which cases are, and how an example with them is written. */
import type { Case } from "../../cases/index.ts";
import type { Example } from "../rule.ts";

export interface Fetus {
  readonly litter: string;
  readonly number: number;
}

export const abortedPig = (one: Case): boolean => one.ageClass === "aborted";

const sows = "groups: {sows: {at_risk: 118, affected: 6, dead: 0, onset: 2026-04-10}}";

/** A visit whose pigs are these fetuses, each with its placenta; `more` is laid over each of them. */
export function fetuses(all: readonly Fetus[], more = ""): Example {
  const ids = all.map((_, index) => `birch-2026-04-20-0${index + 1}`);
  const files = all.map(({ litter, number }, index) => {
    const pig = `{tag: "${litter}-${number}", group: sows, litter: ${litter}, age: , class: aborted, weight: 900 g, crown_rump: 24 cm}`;
    return `case: ${ids[index]}
pig: ${pig}
selection: {basis: convenience, signs: [abortion], onset: , typical: , note: what the farm had kept of the litter}
death: {manner: born-dead, method: }
upper_digestive:
intestine:
respiratory: {nares: , turbinates: , larynx: , bronchi: }
endocrine: {adrenals: {left: normal, right: normal}, thyroid: normal}
placental: {placenta: normal, umbilical_cord: normal}
locomotor:
samples:
${more}`;
  });
  const [first = "", ...others] = files;
  return { case: first, others, visit: `cases: [${ids.join(", ")}]\n${sows}` };
}
