/** The four answers of a pig. */

/**
 * What a pig answers to a yes/no question. Two answers keep it out of the denominator: the organ was looked at, but not in
 * the way that the question needs ("not graded"), or nobody looked, or could look ("not examined").
 */
export type Answer = "yes" | "no" | "not graded" | "not examined";
