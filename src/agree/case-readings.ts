/** Readings from cases: what others wrote under `readings`, and what the examiner's own record makes of the same scales. */
import type { Archive, Case } from "../cases/index.ts";
import { scales as shipped } from "../knowledge/scales.ts";
import { scaleNamed, scoreCase, unknownScale } from "../score/index.ts";
import { type Reading, ReadingError } from "./reading.ts";

/** What the examiner is called where the case does not say. */
const unnamed = "examiner";

/**
 * Every reading of every case that has readings by others; the examiner's is the score of the case, where the record
 * gives one.
 * @throws ReadingError when a reading stands under a name that is no scale of its case
 */
export function caseReadings({ cases }: Archive): Reading[] {
  return cases.flatMap(readingsOf);
}

function readingsOf(one: Case): Reading[] {
  const others = (one.record.readings ?? []).flatMap(({ reader, grades }, index) =>
    Object.entries(grades).map(([scale, value]): Reading => {
      const { line } = one.document.where(["readings", index, "grades", scale]);
      return { pig: one.id, reader, scale, value, at: `${one.file}:${line}` };
    }),
  );
  const examiner = one.record.examiner ?? unnamed;
  const own = [...new Set(others.map(({ scale }) => scale))].flatMap((id): Reading[] => {
    const scale = scaleNamed(one, id);
    if (scale === undefined) {
      const known = [...shipped.keys(), ...one.settings.houseScales.keys()];
      const { at } = others.find((reading) => reading.scale === id) ?? { at: one.file };
      throw new ReadingError(`${at}: ${unknownScale(id, known)}`);
    }
    const { value } = scoreCase(one, scale);
    return value === null ? [] : [{ pig: one.id, reader: examiner, scale: id, value, at: one.file }];
  });
  return [...own, ...others];
}
