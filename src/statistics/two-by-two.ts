import { LARGEST_COUNT, requireWhole } from "./checks.ts";

/** Affected of examined in two groups. */
export interface TwoGroups {
  /** Affected in the first group, 0 to `n1`. */
  readonly x1: number;
  /** Examined in the first group, 1 to 10 000 000. */
  readonly n1: number;
  /** Affected in the second group, 0 to `n2`. */
  readonly x2: number;
  /** Examined in the second group, 1 to 10 000 000. */
  readonly n2: number;
}

/** Demand counts that fit. @throws RangeError otherwise (`n1` or `n2` = 0 included) */
export function requireTwoGroups({ x1, n1, x2, n2 }: TwoGroups): void {
  requireWhole("n1", n1, 1, LARGEST_COUNT);
  requireWhole("n2", n2, 1, LARGEST_COUNT);
  requireWhole("x1", x1, 0, n1);
  requireWhole("x2", x2, 0, n2);
}

/** The groups the other way round. */
export const swapped = ({ x1, n1, x2, n2 }: TwoGroups): TwoGroups => ({ x1: x2, n1: n2, x2: x1, n2: n1 });
