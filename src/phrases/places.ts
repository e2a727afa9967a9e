/** Sides of the pig and lobes of the lungs in a piece of a note. */
import type { Item, Stretch } from "./items.ts";

export type Side = "left" | "right";

export interface PlacedSide extends Stretch {
  readonly side: Side | "both";
}

export interface PlacedLobe extends Stretch {
  /** As the format has it: left_middle. */
  readonly key: string;
  readonly text: string;
}

/** Sides and lobes of a piece: a side beside the name of a lobe belongs to it. */
export function placesIn(items: readonly Item[]): {
  readonly sides: readonly PlacedSide[];
  readonly lobes: readonly PlacedLobe[];
  readonly rest: readonly Item[];
} {
  const sides: PlacedSide[] = [];
  const lobes: PlacedLobe[] = [];
  const rest: Item[] = [];
  const taken = new Set<Item>();
  for (const [at, item] of items.entries()) {
    const lobe = item.is === "name" ? item.named.find(({ is }) => is === "lobe") : undefined;
    if (lobe?.is !== "lobe") continue;
    taken.add(item);
    const beside =
      lobe.lobe === "accessory"
        ? undefined
        : [items[at - 1], items[at + 1]].find(
            (one) => one !== undefined && !taken.has(one) && sideOf(one) !== undefined,
          );
    if (beside !== undefined) taken.add(beside);
    const side = beside === undefined ? "" : `${sideOf(beside)}_`;
    lobes.push({
      key: `${side}${lobe.lobe}`,
      text: `${side}${lobe.lobe}`.replaceAll("_", " "),
      start: Math.min(item.start, beside?.start ?? item.start),
      end: Math.max(item.end, beside?.end ?? item.end),
    });
  }
  for (const item of items) {
    const side = taken.has(item) ? undefined : sideOf(item);
    if (side !== undefined) sides.push({ side, start: item.start, end: item.end });
    else if (!taken.has(item)) rest.push(item);
  }
  return { sides, lobes, rest };
}

function sideOf(item: Item): Side | "both" | undefined {
  const side = item.is === "name" ? item.named.find(({ is }) => is === "side") : undefined;
  return side?.is === "side" ? side.side : undefined;
}
