/** Affected of examined in one group of an ordered series, such as a visit. */
export interface OrderedGroup {
  readonly affected: number;
  readonly examined: number;
  /** Place in the order: 1, 2, 3, or days since the first visit. */
  readonly score: number;
}
