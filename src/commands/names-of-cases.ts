/** `carcase names-of-cases`, which the completion of a shell calls: the names of cases that begin so, a line each. */
import { casesNamed, plainName } from "./case-names.ts";
import type { Run } from "./run.ts";

export function namesOfCases(run: Run): number {
  const [begin = ""] = run.paths;
  const found = casesNamed((name) => name.startsWith(begin) && plainName.test(name));
  run.write([...new Set(found.map(({ id }) => `${id}\n`))].join(""));
  return run.end();
}
