/** Words of change in a note: what a normal organ does not have. */
import { type AgeClass, denial, description, type PlacedOrgan } from "../knowledge/index.ts";
import { type Affirmed, affirmed, hasAny } from "./index.ts";

const { words, also, fine, unless, unless_beside: unlessBeside, fluid } = description.changed;

/**
 * The first word of change that the note of the organ affirms: `black` in "black, no froth", nothing in "no froth or
 * blood", in "black pigment" or in a note that is not sure.
 */
export function changedWord(
  note: string | undefined,
  organ: PlacedOrgan,
  ageClass: AgeClass | undefined,
): string | undefined {
  if (note === undefined) return undefined;
  const found = affirmed(note, wordsAt(organ)).find(
    ({ text, clause, clauses }) =>
      !hasAny(text, listAt(fine, organ)) &&
      !hasAny(clause, unlessBeside) &&
      !clauses.some((part) => hasAny(part, unless) || hasAny(part, denial.doubt)),
  );
  return found?.text ?? muchFluid(note, organ, ageClass)?.text;
}

/** Lists of an organ are made once, because patterns are kept by list. */
const lists = new Map<string, readonly string[]>();

function listAt(from: typeof also, { id, system }: PlacedOrgan): readonly string[] {
  const key = `${from === fine ? "fine" : "also"} ${id}`;
  const known =
    lists.get(key) ??
    from.filter(({ at }) => at.includes(id) || at.includes(system)).flatMap((one) => one.words);
  lists.set(key, known);
  return known;
}

function wordsAt(organ: PlacedOrgan): readonly string[] {
  const own = listAt(also, organ);
  const key = `all ${organ.id}`;
  const known = lists.get(key) ?? (own.length === 0 ? words : [...words, ...own]);
  lists.set(key, known);
  return known;
}

/** Fluid of so many millilitres that it is a finding. */
function muchFluid(note: string, organ: PlacedOrgan, ageClass: AgeClass | undefined): Affirmed | undefined {
  if (!fluid.at.includes(organ.id) || ageClass === undefined || !fluid.classes.includes(ageClass))
    return undefined;
  return affirmed(note, fluid.words).find(({ clauses }) => {
    if (clauses.some((clause) => hasAny(clause, fluid.unless))) return false;
    const [, number, unit] =
      /(?<!\d)(\d+(?:[.,]\d+)?)\s*(ml|cl|dl|l)(?!\p{L})/iu.exec(clauses.join(", ")) ?? [];
    const ml = Number(number?.replace(",", ".")) * (inMl[unit?.toLowerCase() ?? ""] ?? Number.NaN);
    return ml >= fluid.ml;
  });
}

const inMl: Readonly<Record<string, number>> = { ml: 1, cl: 10, dl: 100, l: 1000 };
