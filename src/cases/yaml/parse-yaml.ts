/** Parses one text: the quick way where it is ordinary and right, else with the parser that finds and explains every error. */
import type { Parsed } from "./document.ts";
import { quickTree } from "./quick-tree.ts";
import { sourceFaults } from "./source-checks.ts";
import { PlacedDocument } from "./source-places.ts";
import { TextLines } from "./text-lines.ts";
import { parseSlowly } from "./yaml-document.ts";

/**
 * @param text decoded text without byte order mark
 * @returns the document, or every fault that keeps it from being read
 */
export function parseYaml(text: string): Parsed {
  const tree = quickTree(text);
  if (tree === undefined || sourceFaults(tree).length > 0) return parseSlowly(text);
  return { ok: true, document: new PlacedDocument(tree, new TextLines(text)) };
}
