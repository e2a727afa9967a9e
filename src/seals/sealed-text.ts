/** What a seal is over, as one text that is the same however the file is laid out. */
import type { Case, Visit, VisitContext } from "../cases/index.ts";
import { withoutBlanks } from "../cases/model/blanks.ts";
import { laidInto } from "../cases/model/defaults.ts";
import { isKeyed, type Keyed, valueAt } from "../cases/model/path.ts";
import { sha256 } from "../words/sha256.ts";

/** A record that can be signed off. */
export type Sealable = Case | Visit | VisitContext;

/**
 * The fingerprint that belongs into the last of some seals: of all that the record says, what it has from its visit and
 * who signed it before included. Comments, the order of keys and keys left blank are no part of it, nor how lines end.
 * @param seals as they stand in the record, or will stand there
 */
export function fingerprintWith(subject: Sealable, seals: readonly unknown[]): string {
  const own = withoutBlanks(subject.document.value);
  const inherited = "inherited" in subject ? subject.inherited : [];
  const whole = inherited.reduce<unknown>(
    (record, path) => laidInto(record, path, valueAt(subject.record, path)),
    own,
  );
  const last = seals.at(-1);
  const { sha256: _own, signature: _signed, ...signing } = isKeyed(last) ? last : ({} as Keyed);
  const record = { ...(isKeyed(whole) ? whole : {}), seals: [...seals.slice(0, -1), signing] };
  return sha256(Buffer.from(canonical(record)));
}

/** JSON with its keys in one order and without blanks: RFC 8785. */
function canonical(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(canonical).join(",")}]`;
  if (!isKeyed(value)) return JSON.stringify(value);
  const entries = Object.keys(value)
    .sort()
    .map((key) => `${JSON.stringify(key)}:${canonical(value[key])}`);
  return `{${entries.join(",")}}`;
}
