/** In which order diseases are shown: by counted evidence of named strength. */
import { grouped } from "../words/grouped.ts";
import { casesSeen, type Fit, isCore, organsSeen } from "./fit.ts";
import { likenessLimits } from "./outbreaks.ts";

/** What is counted of a disease: statements that are met. */
export interface Counts {
  readonly hallmark: number;
  readonly typical: number;
  readonly supports: number;
  readonly against: number;
}

export function countsOf(fit: Fit): Counts {
  const { favour, against, age, isUnalarmed, results, testedNegative, unmet } = fit;
  const count = (strength: string): number => favour.filter((one) => one.strength === strength).length;
  return {
    hallmark: count("hallmark"),
    typical: count("typical"),
    supports: count("supports") + each(age === "usual", results.positive.length > 0),
    against:
      against.length +
      unmet.length +
      each(age === "unusual", isUnalarmed, results.isNegative || testedNegative.length > 0),
  };
}

const each = (...said: readonly boolean[]): number => said.filter(Boolean).length;

/** What each strength counts; that order hardly depends on it was tried on published outbreaks. */
const counts: Counts = { hallmark: 3, typical: 2, supports: 1, against: -2 };

/** So many things that published outbreaks of it had much more often count as much as one that supports. */
const thingsForOne = 4;

/** What outbreaks may add or take away at most: in a visit of many pigs much is told of any disease. */
const mostByOutbreaks = 1;

/** The rule in words, for whoever asks by what it goes. */
export const orderRule: readonly string[] = [
  `The count decides: each hallmark that is met counts ${counts.hallmark}, each typical finding ${counts.typical}, each thing that supports ${counts.supports}, each organ with a finding that the disease explains 1, and 2 where the finding is typical of it; each thing that speaks against takes ${-counts.against} away.`,
  "A finding that is nearly a hallmark or typical supports, once for each place of the record.",
  `What published outbreaks and cases of the disease told at least ${likenessLimits.more} times as often as all of them (an organ with a lesion, its process, a sign) counts a quarter each; what they told at most half as often, where there are ${likenessLimits.outbreaks} or more, takes a quarter away each, and all together at most ${mostByOutbreaks}. One that had everything as often as all is counted among them, so that one or two do not decide.`,
  "A usual age supports, and so does a result that is positive for an agent of the disease; an unusual age speaks against, and so does it that all agents of the disease were looked for and none was found, or that the authority excluded it on a sample (both together count once), or that the one was not found that its criteria need. Against a disease that is listed internationally it speaks that no alarm that looks for it was raised.",
  "Of diseases that count the same, the one stands first whose typical findings are typical of fewer others; then the one that practices meet more often; then the one seen in more pigs; at last the alphabet decides.",
  "Forms of one disease have one line, under the name of the form that fits best.",
  "A disease is excluded only by a statement that was read in its source; one from memory speaks against, and no more.",
  "By age and signs alone a disease is listed only where nothing else fits.",
  "The counts are no probability: how common a disease is in your herds they do not know.",
];

/** How many of the diseases a place in the record is typical of. */
type Shared = ReadonlyMap<string, number>;

/** What decides, in this order. */
function rankOf(fit: Fit, shared: Shared): readonly number[] {
  return [countOf(fit), telling(fit, shared), often[fit.disease.occurrence.is], casesSeen(fit)];
}

const often = { common: 2, occasional: 1, rare: 0 } as const;

/** The count by which diseases are compared; it is not shown, since it says nothing by itself. */
export function countOf(fit: Fit): number {
  const { hallmark, typical, supports, against } = countsOf(fit);
  const { likeness } = fit;
  return (
    hallmark * counts.hallmark +
    typical * counts.typical +
    supports * counts.supports +
    against * counts.against +
    organsSeen(fit) +
    organsSeen(fit, isCore) +
    Math.max(
      -mostByOutbreaks,
      Math.min(mostByOutbreaks, (likeness.more.length - likeness.less.length) / thingsForOne),
    )
  );
}

/** Each place that is typical of the disease, the more the fewer others it is typical of. */
const telling = (fit: Fit, shared: Shared): number =>
  corePlaces(fit).reduce((sum, place) => sum + 1 / (shared.get(place) ?? 1), 0);

const corePlaces = ({ places }: Fit): string[] =>
  [...places].flatMap(([place, strength]) => (isCore(strength) ? [place] : []));

export function inOrder(fits: readonly Fit[]): Fit[] {
  const shared = new Map<string, number>();
  for (const place of fits.flatMap(corePlaces)) shared.set(place, (shared.get(place) ?? 0) + 1);
  return fits
    .map((fit) => ({ fit, rank: rankOf(fit, shared) }))
    .sort((a, b) => compare(a.rank, b.rank) || (a.fit.disease.name < b.fit.disease.name ? -1 : 1))
    .map(({ fit }) => fit);
}

/** Of the forms of one disease the best, with the others. @param ordered the best first */
export const withForms = (ordered: readonly Fit[]): Fit[] =>
  [...grouped(ordered, ({ disease: { id, form_of: whole = id } }) => whole).values()].map(
    ([best, ...otherForms]) => ({ ...best, otherForms }),
  );

function compare(a: readonly number[], b: readonly number[]): number {
  const index = a.findIndex((value, place) => value !== b[place]);
  return index < 0 ? 0 : (b[index] ?? 0) - (a[index] ?? 0);
}
