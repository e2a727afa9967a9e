/** The key of pseudonyms, in a file of its own that only its owner may read. */
import { readInput } from "../cases/files/input.ts";
import { keyIn } from "../tables/index.ts";
import { UsageError } from "./usage-error.ts";
import { writeWhole } from "./write-file.ts";

/** More than a key and the end of its line. */
const most = 1000;

/** @throws UsageError when a file is there, or it cannot be written */
export const writeKey = (file: string, key: string): void =>
  writeWhole(
    file,
    `${key}\n`,
    (there) =>
      there === undefined
        ? undefined
        : `--new-key: ${file} is there already and is left as it is; leave out --new-key to use it`,
    0o600,
  );

/** @throws UsageError when there is no key in it */
export function readKey(file: string): string {
  const read = readInput(file, most);
  const key = read.ok ? keyIn(Buffer.from(read.bytes).toString("latin1")) : undefined;
  if (key !== undefined) return key;
  throw new UsageError(
    read.ok || read.start !== undefined
      ? `--pseudonymise ${file}: that is no key (64 hexadecimal digits); --new-key makes one in a file that is not there yet`
      : `--pseudonymise ${file}: there is no key that can be read; add --new-key to make one there, once`,
  );
}
