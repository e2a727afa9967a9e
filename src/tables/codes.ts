/** The words that a column may hold: from the table, or from the place in a schema that its values come from. */
import { schemaText } from "../schemas/index.ts";
import type { Column } from "./table.ts";

type Node = Readonly<Record<string, unknown>>;

const isNode = (value: unknown): value is Node => typeof value === "object" && value !== null;

const kinds = ["case", "visit", "farm", "results"] as const;
const read = new Map<string, Node>();

/** Undefined where the values are no words of a list. */
export function codesOf({ isCode, codes, from }: Column): readonly string[] | undefined {
  if (!isCode || codes !== undefined) return codes;
  const [, name, path = ""] = /^(\w+): ([#\w.-]+)$/.exec(from) ?? [];
  const kind = kinds.find((one) => one === name);
  if (kind === undefined) return undefined;
  const root = read.get(kind) ?? (JSON.parse(schemaText(kind)) as Node);
  read.set(kind, root);
  const [first = "", ...steps] = path.split(".");
  const start = first.startsWith("#") ? within(root, ["$defs", first.slice(1)]) : property(root, root, first);
  return wordsOf(
    steps.reduce<unknown>((at, step) => property(root, at, step), start),
    root,
  );
}

const within = (node: unknown, steps: readonly string[]): unknown =>
  steps.reduce<unknown>((at, step) => (isNode(at) ? at[step] : undefined), node);

/** A node with its references followed: itself, what it is any of, and what it is where it has keys. */
function followed(root: Node, node: unknown): Node[] {
  if (!isNode(node)) return [];
  const { $ref: leads, anyOf, then } = node;
  const next = typeof leads === "string" ? followed(root, within(root, leads.slice(2).split("/"))) : [];
  return [
    node,
    ...next,
    ...followed(root, then),
    ...(Array.isArray(anyOf) ? anyOf.flatMap((one) => followed(root, one)) : []),
  ];
}

const property = (root: Node, node: unknown, key: string): unknown =>
  followed(root, node)
    .map((one) => within(one, ["properties", key]))
    .find((one) => one !== undefined);

function wordsOf(node: unknown, root: Node): readonly string[] | undefined {
  const found = followed(root, node).flatMap(({ enum: words, items }) => [
    ...(Array.isArray(words) ? words.map(String) : []),
    ...(items === undefined ? [] : (wordsOf(items, root) ?? [])),
  ]);
  return found.length === 0 ? undefined : [...new Set(found)];
}
