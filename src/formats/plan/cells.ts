/** Cells of a plan's table as people read them. */
import type { Cell, PlanColumn } from "../../plan/index.ts";
import { levelPercent, percent } from "../../words/percent.ts";
import { visible } from "../../words/visible.ts";

/** Counts as they are, shares in per cent, a dash for nothing. */
export function planCell(
  value: Cell | undefined,
  { as, decimals }: Pick<PlanColumn, "as" | "decimals">,
): string {
  if (value === null || value === undefined) return "–";
  if (typeof value === "string") return visible(value);
  if (as === "asked") return levelPercent(value);
  return as === "share" ? percent(value, decimals) : String(value);
}
