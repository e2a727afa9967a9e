/** What a parsed text may hold by the rules of YAML but not in a case file: each with its place and a way out. */
import { hiddenCharacter, hiddenName } from "../../words/hidden-characters.ts";
import { keyWord, type MapNode, type SourceNode, type Span } from "./source-tree.ts";
import type { SyntaxMessage } from "./syntax-message.ts";

/** More values than this, with all references unfolded, are not a case file but an attack on memory. */
const maxValues = 250_000;
/** No list and no group of keys in a case file is longer. */
export const maxEntries = 2000;
/** No case file nests deeper, with all references unfolded. */
export const maxDepth = 100;
/** Names that would reach into JavaScript's own objects. */
export const forbiddenKeys = new Set(["__proto__", "constructor", "prototype"]);

/** How large a node is with all references unfolded. */
interface Extent {
  readonly values: number;
  readonly depth: number;
}

/** Checks the whole tree, in the order of the text. */
export function sourceFaults(root: SourceNode | undefined): SyntaxMessage[] {
  const faults: SyntaxMessage[] = [];
  const fault = ({ start, end }: Span, message: string): void => {
    faults.push({ start, end, message });
  };
  const extents = new Map<SourceNode, Extent>();
  const anchored = new Map<SourceNode, Span>();
  const used = new Set<SourceNode>();

  const visit = (node: SourceNode | undefined): Extent => {
    if (node === undefined) return { values: 1, depth: 0 };
    const extent = visitKind(node);
    extents.set(node, extent);
    return extent;
  };
  const visitKind = (node: SourceNode): Extent => {
    if (node.kind === "alias") return visitAlias(node);
    if (node.tag !== undefined)
      fault(
        node.tag,
        "text that begins with ! is read as a tag, and tags are not read here; put it in quotes or take it out",
      );
    if (node.kind === "scalar") {
      if (node.anchor !== undefined && node.tag === undefined) anchored.set(node, node.anchor);
      hidden(node);
      return { values: 1, depth: 0 };
    }
    const entries = node.kind === "map" ? node.entries : node.items;
    if (entries.length > maxEntries)
      fault(
        node,
        `this has ${entries.length} entries, and more than ${maxEntries} no case file has; is it the right file?`,
      );
    if (node.kind === "map") {
      checkKeys(node, fault);
      for (const { key } of node.entries)
        if (key?.kind === "alias" && key.target !== undefined) used.add(key.target);
    }
    return around(
      node,
      node.kind === "map" ? node.entries.map(({ value }) => visit(value)) : node.items.map(visit),
    );
  };
  const around = (node: SourceNode, inside: readonly Extent[]): Extent => {
    const values = inside.reduce((sum, one) => sum + one.values, 1);
    const depth = inside.reduce((most, one) => Math.max(most, one.depth), 0) + 1;
    if (depth > maxDepth && inside.every((one) => one.depth <= maxDepth)) fault(node, tooDeepMessage);
    if (values > maxValues && inside.every((one) => one.values <= maxValues)) fault(node, tooLargeMessage);
    return { values, depth };
  };
  const visitAlias = (node: SourceNode & { kind: "alias" }): Extent => {
    if (node.target !== undefined) used.add(node.target);
    const known = node.target === undefined ? undefined : extents.get(node.target);
    if (known === undefined)
      fault(
        node,
        node.target === undefined
          ? `*${node.name} is read as a reference, and there is no anchor &${node.name} above it; if it is text, put it in quotes`
          : `the reference *${node.name} leads back to itself; write out what is meant`,
      );
    return known ?? { values: 1, depth: 0 };
  };
  const hidden = (node: SourceNode & { kind: "scalar" }): void => {
    const found = typeof node.value === "string" ? hiddenCharacter.exec(node.value) : null;
    if (found !== null) fault(node, `this text holds ${hiddenName(found[0])}; take it out`);
  };

  visit(root);
  // An anchor that nothing refers to was meant to be text, and would be lost.
  for (const [node, anchor] of anchored) if (!used.has(node)) fault(anchor, unusedAnchor);
  return faults;
}

const unusedAnchor =
  "text that begins with & is read as an anchor, and nothing refers to it; put it in quotes, or take the anchor out";

export const tooDeepMessage = `nested more than ${maxDepth} levels deep, which no case file is; look for a bracket that is not closed or indentation that grows`;

const tooLargeMessage = `with all references (*) unfolded this holds more than ${maxValues} values; write out what is meant`;

/** Keys must be plain words, each once. */
function checkKeys(map: MapNode, fault: (at: Span, message: string) => void): void {
  const seen = new Set<string>();
  for (const { key, value } of map.entries) {
    const at = key ?? value ?? map;
    const word = keyWord(key);
    const problem = keyProblem(word, seen);
    if (problem !== undefined) fault(at, problem);
    if (word !== undefined) seen.add(word);
  }
}

/** What is wrong with a key, beside keys that were seen in the same place. */
export function keyProblem(word: string | undefined, seen: ReadonlySet<string>): string | undefined {
  if (word === undefined) return "a key must be a plain word";
  if (word.trim() === "") return "a key is missing before the colon";
  if (word === "<<") return "merge keys (<<) are not read; write the keys out";
  if (forbiddenKeys.has(word)) return `"${word}" cannot be a key; take it out`;
  if (seen.has(word)) return "this key stands twice in the same place; keep one";
  const found = hiddenCharacter.exec(word);
  if (found !== null) return `this key holds ${hiddenName(found[0])}; take it out`;
  return /[\n\t]/.test(word) ? "a key must stand on one line, without tabs" : undefined;
}
