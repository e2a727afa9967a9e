/** Scores and herd numbers are made from sound files only: a value that does not fit the format is never left out in silence. */
import {
  type Archive,
  type Case,
  type Fault,
  type HouseScale,
  leaveOutFaultyScales,
  placedFault,
} from "../cases/index.ts";
import { ownCopy } from "../words/own-copy.ts";

/** What is left of an archive, and why the rest is left out. */
export interface Left {
  readonly archive: Archive;
  readonly faults: readonly Fault[];
}

/** The same, in which scale files of the practice carry what is wrong with their worked examples. */
export async function withCheckedScales<Read extends { readonly scales: readonly HouseScale[] }>(
  read: Read,
): Promise<Read> {
  // Nothing is loaded where there are none.
  if (read.scales.length === 0) return read;
  const { checkHouseScales } = await import("../herd/check-house-scales.ts");
  return checkHouseScales(read);
}

/** The archive without the cases that have format faults. */
export function withoutFormatFaults(archive: Archive): Left {
  const { farms, visits, cases, scales } = archive;
  const faults = [...farms, ...visits, ...cases, ...scales].flatMap((subject) => subject.faults);
  return { archive: { ...archive, cases: cases.filter(isSound) }, faults };
}

/** A default that cannot be read is missing in each case of its visit. */
const isSound = ({ faults, visit }: Case): boolean =>
  faults.length === 0 && visit?.faults.some(({ path: [top] }) => top === "defaults") !== true;

/**
 * The archive without cases whose id another case has already: a pig is never counted twice.
 * @param first by id, the files of the cases that were met; those of this archive are put to them
 */
export function withoutCopies(archive: Archive, first = new Map<string, string>()): Left {
  const copies = new Map<Case, string>();
  for (const one of archive.cases) {
    // A case that does not name itself goes by the name of its file, which many share.
    if (one.record.case === undefined) continue;
    const other = first.get(one.id);
    // A part of a text keeps the whole of it.
    if (other === undefined) first.set(ownCopy(one.id), one.file);
    else copies.set(one, other);
  }
  return {
    archive: { ...archive, cases: archive.cases.filter((one) => !copies.has(one)) },
    faults: [...copies].map(([one, other]) => copyFault(one, other)),
  };
}

/** The archive without scales of the practice that are at fault. */
export const withSoundScales = async (archive: Archive): Promise<Archive> =>
  leaveOutFaultyScales(await withCheckedScales(archive));

const copyFault = (one: Case, other: string): Fault =>
  placedFault(
    one,
    ["case"],
    `case: "${one.id}" is already the case of ${other}, and no pig is counted twice. Take out the copy, or give one of the two pigs an id of its own.`,
  );
