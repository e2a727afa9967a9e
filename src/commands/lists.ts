/** Lists of ids on the command line. */
import { unknownName } from "../cases/index.ts";
import { UsageError } from "./usage-error.ts";

/**
 * `{ scales: ["maff-1978"] }` from `maff-1978,`; nothing when the option was not given.
 * @param option named where the list may not be empty
 * @throws UsageError when it is empty all the same
 */
export function idList<Name extends string>(
  name: Name,
  text: string | undefined,
  option?: string,
): { [key in Name]?: string[] } {
  if (text === undefined) return {};
  const ids = text
    .split(",")
    .map((id) => id.trim())
    .filter((id) => id !== "");
  if (ids.length === 0 && option !== undefined)
    throw new UsageError(
      `${option}: there is no name in "${text}"; write one or several, separated by commas, or leave the option out`,
    );
  return { [name]: ids } as { [key in Name]?: string[] };
}

/** Turns the range errors of a library call (an unknown id, a level out of range) into errors of usage. */
export function asUsage<T>(option: string, call: () => T): T {
  try {
    return call();
  } catch (error) {
    if (error instanceof RangeError) throw new UsageError(`${option}: ${error.message}`);
    throw error;
  }
}

/**
 * Words of a list that is known: `group,age-class`; hyphens and underscores are the same.
 * @throws UsageError with the nearest word for one that is not known
 */
export function choices<Word extends string>(option: string, text: string, known: readonly Word[]): Word[] {
  const chosen = text.split(",").map((part) => {
    const word = known.find((one) => one === part.trim().replaceAll("-", "_"));
    if (word === undefined) throw new UsageError(`${option}: ${unknownName(part.trim(), known, "part")}`);
    return word;
  });
  return [...new Set(chosen)];
}
