/**
 * Two people's work on one record, brought together part by part: what only one of them changed is taken from that text with
 * its comments and layout, and what both changed alike once. The result is proven by reading it.
 */
import { isDeepStrictEqual } from "node:util";
import { isKeyed } from "../cases/model/path.ts";
import { parseYaml } from "../cases/yaml/parse-yaml.ts";
import { quickTree } from "../cases/yaml/quick-tree.ts";
import { answersIn, isOrgan, lastKey, type RecordKind, type Step } from "./changes.ts";
import {
  aligned,
  bodyOf,
  type Chunk,
  columnOf,
  dataOf,
  flowText,
  isBlank,
  isFlow,
  isOneKind,
  isOnOwnLine,
  isSame,
  type Part,
  picked,
  type Three,
  tailOf,
  Unsafe,
  whole,
} from "./merge-parts.ts";
import { asKeyed } from "./pairs.ts";
import { conflictSentence } from "./sentence.ts";

export type Merged =
  /** `conflicts` say what both changed in different ways; the text then has both between marks, or what was kept. */
  | { readonly ok: true; readonly text: string; readonly conflicts: readonly string[] }
  /** It cannot be brought together by its parts. */
  | { readonly ok: false };

export interface MergedTexts {
  /** The last state that both had; empty where each made the file anew. */
  readonly base: string;
  readonly ours: string;
  readonly theirs: string;
}

/** @param markSize the signs of a conflict mark */
export function mergeRecords(kind: RecordKind, texts: MergedTexts, markSize = 7): Merged {
  const isCarriage = texts.ours.includes("\r\n");
  const lines = (text: string): string => `${text.replaceAll("\r\n", "\n").trimEnd()}\n`;
  const [base, ours, theirs] = [texts.base, texts.ours, texts.theirs].map((text) => partOf(lines(text)));
  if (ours === undefined || theirs === undefined || (base === undefined && texts.base.trim() !== ""))
    return { ok: false };
  try {
    const conflicts = new Set<string>();
    const made = (mode: Mode): Out =>
      new Merger(kind, mode, markSize, conflicts).merge(base, ours, theirs, []);
    const isProven = ({ text, value }: Out): boolean => {
      const read = parseYaml(text);
      return read.ok && isDeepStrictEqual(read.document.value, value);
    };
    const one = made("ours");
    if (one.value === undefined) return { ok: false };
    const result = conflicts.size === 0 ? one : made("marked");
    if (!isProven(one) || (conflicts.size > 0 && !isProven(made("theirs")))) return { ok: false };
    if (losesComment(result.text, { base: base?.text ?? "", ours: ours.text, theirs: theirs.text }))
      return { ok: false };
    const text = isCarriage ? result.text.replaceAll("\n", "\r\n") : result.text;
    return { ok: true, text, conflicts: [...conflicts] };
  } catch (error) {
    if (error instanceof Unsafe) return { ok: false };
    throw error;
  }
}

/** `marked` puts what cannot be decided between marks; the others decide it for one side. */
type Mode = "ours" | "theirs" | "marked";

interface Out {
  readonly text: string;
  readonly value: unknown;
  /** Whose text it is. */
  readonly from: "ours" | "theirs" | "both";
}

function partOf(text: string): Part | undefined {
  const node = quickTree(text);
  return node?.kind === "map" && !isFlow({ text, node }) ? { text, node } : undefined;
}

class Merger {
  readonly #kind: RecordKind;
  readonly #mode: Mode;
  readonly #markSize: number;
  readonly #conflicts: Set<string>;

  constructor(kind: RecordKind, mode: Mode, markSize: number, conflicts: Set<string>) {
    this.#kind = kind;
    this.#mode = mode;
    this.#markSize = markSize;
    this.#conflicts = conflicts;
  }

