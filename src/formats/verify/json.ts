/** What is still as it was signed off, for programs. */
import { outputJson } from "../page/json.ts";
import { portablePath } from "../page/portable-path.ts";
import type { VerifiedRecord } from "./record.ts";

export const verifyJson = (records: readonly VerifiedRecord[]): string =>
  outputJson("verify", 1, {
    records: records.map(({ file, id, kind, state, signature, signer = null, seals, wrong }) => ({
      file: portablePath(file),
      id,
      kind,
      state,
      signature,
      signer,
      seals: seals.map(({ by, at, because = null }) => ({ by, at, because })),
      wrong,
    })),
  });
