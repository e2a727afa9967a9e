/** A format 2 that does not exist, to try the machinery on: each kind of step, on several kinds of file. */
import { valueAt } from "../../src/cases/model/path.ts";
import type { Migration, Step } from "../../src/migrate/index.ts";

const where = (value: unknown, path: readonly string[], step: Step): Step[] =>
  valueAt(value, path) === undefined ? [] : [step];

export const toTwo: Migration = {
  from: 1,
  says: "An ear tag is a mark, a castrate is neutered, and what was told is in the visit.",
  steps(kind, value) {
    if (kind === "visit") return where(value, ["complaint"], { path: ["complaint"], key: "told" });
    if (kind !== "case") return [];
    return [
      ...where(value, ["pig", "tag"], { path: ["pig", "tag"], key: "mark" }),
      ...(valueAt(value, ["pig", "sex"]) === "castrate"
        ? [{ path: ["pig", "sex"], value: "neutered male" } as const]
        : []),
      ...where(value, ["history"], { path: ["history"], gone: true }),
      ...where(value, ["respiratory"], { path: ["respiratory"], key: "airways" }),
    ];
  },
};

/** One more, which renames what the first has renamed. */
export const toThree: Migration = {
  from: 2,
  says: "A mark is a label.",
  steps: (_, value) => where(value, ["pig", "mark"], { path: ["pig", "mark"], key: "label" }),
};
