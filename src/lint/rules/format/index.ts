/** Rules of the family format, in the order of the documentation. */
import type { Rule } from "../../rule.ts";
import { acceptedLockedRule } from "./accepted-locked-rule.ts";
import { acceptedUnknownRule } from "./accepted-unknown-rule.ts";
import { acceptedUnused } from "./accepted-unused.ts";
import { acceptedWithoutReason } from "./accepted-without-reason.ts";
import { caseFormat } from "./case-format.ts";
import { invisibleCharacter } from "./invisible-character.ts";
import { protocolUnknown } from "./protocol-unknown.ts";
import { scaleExample } from "./scale-example.ts";
import { scaleFormat } from "./scale-format.ts";
import { textSaysNothing } from "./text-says-nothing.ts";

export const formatRules: readonly Rule[] = [
  caseFormat,
  invisibleCharacter,
  textSaysNothing,
  protocolUnknown,
  scaleFormat,
  scaleExample,
  acceptedWithoutReason,
  acceptedUnused,
  acceptedUnknownRule,
  acceptedLockedRule,
];
