/** Pigs of one pen, room or litter resemble each other: which pigs of a side share one. */
import type { Case } from "../../cases/index.ts";
import { clusterKey } from "../../herd/index.ts";
import { clusterLimits } from "../../knowledge/index.ts";
import { grouped } from "../../words/grouped.ts";
import type { Asked } from "../comparison.ts";
import { armOf } from "./arms.ts";
import type { Answered } from "./outcomes.ts";

/** The pens (rooms, litters) of one side; a pig whose pen is not recorded stands for itself. */
export interface SidePens {
  readonly pens: readonly (readonly Answered[])[];
  /** How many of them are recorded. */
  readonly known: number;
  /** Whether so many pigs share them that they cannot be taken as drawn singly. */
  readonly shared: boolean;
}

/** What a pig shares with others, by what was asked; of a trial what was allocated. Undefined where it is not recorded. */
export const sharedBy = (
  one: Case,
  { between, cluster }: Pick<Asked, "cluster"> & Partial<Pick<Asked, "between">>,
): string | undefined =>
  between === "treatment" ? armOf(one)?.key : cluster === "none" ? undefined : clusterKey(one, cluster);

/**
 * Pens count as shared from a mean of two pigs on, over the pigs and not over the pens: five pigs of one pen and four of
 * four others are 3.2 to a pen, as the design effect reckons (Kish 1965, from memory).
 */
export function pensOf(
  answers: readonly Answered[],
  asked: Pick<Asked, "cluster"> & Partial<Pick<Asked, "between">>,
): SidePens {
  const found = grouped(answers, ({ one }) => sharedBy(one, asked));
  const alone = found.get(undefined) ?? [];
  found.delete(undefined);
  const known = [...found.values()];
  const pigs = answers.length - alone.length;
  const squares = known.reduce((sum, { length }) => sum + length * length, 0);
  return {
    pens: [...known, ...alone.map((answer) => [answer])],
    known: known.length,
    shared: squares >= clusterLimits.pigs_each * pigs && pigs > 0,
  };
}
