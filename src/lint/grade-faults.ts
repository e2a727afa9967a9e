/**
 * Grades written down under the name of a scale against the parts that stand beside them. Apart from the rules, because it
 * needs the scales themselves, which the program loads only where there is such a grade (see needsScales).
 */
import { type Case, formatPath, type Path, pathOf } from "../cases/index.ts";
import { organs, type Scale } from "../knowledge/index.ts";
import { printedBounds, scaleNamed } from "../score/index.ts";
import { scoreOrgan } from "../score/score-organ.ts";

export interface GradeFault {
  readonly path: Path;
  readonly message: string;
}

/** Every grade of a case that is not what the parts of its scale give; none where what is recorded of the parts leaves it open. */
export function gradeFaults(one: Case): GradeFault[] {
  return organs.flatMap((organ) => {
    const { entry, status } = one.organ(organ);
    // A grade of an organ that is called normal is reported as that.
    if (status !== "recorded") return [];
    return Object.entries(entry?.grades ?? {}).flatMap(([id, grade]) => {
      const scale = scaleNamed(one, id);
      const given = scale?.organ === organ.id ? givenByParts(one, scale, Number(grade)) : undefined;
      if (given === undefined) return [];
      const path = [...pathOf(organ.id), "grades", id];
      const message = `${formatPath(path)}: grade ${grade}, but the parts recorded beside it give ${given}. Correct the grade or the part that is wrong; until then score gives neither.`;
      return [{ path, message }];
    });
  });
}

/** What the scale makes of the organ without the grade under its own name; undefined where the grade may be that. */
function givenByParts(one: Case, scale: Scale, grade: number): string | undefined {
  const organ = organs.find(({ id }) => id === scale.organ);
  const state = organ === undefined ? undefined : one.organ(organ);
  if (state?.entry === undefined) return undefined;
  const { [scale.id]: _own, ...grades } = state.entry.grades ?? {};
  const { value, bounds } = scoreOrgan(scale, { ...state, entry: { ...state.entry, grades } });
  if (bounds !== undefined)
    return grade >= bounds[0] && grade <= bounds[1] ? undefined : printedBounds(scale, bounds);
  return value === null || value === grade ? undefined : String(value);
}
