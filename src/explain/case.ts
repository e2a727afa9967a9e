/** What is asked of one case, and which of its facts the visit gives. */
import { type Case, formatPath, standsIn, valueAt } from "../cases/index.ts";
import { ageClasses, type PlacedOrgan } from "../knowledge/index.ts";
import { grouped } from "../words/grouped.ts";
import { listing } from "../words/listing.ts";
import { type Explanation, section } from "./explanation.ts";

export function explainCase(one: Case): Explanation {
  const { due, must, protocol, ageClass, record } = one;
  const whom = ageClass === undefined ? "age not known" : ageClasses.classes[ageClass]?.title;
  return {
    kind: "case",
    name: one.id,
    title: `${protocol.id} protocol; ${[record.pig?.age, whom?.toLowerCase()].filter(Boolean).join(", ")}; signs: ${listing(one.signs) || "not recorded"}`,
    sections: [
      ...section(null, record.closed === undefined ? [] : ["Closed on suspicion: no organ is due."]),
      ...section("From the defaults of the visit", inheritedLines(one)),
      ...section("Due, an error where it is blank", bySystem(due.filter((organ) => must.has(organ)))),
      ...section("Wanted, and no error", bySystem(due.filter((organ) => !must.has(organ)))),
    ],
    source: null,
  };
}

/** `death.method: barbiturate (visit.yaml, line 16)` */
const inheritedLines = (one: Case): string[] =>
  one.inherited.map((inRecord) => {
    const { subject, path } = standsIn(one, inRecord);
    const value = valueAt(one.record, inRecord);
    const written = Array.isArray(value) ? value.join(", ") : String(value);
    return `${formatPath(inRecord)}: ${written} (${subject.file}, line ${subject.document.where(path).line})`;
  });

const bySystem = (organs: readonly PlacedOrgan[]): string[] =>
  [...grouped(organs, ({ system }) => system)].map(
    ([system, inIt]) => `${system}: ${listing(inIt.map(({ key }) => key))}`,
  );
