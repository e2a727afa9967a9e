import type { SimulatedRow } from "./table.mjs";

interface Tools {
  readonly lib: object;
  readonly pool: object;
}
export const herd: Readonly<
  Record<"singly" | "oneSided", (tools: Tools) => Iterable<Omit<SimulatedRow, "part">>>
>;
