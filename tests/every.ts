/** Hundreds of cases of one kind are one test, which goes through all of them and names each that fails. */
import { inspect } from "node:util";
import { expect, it } from "vitest";

/** One test of all rows; a failing row is called by its name: what it is, its id or, said here, another. */
export function every<Row>(
  title: string,
  rows: Iterable<Row>,
  check: (row: Row) => unknown,
  name: (row: Row) => string = ownName,
): void {
  it(title, async () => {
    const all = [...rows];
    expect(all.length, "rows to check").toBeGreaterThan(0);
    const failed: string[] = [];
    for (const row of all) {
      try {
        await check(row);
      } catch (error) {
        failed.push(`${name(row)}: ${said(error)}`);
      }
    }
    expect(failed).toEqual([]);
  });
}

const ownName = (row: unknown): string =>
  typeof row === "object" && row !== null && "id" in row
    ? String(row.id)
    : typeof row === "string"
      ? row
      : inspect(row, { breakLength: Number.POSITIVE_INFINITY });

/** What failed, and for an assertion both values; of two texts, the first line in which they differ. */
function said(error: unknown): string {
  if (!(error instanceof Error)) return String(error);
  if (!("actual" in error && "expected" in error)) return error.message;
  const { actual, expected } = error;
  if (typeof actual !== "string" || typeof expected !== "string")
    return `${error.message}\n  is      ${inspect(actual)}\n  must be ${inspect(expected)}`;
  const [is, wanted] = [actual.split("\n"), expected.split("\n")];
  const at = [...is, ...wanted].findIndex((_, index) => is[index] !== wanted[index]);
  return `${error.message}\n  line ${at + 1} is      ${is[at]}\n  line ${at + 1} must be ${wanted[at]}`;
}
