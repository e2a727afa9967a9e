/** Facts of a case or a visit: worked out when the first asks, kept as long as the record, the same for everybody. */

/** What is kept when a fact is undefined, to tell it from one that nobody has asked for. */
const nothing = Symbol("nothing");

const kept = new WeakMap<object, unknown[]>();
let facts = 0;

/** Nearly every question is about the record of the question before. */
let lastRecord: object | undefined;
let lastKept: unknown[] = [];

function keptOf(record: object): unknown[] {
  if (record === lastRecord) return lastKept;
  let known = kept.get(record);
  if (known === undefined) {
    known = [];
    kept.set(record, known);
  }
  lastRecord = record;
  lastKept = known;
  return known;
}

/**
 * Makes a question that is worked out once for each record. A record that was read never changes, so neither does the
 * answer.
 * @param derive works the fact out; it must not change the record
 */
export function fact<Record extends object, Value>(
  derive: (record: Record) => Value,
): (record: Record) => Value {
  const slot = facts++;
  return (record) => {
    const known = keptOf(record)[slot];
    if (known !== undefined) return (known === nothing ? undefined : known) as Value;
    const value = derive(record);
    keptOf(record)[slot] = value === undefined ? nothing : value;
    return value;
  };
}
