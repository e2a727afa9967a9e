/**
 * Five steps from paper to dark, for grades and shares: told apart in print without colour and by colour-blind eyes, which
 * tests/figures/ramp.test.ts holds. A number or a hatch always says the same again.
 */
export const ramp = ["#fffdf8", "#e9c567", "#c98447", "#8f435c", "#331543"] as const;

/** Ink that can be read on a step. */
export const inkOn = (step: number): string => (step >= 3 ? "#ffffff" : "#1f2328");

/** The step of a grade of a scale from 0 to `most`. */
export const stepOfGrade = (grade: number, most: number): number =>
  grade <= 0 ? 0 : Math.max(1, Math.min(4, Math.round((grade / most) * 4)));

/** The step of a share between 0 and 1: none, and four equal parts. */
export const stepOfShare = (share: number): number => (share <= 0 ? 0 : Math.min(4, Math.ceil(share * 4)));
