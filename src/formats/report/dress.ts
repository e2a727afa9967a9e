/** What the practice and the reader's paper add to a report: they change how it looks, never what its data say. */
import type { Audience } from "../../report/index.ts";
import type { Html } from "../page/html.ts";

/** A photograph ready to be shown: in the page itself, or where a link leads. */
export type Shown =
  | { readonly embedded: string; readonly width: number; readonly height: number }
  | { readonly link: string };

export interface Letterhead {
  readonly name: string;
  readonly address: readonly string[];
  readonly telephone: string | null;
  /** As a `data:` address. */
  readonly logo: string | null;
}

/** A section of the practice's own: paragraphs, or what its template made. */
export interface OwnSection {
  readonly title: string;
  readonly body: readonly string[] | Html;
}

export interface Dress {
  readonly letterhead: Letterhead | null;
  readonly extra: ReadonlyMap<string, OwnSection>;
  /** Sections that come first, by reader. */
  readonly order: Readonly<Partial<Record<Audience, readonly string[]>>>;
  /** What templates made in place of sections that ship. */
  readonly replaced: ReadonlyMap<string, Html>;
  /** By the digest of the photograph. */
  readonly photographs: ReadonlyMap<string, Shown>;
}

export const plain: Dress = {
  letterhead: null,
  extra: new Map(),
  order: {},
  replaced: new Map(),
  photographs: new Map(),
};
