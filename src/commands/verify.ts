/** `carcase verify`: is what was signed off still the same? */
import { existsSync } from "node:fs";
import { verifyJson } from "../formats/verify/json.ts";
import type { VerifiedRecord } from "../formats/verify/record.ts";
import { verifyText } from "../formats/verify/text.ts";
import { otherFiles, type Sealable, sealedStateOf } from "../seals/index.ts";
import type { CommonOptions } from "./options.ts";
import type { Run } from "./run.ts";
import { sealableOf } from "./seal.ts";
import { checkSignature } from "./ssh-signature.ts";
import { UsageError } from "./usage-error.ts";

export interface VerifyOptions extends CommonOptions {
  readonly signers?: string;
  readonly all?: true;
}

export function verify(run: Run<VerifyOptions>): number {
  const { signers, all, quiet } = run.options;
  const written = run.format<(records: readonly VerifiedRecord[]) => string>({
    text: (records) => verifyText(records, run.style, { width: run.width, quiet: quiet === true, all }),
    json: verifyJson,
  });
  if (signers !== undefined && !existsSync(signers))
    throw new UsageError(`--signers: there is no file ${signers}`);
  const archive = run.archive();
  const records = sealableOf(archive, run.paths).map((one) => verified(one, signers));
  if (records.length > 0) run.write(written(records));
  return run.end(records.some((one) => one.wrong.length > 0 || (all && one.state === "unsealed")));
}

function verified(one: Sealable, signers: string | undefined): VerifiedRecord {
  const { state, seal, seals } = sealedStateOf(one);
  const { file, id } = one;
  const kind = "organ" in one ? "case" : "visit";
  const about = { file, id, kind, seals } as const;
  if (seal === undefined) return { ...about, state: "unsealed", signature: "none", wrong: [] };
  const checked = signers === undefined ? undefined : checkSignature(seal, signers);
  const isSigned = seal.signature !== undefined;
  const isBad = signers !== undefined && !(checked !== undefined && "signer" in checked);
  const wrong = [
    ...(state === "broken" ? [`it was changed since ${seal.by} signed it on ${seal.at.slice(0, 10)}`] : []),
    ...otherFiles(one, seal).map(({ file: named, why }) => `${named}: ${why}`),
    ...(isBad ? [checked !== undefined && "why" in checked ? checked.why : "it has no signature"] : []),
  ];
  return {
    ...about,
    state: wrong.length > 0 ? "broken" : state,
    signature: !isSigned ? "none" : signers === undefined ? "not checked" : isBad ? "wrong" : "right",
    ...(checked !== undefined && "signer" in checked && { signer: checked.signer }),
    wrong,
  };
}
