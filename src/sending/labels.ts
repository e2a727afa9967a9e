/** What stands on the label of a container, and in which place of the sheets it comes. */
import { type Container, testNames } from "../record/index.ts";
import { listing } from "../words/listing.ts";
import { shortId } from "../words/short-id.ts";

export interface Label {
  readonly id: string;
  /** Beside the id, the most important first. */
  readonly texts: readonly string[];
  readonly of: Container;
}

export function labelOf(of: Container): Label {
  const { id, pig, tag, pooledWith, what, container, tests, one, takenAt } = of;
  const { visit } = one;
  const name = shortId(pig, visit?.id);
  const others = pooledWith.map((other) => shortId(other, visit?.id));
  const [day, clock] = (takenAt ?? visit?.record.date ?? "").split("T");
  return {
    id,
    texts: [
      `${others.length === 0 ? "Pig" : "Pigs"} ${listing([name, ...others])}${tag === undefined ? "" : `, tag ${tag}`}`,
      what,
      [container, testNames(tests)].filter(Boolean).join(": "),
      [day, clock?.slice(0, 5), visit?.id].filter(Boolean).join(" "),
    ].filter((text) => text !== ""),
    of,
  };
}

/**
 * Labels in the places of sheets, a list a sheet; places before the first of a begun sheet are undefined.
 * @param start the first free place of the first sheet, from 1
 */
export function onSheets<One>(
  labels: readonly One[],
  { places, start, copies }: { readonly places: number; readonly start: number; readonly copies: number },
): (One | undefined)[][] {
  const all = [
    ...Array.from({ length: start - 1 }, () => undefined),
    ...labels.flatMap((label) => Array.from({ length: copies }, () => label)),
  ];
  return Array.from({ length: Math.ceil(all.length / places) }, (_, page) =>
    all.slice(page * places, (page + 1) * places),
  );
}

/** Containers whose number another container of the visit has already: their codes would be the same. */
export function sameNumbers(containers: readonly Container[]): Container[] {
  const seen = new Set<string>();
  return containers.filter(({ id, one }) => {
    const key = `${one.visit?.file ?? one.file} ${id}`;
    return seen.has(key) || !seen.add(key);
  });
}
