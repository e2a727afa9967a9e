/** `--shard 3/16`: one of several parts of an archive, and how a result says which part it is of. */
import type { Shard } from "../cases/index.ts";
import { outputJson } from "../formats/page/json.ts";
import { sha256 } from "../words/sha256.ts";
import { UsageError } from "./usage-error.ts";
import { sources } from "./version.ts";

/** What the result of a part says beside the result itself. */
export interface ShardMark<Asked, Facts> {
  readonly command: "lint" | "herd";
  readonly number: number;
  readonly of: number;
  /** What all parts must have been asked alike. */
  readonly asked: Asked;
  /** What the whole cannot be put together without. */
  readonly facts: Facts;
}

/** Most parts of one archive. */
const most = 10_000;

/** @throws UsageError for what is no part, and for options that go over all of an archive */
export function shardOf(
  text: string | undefined,
  { format, not }: { readonly format: string; readonly not: Readonly<Record<string, unknown>> },
): Shard | undefined {
  if (text === undefined) return undefined;
  const [, number = 0, of = 0] = /^\s*(\d{1,5})\s*\/\s*(\d{1,5})\s*$/.exec(text)?.map(Number) ?? [];
  if (number < 1 || number > of || of > most)
    throw new UsageError(
      `--shard: "${text}" is no part such as 3/16, the third of sixteen; parts are counted from 1`,
    );
  if (format !== "json")
    throw new UsageError("--shard: the results of parts are put together from JSON; add --format json");
  const [other] = Object.entries(not).find(([, value]) => value !== undefined) ?? [];
  if (other !== undefined)
    throw new UsageError(`--shard and ${other}: ${other} goes over the whole archive; leave one of them out`);
  return { number, of };
}

/**
 * The JSON of a part: the result, what it is of, and a digest over both, so that nothing is put together with what was
 * never said.
 * @param json the result as it would stand by itself
 */
export function partJson(json: string, mark: ShardMark<object, object>): string {
  const result: Readonly<Record<string, unknown>> = JSON.parse(json);
  const shard: Readonly<Record<string, unknown>> = { ...mark, program: sources };
  return outputJson("part", 1, { result, shard, digest: digestOf(result, shard) });
}

const digestOf = (result: unknown, shard: unknown): string => sha256(JSON.stringify([result, shard]));

/** A part that was read again. */
export interface Part<Result, Asked, Facts> {
  readonly file: string;
  readonly result: Result;
  readonly mark: ShardMark<Asked, Facts>;
}

/** @throws UsageError for what is no part, of another program, or was changed */
export function partOf<Result, Asked, Facts>(file: string, text: string): Part<Result, Asked, Facts> {
  const { result, shard, digest } = parsed(text);
  if (result === undefined || shard === undefined)
    throw new UsageError(
      `${file} is no part of a result. Parts come from carcase lint --shard 1/4 --format json, and from herd in the same way`,
    );
  if (digestOf(result, shard) !== digest)
    throw new UsageError(`${file} was changed since carcase wrote it; make this part again`);
  const { program, ...mark } = shard as ShardMark<Asked, Facts> & { program: string };
  if (program !== sources)
    throw new UsageError(`${file} was made by another version of carcase; make all parts by one`);
  // What it says is what this program wrote: the digest is over all of it.
  return { file, result: result as Result, mark };
}

function parsed(text: string): Readonly<Record<string, unknown>> {
  try {
    return { ...JSON.parse(text) };
  } catch {
    return {};
  }
}

/** All parts of one whole. */
export type Parts<One> = readonly [One, ...One[]];

/** Parts in their order. @throws UsageError unless they are all parts of one whole, each once */
export function whole<One extends Part<unknown, unknown, unknown>>(parts: readonly One[]): Parts<One> {
  const sorted = parts.toSorted((a, b) => a.mark.number - b.mark.number);
  const [first, ...others] = sorted;
  if (first === undefined) throw new UsageError("name the results of the parts, such as shard-*.json");
  const askedOf = ({ mark }: One): string => JSON.stringify([mark.command, mark.of, mark.asked]);
  const other = sorted.find((one) => askedOf(one) !== askedOf(first));
  if (other !== undefined)
    throw new UsageError(
      `${first.file} and ${other.file} are parts of different runs: command, paths, options and number of parts must be the same`,
    );
  for (const [index, { file, mark }] of sorted.entries()) {
    if (mark.number === sorted[index - 1]?.mark.number)
      throw new UsageError(`${file} is part ${mark.number} of ${mark.of} once more; name each part once`);
  }
  const numbers = new Set(sorted.map(({ mark }) => mark.number));
  const missing = Array.from({ length: first.mark.of }, (_, index) => index + 1).filter(
    (number) => !numbers.has(number),
  );
  if (missing.length > 0)
    throw new UsageError(
      `part ${missing.slice(0, 5).join(", ")}${missing.length > 5 ? " and more" : ""} of ${first.mark.of} is missing`,
    );
  return [first, ...others];
}
