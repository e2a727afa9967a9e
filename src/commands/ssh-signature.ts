/** Signatures by SSH keys: made and checked by `ssh-keygen -Y`, which holds the keys and knows their formats. */
import type * as Processes from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type Seal, signedText } from "../seals/index.ts";
import { UsageError } from "./usage-error.ts";
import { writeWhole } from "./write-file.ts";

/** Loaded when it is asked for. */
const processes = () => createRequire(import.meta.url)("node:child_process") as typeof Processes;

/** A signature made for anything else is none here. */
const namespace = "carcase-seal";

interface Answer {
  readonly status: number | null;
  readonly out: string;
  readonly why: string;
}

/** @param terminal whether it may ask for a passphrase */
function keygen(args: readonly string[], input: string, terminal = false): Answer {
  const { status, stdout, stderr, error } = processes().spawnSync("ssh-keygen", ["-Y", ...args], {
    input,
    encoding: "utf8",
    timeout: terminal ? undefined : 30_000,
    env: { ...process.env, LC_ALL: "C" },
  });
  if (error !== undefined)
    throw new UsageError(
      "ssh-keygen cannot be started, which makes and checks signatures; is OpenSSH installed?",
    );
  return { status, out: stdout, why: stderr.trim().split("\n").at(-1) ?? "" };
}

/** @throws UsageError when the key cannot be used */
export function signatureOf(seal: Seal, key: string): string {
  const { status, out, why } = keygen(["sign", "-q", "-f", key, "-n", namespace], signedText(seal), true);
  if (status !== 0) throw new UsageError(`--sign ${key}: nothing was signed; ssh-keygen says: ${why}`);
  return `${out.trimEnd()}\n`;
}

/** Who signed, of those who may; or why it is no signature of theirs. */
export type Checked = { readonly signer: string } | { readonly why: string };

/**
 * Whether a signature is one of those who may sign; undefined where there is none.
 * @param signers the file that names them, as `ssh-keygen` reads it
 */
export function checkSignature({ signature, ...seal }: Seal, signers: string): Checked | undefined {
  if (signature === undefined) return undefined;
  const folder = mkdtempSync(join(tmpdir(), "carcase-signature-"));
  try {
    const file = join(folder, "seal.sig");
    writeWhole(file, signature, () => undefined);
    // A key that is no longer valid was so on the day.
    const day = `-Overify-time=${seal.at.replace(/[-:T]/g, "").slice(0, 12)}`;
    const found = keygen(["find-principals", day, "-s", file, "-f", signers], "");
    const [signer = ""] = found.out.split("\n");
    if (found.status !== 0 || signer === "")
      return { why: "the key that signed is none of those that may sign" };
    const given = ["-f", signers, "-I", signer, "-n", namespace, "-s", file];
    const { status } = keygen(["verify", day, ...given], signedText(seal));
    return status === 0 ? { signer } : { why: "the signature is not one of what was sealed" };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
