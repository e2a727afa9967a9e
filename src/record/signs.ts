/** What a case says of the signs in life. */
import type { Case } from "../cases/index.ts";
import { signFamilies } from "../knowledge/index.ts";
import { fact } from "./fact.ts";

/** The families (respiratory, nervous, ...) of its signs, in the order of the vocabulary. */
export const signFamiliesOf = fact((one: Case): readonly string[] =>
  one.signs.length === 0 ? [] : signFamilies(one.signs),
);
