/** What is wished of a table, and the files that come of it. */

export interface TallyWish {
  /** The table, as shown to people. */
  readonly file: string;
  readonly bytes: Buffer;
  /** The folder of the visit. */
  readonly folder: string;
  readonly config?: string | false | undefined;
  /** What a visit file that is not there yet is to say. */
  readonly visit?: string | undefined;
  readonly date?: string | undefined;
  readonly protocol?: string | undefined;
  /** Files of pigs that the visit has already, by their numbers. */
  readonly there: ReadonlyMap<number, string>;
  /** Where cases of these numbers are written. */
  folderFor(numbers: readonly number[]): string;
}

export interface NewFile {
  readonly file: string;
  readonly text: string;
}

export interface NewCase extends NewFile {
  readonly id: string;
  readonly tag: string;
  /** Its line in the table. */
  readonly line: number;
}
