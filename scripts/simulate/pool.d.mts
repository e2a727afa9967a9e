import type { readCases } from "../../src/cases/index.ts";

export function makePool(
  read: typeof readCases,
  choice?: { readonly settings?: object; readonly small?: boolean },
): object;
