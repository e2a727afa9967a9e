/** Samples from the knife to the parcel: what to take, what to bring for it, what was taken and how long it is good. */
export { type PigAsked, pigOf, type SampleDue, samplesDue, samplesOfCase, setsNamed, setsOf } from "./due.ts";
