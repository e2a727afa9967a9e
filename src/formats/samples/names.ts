/** Names as they stand in the narrow columns of samples. */
import { materialTitle } from "../../record/index.ts";
import { capital } from "../../words/listing.ts";

/** Cases are mostly called after their visit; the number tells them apart at the table. */
export const shortName = (id: string): string => /-(\d+)$/.exec(id)?.[1] ?? id;

/** The name of an organ without what it is made of: `Heart`, `Turbinates`. */
export const organName = (from: string): string => capital(materialTitle(from).split(/, | \(/)[0] ?? from);
