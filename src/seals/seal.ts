/** What became of a record since it was signed off. */
import type { Seal } from "../generated/case.types.ts";
import { fact } from "../record/fact.ts";
import { fingerprintWith, type Sealable } from "./sealed-text.ts";

export type { Seal };

/** unsealed: nobody signed. amended: whoever changed it said so. broken: it was changed and nobody said so. */
export type SealState = "unsealed" | "sealed" | "amended" | "broken";

export interface Sealed {
  readonly state: SealState;
  /** The seal that holds, the last one; undefined where nobody signed. */
  readonly seal: Seal | undefined;
  /** All of them. */
  readonly seals: readonly Seal[];
}

/** How it stands about a record; photographs and tracings are not looked at. */
export const sealedStateOf = fact((subject: Sealable): Sealed => {
  const seals = subject.record.seals ?? [];
  const seal = seals.at(-1);
  if (seal === undefined) return { state: "unsealed", seal, seals };
  const isWhole = seal.sha256 === fingerprintWith(subject, seals);
  return { state: !isWhole ? "broken" : seals.length > 1 ? "amended" : "sealed", seal, seals };
});

/** What a signature is made over. */
export const signedText = ({ sha256 }: Pick<Seal, "sha256">): string => `${sha256}\n`;
