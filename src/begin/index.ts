/** A new visit: files to be filled in. */
export { type Begun, begin, expectedPigs, type VisitWish, WishFault } from "./begin.ts";
export { DrawError, type DrawnList, readDraw } from "./draw-list.ts";
export type { PigWish } from "./pig-wish.ts";
