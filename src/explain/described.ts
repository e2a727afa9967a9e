/** A description in blocks, from which the terminal and the pages of the documentation are both made. */

export interface Block {
  /** Null for the opening text. */
  readonly heading: string | null;
  /** Sentences, each a line of its own. */
  readonly text?: readonly string[];
  readonly table?: { readonly head: readonly string[]; readonly rows: readonly (readonly string[])[] };
  /** What somebody would type, as data. */
  readonly record?: unknown;
  /** Sentences after the table or the record. */
  readonly after?: readonly string[];
}

/** A block, or nothing where there is nothing to say. */
export function block(heading: string | null, content: Omit<Block, "heading">): Block[] {
  const { text = [], table, record, after = [] } = content;
  const empty =
    text.length === 0 && after.length === 0 && record === undefined && (table?.rows ?? []).length === 0;
  return empty ? [] : [{ heading, ...content }];
}
