import type { SharesRule } from "../statistics/index.ts";

/** A question about a comparison: of shares, 0 to 1, or of grades. */
export interface CompareQuestion {
  /** Share affected now; one for each group, where groups differ. */
  readonly from?: number | readonly number[];
  /** Share affected then, which is to be told apart from it. */
  readonly to?: number | readonly number[];
  /** In place of shares: of 100 pigs (or any number) those with grade 0, 1, 2 and so on, now and then. */
  readonly grades?: readonly number[];
  readonly thenGrades?: readonly number[];
  /** Pigs of each group on each visit, when the number is fixed; `thenPigs` where it is another on the second. */
  readonly pigs?: readonly number[];
  readonly thenPigs?: readonly number[];
  /** Pigs examined in each pen; 1 when left out. The numbers are then of pens. */
  readonly fromEachPen?: number;
  /** How alike pigs of one pen are (correlation of two of them); 0 when left out. */
  readonly correlation?: number;
  readonly pens?: readonly number[];
  readonly thenPens?: readonly number[];
  /** Wanted probability of seeing the change; 0.8 when left out. */
  readonly power?: number;
  /** Significance level of the two-sided test; 0.05 when left out. */
  readonly alpha?: number;
  /** The test of shares that will be made; Fisher's when left out. */
  readonly test?: SharesRule;
  /** Numbers per visit (and group) of the table. */
  readonly over?: readonly number[];
  /** Start of the random numbers where it is simulated; 1 when left out. */
  readonly seed?: number;
}
