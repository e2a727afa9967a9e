/** Scores and herd numbers are made from sound files only: a value that does not fit the format is never left out in silence. */
import { type Case, type Fault, leaveOutFaultyScales } from "../cases/index.ts";
import { faultsText } from "../formats/faults-text.ts";
import { withCheckedScales } from "./checked-scales.ts";
import type { Opened } from "./open-archive.ts";
import type { CommonOptions } from "./options.ts";
import { styleFor } from "./terminal.ts";

/** Prints the format faults of cases, and takes those cases out of the archive. */
export function withoutFormatFaults({ archive, failed }: Opened, options: CommonOptions): Opened {
  const unsound = archive.cases.filter((one) => one.faults.length > 0);
  const faults = [...archive.farms, ...archive.visits, ...archive.cases, ...archive.scales].flatMap(
    (subject) => subject.faults,
  );
  if (faults.length === 0) return { archive, failed };
  process.stderr.write(faultsText(faults, styleFor(process.stderr, options)));
  const cases = archive.cases.filter((one) => !unsound.includes(one));
  return { archive: { ...archive, cases }, failed: true };
}

/**
 * Cases fit for counting: without those that have format faults, without scales of the practice that do not give
 * their own worked examples, and each case id once. What is left out is said on standard error, and the exit code
 * is then 2.
 */
export async function countable({ archive, failed }: Opened, options: CommonOptions): Promise<Opened> {
  const checked = await withCheckedScales(archive);
  const sound = withoutFormatFaults({ archive: leaveOutFaultyScales(checked), failed }, options);
  return withoutCopies(sound, options);
}

/** Prints cases whose id another case has already, and takes them out: a pig is never counted twice. */
function withoutCopies({ archive, failed }: Opened, options: CommonOptions): Opened {
  const first = new Map<string, Case>();
  const copies = archive.cases.flatMap((one) => {
    // A case that does not name itself goes by the name of its file, which many share.
    if (one.record.case === undefined) return [];
    const other = first.get(one.id) ?? one;
    first.set(one.id, other);
    return other === one ? [] : [{ one, other }];
  });
  if (copies.length === 0) return { archive, failed };
  const faults = copies.map(({ one, other }) => copyFault(one, other));
  process.stderr.write(faultsText(faults, styleFor(process.stderr, options)));
  const left = archive.cases.filter((one) => !copies.some((copy) => copy.one === one));
  return { archive: { ...archive, cases: left }, failed: true };
}

function copyFault({ file, id, document }: Case, other: Case): Fault {
  const place = document.where(["case"]);
  return {
    file,
    ...place,
    path: ["case"],
    intended: ["case"],
    message: `case: "${id}" is already the case of ${other.file}, and no pig is counted twice. Take out the copy, or give one of the two pigs an id of its own.`,
    excerpt: document.line(place.line),
    kind: "format",
    outOfRange: false,
  };
}