  merge(base: Part | undefined, ours: Part, theirs: Part, at: readonly Step[]): Out {
    const take = (part: Part, from: Out["from"]): Out => ({
      text: at.length === 0 ? part.text : bodyOf(part),
      value: dataOf(part),
      from,
    });
    if (base !== undefined && bodyOf(ours) === bodyOf(base)) return take(theirs, "theirs");
    if (base !== undefined && bodyOf(theirs) === bodyOf(base)) return take(ours, "ours");
    if (bodyOf(ours) === bodyOf(theirs)) return take(ours, "ours");
    const common = base !== undefined && isOneKind(base, ours) ? base : undefined;
    if (isOneKind(ours, theirs) && !this.#isOtherAnswer(common, ours, theirs, at))
      return this.#mergeChunks(common, ours, theirs, at);
    if (isSame(ours, theirs) || (base !== undefined && isSame(theirs, base))) return take(ours, "ours");
    if (base !== undefined && isSame(ours, base)) return take(theirs, "theirs");
    this.#differ(at, { ours, theirs }, this.#conflicts);
    return this.#mode === "theirs" ? take(theirs, "theirs") : take(ours, "ours");
  }

  /** Whether both say in ways of their own how an organ is: normal, not examined, or what was found. */
  #isOtherAnswer(base: Part | undefined, ours: Part, theirs: Part, at: readonly Step[]): boolean {
    if (this.#kind !== "case" || !isOrgan(at)) return false;
    const [was, one, other] = [base, ours, theirs].map((part) =>
      answersIn(part === undefined ? undefined : dataOf(part)),
    );
    return one !== other && (base === undefined || (one !== was && other !== was));
  }

  /** What each made of one thing, or that one of them took it out. */
  #differ(
    at: readonly Step[],
    { ours, theirs }: { readonly ours: Part | undefined; readonly theirs: Part | undefined },
    conflicts: Set<string>,
  ): void {
    const [one, other] = [ours, theirs].map((part) => (part === undefined ? undefined : dataOf(part)));
    const said = conflictSentence(this.#kind, at, { ours: one, theirs: other });
    conflicts.add(said);
  }

  #mergeChunks(base: Part | undefined, ours: Part, theirs: Part, at: readonly Step[]): Out {
    const isList = ours.node.kind === "list";
    // The bare list of an organ is that of its findings.
    const inside = isList && this.#kind === "case" && isOrgan(at) ? [...at, "findings"] : at;
    const all = aligned(base, ours, theirs, lastKey(inside));
    const outs = new Map<string, Out>();
    for (const [id, three] of all.chunks) {
      const one = three.ours ?? three.theirs ?? three.base;
      if (one === undefined) continue;
      const step = one.key ?? { index: 0, item: asKeyed(lastKey(inside), dataOf(one)) };
      const out = this.#mergeChunk(three, [...inside, step], isFlow(ours));
      if (out?.value !== undefined) outs.set(id, out);
    }
    const order = all.order.filter((id) => outs.has(id));
    // What both emptied between them goes with its key.
    if (order.length === 0) return { text: "", value: undefined, from: "both" };
    const value = isList
      ? order.map((id) => outs.get(id)?.value)
      : Object.fromEntries(order.map((id) => [id, outs.get(id)?.value]));
    const texts = order.map((id) => outs.get(id)?.text ?? "");
    if (isFlow(ours)) return { text: flowText(ours, texts, order, all.oursIds), value, from: "both" };
    const tail = at.length > 0 ? "" : (picked(tailOf(base), tailOf(ours), tailOf(theirs)) ?? tailOf(ours));
    return { text: `${this.#blockText(ours, texts)}${tail}`, value, from: "both" };
  }

  /** Entries on lines of their own, from where the first of them stands. */
  #blockText(ours: Part, texts: readonly string[]): string {
    const text = texts.join("");
    const column = columnOf(ours);
    if (this.#isMarked(text)) return text;
    if (text.slice(0, column).trim() !== "") throw new Unsafe();
    return text.slice(column);
  }

