/** Limits of a score interval: where a statistic that falls with the parameter passes z and -z. */

/** A parameter between `low` and `high` where a falling function passes `target`, to the last bit. */
export function whereFalls(f: (at: number) => number, target: number, low: number, high: number): number {
  let left = low;
  let right = high;
  for (let i = 0; i < 200; i++) {
    const middle = (left + right) / 2;
    if (middle <= left || middle >= right) return middle;
    if (f(middle) > target) left = middle;
    else right = middle;
  }
  return (left + right) / 2;
}
