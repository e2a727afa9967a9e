/** The smallest whole number from `low` to `high` for which a condition that stays true once true holds. */
export function firstTrue(low: number, high: number, holds: (count: number) => boolean): number {
  let from = low;
  let to = high;
  while (from < to) {
    const middle = Math.floor((from + to) / 2);
    if (holds(middle)) to = middle;
    else from = middle + 1;
  }
  return from;
}