  #isMarked(text: string): boolean {
    return this.#mode === "marked" && text.startsWith(this.#mark("<", " ours"));
  }

  #mark(sign: string, name = ""): string {
    return `${sign.repeat(this.#markSize)}${name}\n`;
  }

  /** Undefined where it is taken out. */
  #mergeChunk({ base, ours, theirs }: Three<Chunk>, at: readonly Step[], inFlow: boolean): Out | undefined {
    if (ours !== undefined && theirs !== undefined) return this.#mergeBoth(base, ours, theirs, at, inFlow);
    const kept = ours ?? theirs;
    if (kept === undefined) return undefined;
    const out: Out = { text: whole(kept), value: dataOf(kept), from: "both" };
    if (base === undefined || (isBlank(base) && !isBlank(kept))) return out;
    if (isDeepStrictEqual(dataOf(kept), dataOf(base))) return undefined;
    this.#differ(at, { ours, theirs }, this.#conflicts);
    return out;
  }

  #mergeBoth(base: Chunk | undefined, ours: Chunk, theirs: Chunk, at: readonly Step[], inFlow: boolean): Out {
    const merged = (mode: Mode, conflicts = new Set<string>()): Out & { isTorn: boolean } => {
      const own = new Merger(this.#kind, mode, this.#markSize, conflicts);
      // A blank key answers nothing: what is written behind it is new.
      const out = own.merge(isBlank(base) ? undefined : base, ours, theirs, at);
      const filled = isBlank(ours) ? theirs : isBlank(theirs) ? ours : undefined;
      const isNew = filled !== undefined && !isBlank(filled) && !(base !== undefined && isSame(filled, base));
      if (isNew) {
        conflicts.clear();
        if (!isBlank(base))
          this.#differ(
            at,
            filled === ours ? { ours, theirs: undefined } : { ours: undefined, theirs },
            conflicts,
          );
      }
      const { text, value, from } = isNew
        ? {
            text: filled.body,
            value: dataOf(filled),
            from: filled === ours ? ("ours" as const) : ("theirs" as const),
          }
        : out;
      const side = from === "theirs" ? theirs : ours;
      const pick = (part: "lead" | "head" | "post"): string =>
        (part === "head" && from !== "both" ? undefined : picked(base?.[part], ours[part], theirs[part])) ??
        side[part];
      const head = this.#isMarked(text) ? pick("head").replace(/(?<=\n) *$/, "") : pick("head");
      const chunk = `${pick("lead")}${head}${text}${pick("post")}`;
      return { text: chunk, value, from: "both", isTorn: conflicts.size > 0 };
    };
    const found = new Set<string>();
    const out = merged(this.#mode, found);
    for (const said of found) this.#conflicts.add(said);
    if (this.#mode !== "marked" || inFlow || !out.isTorn) return out;
    // Whoever reads it finds the marks around as little as can stand on lines of its own.
    if (isOneKind(ours, theirs) && !isFlow(ours) && [ours, theirs].every(isOnOwnLine)) return out;
    const [one, other] = [merged("ours").text, merged("theirs").text];
    if (one === other) return out;
    return {
      ...out,
      text: `${this.#mark("<", " ours")}${one}${this.#mark("=")}${other}${this.#mark(">", " theirs")}`,
    };
  }
}

/** Whether a comment that one of them wrote, or that both kept, is not in the result. */
function losesComment(text: string, { base, ours, theirs }: MergedTexts): boolean {
  const [was, one, other, now] = [base, ours, theirs, text].map(commentsOf);
  return [...(one ?? []), ...(other ?? [])].some(
    (comment) => !now?.has(comment) && (!was?.has(comment) || (one?.has(comment) && other?.has(comment))),
  );
}

const commentsOf = (text: string): Set<string> =>
  new Set(text.split("\n").flatMap((line) => /(?:^|\s)(#.*)$/.exec(line)?.[1]?.trim() ?? []));

/** The kind of a text, as far as its merging goes. */
export function kindOfText(text: string): RecordKind | undefined {
  const parsed = parseYaml(text);
  const value = parsed.ok ? parsed.document.value : undefined;
  return isKeyed(value)
    ? (["results", "case", "visit", "farm"] as const).find((key) => Object.hasOwn(value, key))
    : undefined;
}
