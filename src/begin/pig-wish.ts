/** A pig that is to be opened, as far as it is known. */
export interface PigWish {
  /** Why it is on the table, where that is known. */
  readonly basis: string | undefined;
  /** Signs of its own; [none] of a healthy pig. */
  readonly signs: readonly string[] | undefined;
  readonly tag?: string | undefined;
  readonly group?: string | undefined;
  readonly note?: string | undefined;
}
