/** The plain value of a parsed text. Every reference gets a copy of its own, so that no two places share one value. */
import { keyWord, type SourceNode } from "./source-tree.ts";

/** @param node a tree without faults (see source-checks.ts), so neither circular nor too large when unfolded */
export function plainValue(node: SourceNode | undefined): unknown {
  switch (node?.kind) {
    case undefined:
      return null;
    case "scalar":
      return node.value;
    case "alias":
      return plainValue(node.target);
    case "list":
      return node.items.map(plainValue);
    case "map":
      return Object.fromEntries(
        node.entries.map(({ key, value }) => [keyWord(key) ?? "", plainValue(value)]),
      );
  }
}
