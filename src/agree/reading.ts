/** One value that one reader gave one pig on one scale. */
export interface Reading {
  /** Id of the case, or what the table calls the pig. */
  readonly pig: string;
  readonly reader: string;
  /** Id of the scale. */
  readonly scale: string;
  readonly value: number;
  /** Where it stands, for messages: `readings.csv:4` or a file. */
  readonly at: string;
}

/** Readings cannot be compared as they are written: for the user to put right. */
export class ReadingError extends RangeError {}
