/** What a case asks of the laboratory, from its signs and findings: is the gut, the brain or a joint in question? */
import type { Case } from "../../cases/index.ts";
import { sampleRules } from "../../knowledge/index.ts";
import { findingsOf, isAmong, isFor, samplesOf } from "../../record/index.ts";

const { questions, inflamed } = sampleRules;

/** Whether inflammation is described in one of these organs or systems. */
export const isInflamed = (one: Case, organs: readonly string[]): boolean =>
  findingsOf(one).some(
    ({ organ, finding }) => isAmong(organ.id, organs) && inflamed.includes(finding.process),
  );

const hasSign = (one: Case, signs: readonly string[]): boolean =>
  one.signs.some((sign) => signs.includes(sign));

/** Diarrhoea in life. */
export const isGutInQuestion = (one: Case): boolean => hasSign(one, questions.gut);

/** Signs of the brain in life, or inflamed meninges or brain. */
export const isBrainInQuestion = (one: Case): boolean =>
  hasSign(one, questions.brain) || isInflamed(one, ["nervous.meninges", "nervous.brain"]);

/** Lameness or swollen joints, or an inflamed joint. */
export const isJointInQuestion = (one: Case): boolean =>
  hasSign(one, questions.joints) || isInflamed(one, ["locomotor.joints"]);

/** Whether an agent is looked for, or named, which a treatment may have killed. */
export const isAgentInQuestion = (one: Case): boolean =>
  one.record.diagnosis?.aetiologic !== undefined ||
  samplesOf(one).some(({ sample }) => isFor(sample, "culture", "pcr", "virus-isolation"));
