/** Before the visit: how many pigs, which ones, and what that number will be able to say. */
export { type ChooseQuestion, planChoose, planDiagnostic } from "./choose.ts";
export { planCompare } from "./compare.ts";
export type { CompareQuestion } from "./comparison-question.ts";
export { planDetect } from "./detect.ts";
export type { DetectQuestion } from "./detection-question.ts";
export { type EstimateQuestion, planEstimate } from "./estimate.ts";
export { farmFrame, tagsFrame, type Unit } from "./frame.ts";
export type { Cell, Plan, PlanColumn } from "./plan.ts";
export { planSay, type SayQuestion } from "./say.ts";
