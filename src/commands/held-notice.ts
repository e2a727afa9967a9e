/**
 * The notice of alarms while the result that will show it is still being made. Where no result comes, because an option
 * or the disk is at fault, the program says the notice on standard error before it says why.
 */
let held = (): string => "";

/** @param notice makes the text; it is asked only where it must be said */
export function holdNotice(notice: () => string): void {
  held = notice;
}

export const heldNotice = (): string => held();
