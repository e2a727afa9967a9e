/** Finds the place of a path in a parsed text. */

import type { Path } from "../model/path.ts";
import type { Place, SourceDocument } from "./document.ts";
import { keyWord, type MapEntry, type MapNode, type SourceNode, type Span } from "./source-tree.ts";
import { plainValue } from "./source-value.ts";
import type { TextLines } from "./text-lines.ts";

export class PlacedDocument implements SourceDocument {
  readonly value: unknown;
  readonly #root: SourceNode | undefined;
  readonly #lines: TextLines;
  readonly #entries = new WeakMap<MapNode, ReadonlyMap<string, MapEntry>>();

  constructor(root: SourceNode | undefined, lines: TextLines) {
    this.#root = root;
    this.#lines = lines;
    this.value = plainValue(root);
  }

  get text(): string {
    return this.#lines.text;
  }

  where(path: Path): Place {
    return this.#find(path, "value");
  }

  whereKey(path: Path): Place {
    return this.#find(path, "key");
  }

  line(number: number): string {
    return this.#lines.line(number);
  }

  #find(path: Path, want: "key" | "value"): Place {
    let node = this.#root;
    let key = node;
    for (const step of path) {
      // What stands behind a reference is wrong where it is used, not where it was first written.
      if (node?.kind === "alias") return this.#lines.place(node);
      const next = this.#step(node, step);
      if (next === undefined) return this.#lines.place(key ?? start);
      key = next.key ?? next.value;
      node = next.value;
    }
    const empty = node === undefined || node.start === node.end;
    return this.#lines.place((want === "key" || empty ? key : node) ?? start);
  }

  #step(node: SourceNode | undefined, step: string | number): MapEntry | undefined {
    if (node?.kind === "map") return this.#entriesOf(node).get(String(step));
    const value = node?.kind === "list" && typeof step === "number" ? node.items[step] : undefined;
    return value === undefined ? undefined : { key: value, value };
  }

  #entriesOf(map: MapNode): ReadonlyMap<string, MapEntry> {
    const known = this.#entries.get(map);
    if (known !== undefined) return known;
    const entries = new Map(map.entries.map((entry) => [keyWord(entry.key) ?? "", entry]));
    this.#entries.set(map, entries);
    return entries;
  }
}

const start: Span = { start: 0, end: 1 };
