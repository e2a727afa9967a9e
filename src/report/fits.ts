/** What the findings fit, and what speaks for and against it: the first of the work-up. */
import type { Subject } from "../patterns/index.ts";
import { type Met, workUp } from "../workup/index.ts";
import type { ReportFit } from "./result.ts";

/** As many as the work-up tells in full. */
const told = 3;

export const fitsOf = (subject: Subject): ReportFit[] =>
  workUp(subject)
    .fits.slice(0, told)
    .map(({ disease, favour, against, unseen }) => ({
      disease: disease.id,
      name: disease.name,
      favour: favour.map(saysOf),
      against: against.map(saysOf),
      unseen: [...new Set(unseen.flatMap(({ organs }) => organs))],
    }));

const saysOf = ({ statement }: Met): string => statement.says;
