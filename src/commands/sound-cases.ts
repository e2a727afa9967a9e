/** Scores and herd numbers are made from sound files only: a value that does not fit the format is never left out in silence. */
import { faultsText } from "../formats/faults-text.ts";
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
