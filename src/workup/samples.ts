/** What would settle a disease: samples in hand, and what to take next time. */
import type { Case } from "../cases/index.ts";
import type { Confirmation, Disease } from "../knowledge/diseases.ts";
import { sampleRules } from "../knowledge/index.ts";
import type { Subject } from "../patterns/index.ts";
import { askedOf, type IndexedSample, isAmong, samplesOf } from "../record/index.ts";
import { casesOf } from "./statements.ts";

export interface SampleInHand extends IndexedSample {
  readonly one: Case;
  /** Whether the test was asked for. */
  readonly asked: boolean;
  /** Whether the result has come. */
  readonly answered: boolean;
}

/** A test that would settle a disease, with the samples in hand that it can be made of. */
export interface Settling {
  readonly confirmation: Confirmation;
  readonly inHand: readonly SampleInHand[];
}

export const settling = ({ confirm }: Disease, subject: Subject): Settling[] =>
  confirm.map((confirmation) => ({
    confirmation,
    inHand: casesOf(subject).flatMap((one) =>
      samplesOf(one).flatMap(({ sample, index }) =>
        isOf(sample.from, confirmation.sample) && isFit(sample.into, confirmation.test)
          ? [{ one, sample, index, ...requestOf(one, index, confirmation.test) }]
          : [],
      ),
    ),
  }));

function requestOf(one: Case, index: number, test: string): Pick<SampleInHand, "asked" | "answered"> {
  const request = askedOf(one).find((asked) => asked.index === index && asked.test === test);
  return { asked: request !== undefined, answered: (request?.arrived.length ?? 0) > 0 };
}

/** Whether a sample is of what the test wants: the organ, another of the same system that is wanted whole, or the carcass. */
export const isOf = (from: string, wanted: readonly string[]): boolean =>
  from === "carcass" || isAmong(from, wanted) || wanted.some((organ) => organ.startsWith(`${from}.`));

/** Whether its container leaves the test its worth. */
const isFit = (into: string | undefined, test: string): boolean =>
  !Object.values(sampleRules.unfit).some((one) => has(one.tests, test) && has(one.into, into));

const has = (list: readonly string[], word: string | undefined): boolean =>
  word !== undefined && list.includes(word);
