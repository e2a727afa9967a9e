/** What would settle a disease: samples in hand, and what to take next time. */
import type { Case } from "../cases/index.ts";
import type { Confirmation, Disease } from "../knowledge/diseases.ts";
import { sampleRules } from "../knowledge/index.ts";
import type { Subject } from "../patterns/index.ts";
import { type IndexedSample, isAmong, samplesOf } from "../record/index.ts";
import { casesOf } from "./statements.ts";

export interface SampleInHand extends IndexedSample {
  readonly one: Case;
  /** Whether the test was asked for. */
  readonly asked: boolean;
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
          ? [{ one, sample, index, asked: sample.for?.some((test) => test === confirmation.test) === true }]
          : [],
      ),
    ),
  }));

/** Whether a sample is of what the test wants: the organ, another of the same system that is wanted whole, or the carcass. */
const isOf = (from: string, wanted: readonly string[]): boolean =>
  from === "carcass" || isAmong(from, wanted) || wanted.some((organ) => organ.startsWith(`${from}.`));

/** Whether its container leaves the test its worth. */
const isFit = (into: string | undefined, test: string): boolean =>
  !Object.values(sampleRules.unfit).some((one) => has(one.tests, test) && has(one.into, into));

const has = (list: readonly string[], word: string | undefined): boolean =>
  word !== undefined && list.includes(word);
