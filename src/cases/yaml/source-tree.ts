/** What a parser found in a text, without a trace of the parser: values as written, and where each of them stands. */

/** A stretch of the text, in characters from its beginning. */
export interface Span {
  readonly start: number;
  readonly end: number;
}

export interface ScalarNode extends Span {
  readonly kind: "scalar";
  readonly value: string | number | boolean | null;
  /** Where its anchor (&) stands, if it has one that may have been meant as part of a text. */
  readonly anchor: Span | undefined;
  /** Where its tag (!) stands, if it has one. */
  readonly tag: Span | undefined;
}

export interface MapEntry {
  /** Undefined where a key was due and none is written. */
  readonly key: SourceNode | undefined;
  readonly value: SourceNode | undefined;
}

export interface MapNode extends Span {
  readonly kind: "map";
  readonly entries: readonly MapEntry[];
  /** Where its tag (!) stands, if it has one. */
  readonly tag: Span | undefined;
}

interface ListNode extends Span {
  readonly kind: "list";
  readonly items: readonly SourceNode[];
  /** Where its tag (!) stands, if it has one. */
  readonly tag: Span | undefined;
}

/** A reference (*name) to a node above it. */
interface AliasNode extends Span {
  readonly kind: "alias";
  readonly name: string;
  readonly target: SourceNode | undefined;
}

export type SourceNode = ScalarNode | MapNode | ListNode | AliasNode;

/** The word a key consists of; undefined for a key that is no plain word. */
export const keyWord = (key: SourceNode | undefined): string | undefined =>
  key?.kind === "scalar" ? String(key.value ?? "") : undefined;
