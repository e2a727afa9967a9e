/** What a path on the command line led to. */

export interface Found {
  readonly path: string;
  readonly files: readonly FoundFile[];
  readonly faults: readonly { readonly file: string; readonly message: string }[];
}

export interface FoundFile {
  readonly file: string;
  /**
   * named: by the user, so it is read whatever it looks like and whatever is ignored. walked: found by looking through
   * its whole folder. matched: by a pattern, which may have left out other files of its folder.
   */
  readonly how: "named" | "walked" | "matched";
}
