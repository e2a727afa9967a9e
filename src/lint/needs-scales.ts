/** Whether a case has a grade that only the scales themselves can be asked about. */
import type { Case } from "../cases/index.ts";
import { organs, scaleRanges } from "../knowledge/index.ts";

/** Whether a grade stands under the name of a scale that is computed from parts, or of a scale of the practice. */
export const needsScales = (one: Case): boolean =>
  organs.some((organ) =>
    Object.keys(one.organ(organ).entry?.grades ?? {}).some((id) =>
      Object.hasOwn(scaleRanges, id) ? scaleRanges[id]?.computed === true : one.settings.houseScales.has(id),
    ),
  );
