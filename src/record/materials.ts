/** What a sample was taken from: an organ of the anatomy, a whole system, or something else such as blood or feed. */
import { organById, organs, sampleRules, systems, systemTitle } from "../knowledge/index.ts";
import { nearest } from "../words/nearest.ts";

export type Sample = NonNullable<import("../cases/index.ts").Case["record"]["samples"]>[number];

/** Whether the material, or the system it belongs to, stands in a list of the knowledge files. */
export const isAmong = (from: string, list: readonly string[]): boolean =>
  list.includes(from) || list.includes(from.split(".")[0] ?? "");

const systemIds: readonly string[] = systems.map(({ id }) => id);
const otherIds: readonly string[] = Object.keys(sampleRules.materials);

/** Whether there is such a material. */
export const isMaterial = (from: string): boolean =>
  organById(from) !== undefined || systemIds.includes(from) || otherIds.includes(from);

/** The material that was probably meant: the key of an organ without its system counts as well. */
export function nearestMaterial(from: string): string | undefined {
  const key = from.split(".").at(-1) ?? from;
  const near = nearest(from, [...organs.map(({ id }) => id), ...systemIds, ...otherIds]);
  if (near !== undefined) return near;
  const byKey = nearest(
    key,
    organs.map((organ) => organ.key),
  );
  return organs.find((organ) => organ.key === byKey)?.id;
}

/** How people call the material: `lungs`, `cerebrospinal fluid`. */
export function materialTitle(from: string): string {
  const title =
    organById(from)?.definition.title ??
    (otherIds.includes(from) ? sampleRules.materials[from]?.title : systemTitle(from));
  return (title ?? from).toLowerCase();
}

/** Whether it is full of other germs by nature, so that an opened gut does it no further harm. */
export const isContaminated = (from: string): boolean =>
  isAmong(from, sampleRules.not_sterile) || sampleRules.materials[from]?.contaminated === true;

/** Whether it is not of the carcass but of its pen, so that nothing of it rots with the carcass. */
export const isFromOutside = (from: string): boolean => sampleRules.materials[from]?.outside === true;

/** Whether it is a piece of gut or stomach, which shares no bag with other organs. */
export const isGut = (from: string): boolean => isAmong(from, sampleRules.gut_bag) || from === "faeces";

/** Whether it is a solid organ, not a fluid or something from the farm. */
export const isTissue = (from: string): boolean => organById(from) !== undefined || systemIds.includes(from);
