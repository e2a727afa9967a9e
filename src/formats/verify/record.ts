/** What `carcase verify` found of one record. */
import type { Seal, SealState } from "../../seals/index.ts";

export interface VerifiedRecord {
  readonly file: string;
  readonly id: string;
  readonly kind: "case" | "visit";
  readonly state: SealState;
  /** Whether the last seal is signed, and by one of those who may. */
  readonly signature: "none" | "not checked" | "right" | "wrong";
  /** Whose key it was, by the file of those who may sign. */
  readonly signer?: string;
  readonly seals: readonly Seal[];
  /** What is not as it was signed, in sentences. */
  readonly wrong: readonly string[];
}
