/** What a pig answers to a yes/no question; "not examined" keeps it out of the denominator. */
export type Answer = "yes" | "no" | "not examined";
