/** Rules of the family format, in the order of the documentation. */
import type { Rule } from "../../rule.ts";
import { acceptedEntries } from "./accepted-entries.ts";
import { caseFormat } from "./case-format.ts";
import { invisibleCharacter } from "./invisible-character.ts";
import { protocolUnknown } from "./protocol-unknown.ts";
import { scaleFiles } from "./scale-files.ts";
import { textSaysNothing } from "./text-says-nothing.ts";

export const formatRules: readonly Rule[] = [
  caseFormat,
  invisibleCharacter,
  textSaysNothing,
  protocolUnknown,
  ...scaleFiles,
  ...acceptedEntries,
];
