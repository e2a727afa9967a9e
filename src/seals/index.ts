/** Signing off: what a seal is over, and whether what was signed off is still the same. */
export { type Seal, type SealState, sealedStateOf, signedText } from "./seal.ts";
export { fingerprintOf, namedFiles, otherFiles } from "./sealed-files.ts";
export { fingerprintWith, type Sealable } from "./sealed-text.ts";
