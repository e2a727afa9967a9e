/** A work-up for people: a line a disease, the first three in full, and what the first leaves unexplained. */
import { basename } from "node:path";
import { agentName } from "../../knowledge/agents.ts";
import { sourceLine } from "../../knowledge/index.ts";
import type { Evidence } from "../../patterns/index.ts";
import { materialTitle, type PlacedResult } from "../../record/index.ts";
import { grouped } from "../../words/grouped.ts";
import { count, listing } from "../../words/listing.ts";
import {
  type CheckedCriterion,
  type Counts,
  countsOf,
  criteriaOf,
  type Fit,
  type Likeness,
  type Met,
  type SampleInHand,
  type Settling,
  settling,
  type Told,
  toldApart,
  type Unexplained,
  unexplained,
  type Workup,
} from "../../workup/index.ts";
import { type Block, type Form, gap, heading, list, text } from "../page/blocks.ts";
import { markdownOf } from "../page/markdown.ts";
import type { Style } from "../page/style.ts";
import { textOf } from "../page/text.ts";
import { wrapped } from "../page/width.ts";

export interface WorkupLook {
  /** Characters a line. */
  readonly width?: number;
  /** Every disease that fits, in full. */
  readonly all?: boolean;
  /** Lines on the first screen. */
  readonly first?: number;
  /** Nothing but the lines. */
  readonly quiet?: boolean;
}

/** Diseases told in full, and lines on the first screen. */
const inFull = 3;
const lines = 10;

export const workupText = (workups: readonly Workup[], style: Style, look: WorkupLook = {}): string =>
  textOf(documentOf(workups, "text", look), style, look.width);

export const workupMarkdown = (workups: readonly Workup[], look: WorkupLook = {}): string =>
  markdownOf(documentOf(workups, "markdown", look));

const documentOf = (workups: readonly Workup[], form: Form, look: WorkupLook): Block[] =>
  workups.flatMap((workup) => workupBlocks(workup, form, look));

function workupBlocks(
  workup: Workup,
  form: Form,
  { width = 80, all = false, first = lines, quiet = false }: WorkupLook,
) {
  const { subject, fits, excluded } = workup;
  const shown = all ? fits : fits.slice(0, first);
  const more = fits.length - shown.length;
  return [
    heading(
      `${subject.id}${"cases" in subject ? ` (${count(subject.cases.length, "pig")})` : ""}: what fits, the best first`,
    ),
    ...(fits.length === 0
      ? [text("Nothing that is known here fits what is recorded.")]
      : lineBlocks(shown, form, width)),
    ...(more > 0 && !quiet ? [text(`${more} more fit less well; --all shows them.`, { quiet: true })] : []),
    ...(excluded.length === 0 ? [] : [text(`Excluded: ${listing(excluded.map(exclusion))}.`, { hang: 2 })]),
    ...(quiet
      ? []
      : [
          ...(all ? fits : fits.slice(0, Math.min(first, inFull))).flatMap((fit, index) =>
            fitBlocks(fit, index, workup),
          ),
          ...unexplainedBlocks(workup, all),
          ...(fits.length === 0 ? [] : [gap, text(end, { indent: 0, quiet: true })]),
        ]),
  ];
}

const end =
  "It advises and does not diagnose. carcase explain workup: by which rule diseases are ordered; carcase explain with the name of a disease: every statement, and who says so.";

function lineBlocks(fits: readonly Fit[], form: Form, width: number): Block[] {
  const said = fits.map((fit, index) => {
    const head = `${index + 1}. ${fit.disease.name}: ${countsText(countsOf(fit))}`;
    // Each reason whole: as many as one line holds, or on two where the strongest needs both.
    const lines = reasonsOf(fit).map((_, at, reasons) => `${head}: ${reasons.slice(0, at + 1).join(", ")}`);
    const held = (most: number) =>
      lines.findLast((line) => wrapped(line, "  ", width, "     ").length <= most);
    return form === "text" ? (held(1) ?? held(2) ?? lines[0] ?? head) : (lines.at(-1) ?? head);
  });
  return form === "text" ? said.map((line) => text(line, { hang: 3 })) : list(null, said);
}

/** `1 hallmark, 2 typical, 3 more, 1 against` */
function countsText({ hallmark, typical, supports, against }: Counts): string {
  const core = hallmark + typical;
  return [
    ...(hallmark > 0 ? [count(hallmark, "hallmark")] : []),
    ...(typical > 0 ? [`${typical} typical`] : []),
    ...(supports > 0 ? [core > 0 ? `${supports} more` : `${supports} supporting`] : []),
    ...(against > 0 ? [`${against} against`] : []),
  ].join(", ");
}

/** What speaks most for it, in few words: `turbinates atrophy, snout deviation`. */
const reasonsOf = ({ favour }: Fit): string[] =>
  [...new Set(favour.flatMap(({ evidence }) => evidence.map(({ text: words }) => inShort(words))))].slice(
    0,
    3,
  );

/** Without the system, and without how it looks. */
const inShort = (words: string): string => (words.split(",")[0] ?? "").replace(/^[a-z_]+\./, "");

const exclusion = ({ disease, against }: Fit): string =>
  `${disease.name} (${against[0]?.statement.says ?? ""})`;

function fitBlocks(fit: Fit, index: number, workup: Workup): Block[] {
  const { disease } = fit;
  const settles = settling(disease, workup.subject);
  return [
    heading(`${index + 1}. ${disease.name} (carcase explain ${disease.id})`),
    ...list(
      "other forms that fit",
      fit.otherForms.map((other) => `${other.disease.name}: ${countsText(countsOf(other))}`),
      inner,
    ),
    ...list("for", forLines(fit), inner),
    ...list("against", againstLines(fit), inner),
    ...list("results in hand", resultLines(fit), inner),
    ...list("not looked at, and it matters", fit.unseen.map(unseenLine), inner),
    ...list(
      "looked for, and not there",
      fit.absent.map(({ says }) => says),
      inner,
    ),
    ...list("samples in hand that would settle it", settles.flatMap(handLines), inner),
    ...list("to take next time", settles.filter(({ inHand }) => inHand.length === 0).map(nextLine), inner),
    ...list(
      "a positive test alone",
      disease.positive_alone === undefined ? [] : [disease.positive_alone.says],
      inner,
    ),
    ...list(
      "told apart",
      toldApart(fit, workup.fits).map(({ from, apart }) => `from ${from.name}: ${apart}`),
      inner,
    ),
    ...criteriaBlocks(fit, workup),
    ...list("danger to people", disease.people === "no" ? [] : [disease.people], inner),
  ];
}

const inner = { indent: 2, bullet: "- " };

const forLines = ({ favour, age, disease, likeness }: Fit): string[] => [
  ...favour.map((met) => metLine(met)),
  ...(age === "usual"
    ? [`supports: the age at which it is usual (${listing(disease.ages.usual, "or")})`]
    : []),
  ...outbreakLine("much told of", likeness, likeness.more),
];

/** `much told of its 9 published outbreaks: lymphoid.spleen enlargement (7), fever (5)` */
function outbreakLine(head: string, { outbreaks }: Likeness, told: readonly Told[]): string[] {
  // An organ is told with its process.
  const said = told.filter(({ what }) => !told.some((other) => other.what.startsWith(`${what} `)));
  const words = some(said.map((one) => `${one.what} (${one.outbreaks})`));
  return told.length === 0 ? [] : [`${head} its ${count(outbreaks, "published outbreak")}: ${words}`];
}

const againstLines = ({
  against,
  age,
  disease,
  isUnalarmed,
  results,
  testedNegative,
  unmet,
  likeness,
}: Fit): string[] => [
  ...(isUnalarmed ? ["against: no alarm that looks for it was raised"] : []),
  ...(results.isNegative ? ["against: the laboratory looked for all its agents and found none"] : []),
  ...(testedNegative.length === 0
    ? []
    : [`against: the authority excluded it on a sample: ${evidenceText(testedNegative)}`]),
  ...unmet.map(({ says }) => `against: the laboratory did not find what its criteria need: ${says}`),
  ...against.map((met) => metLine(met)),
  ...(age === "unusual"
    ? [`against: not the age at which it is usual (${listing(disease.ages.usual, "or")})`]
    : []),
  ...outbreakLine("seldom told of", likeness, likeness.less),
];

/** `typical: Firm lobules: respiratory.lungs consolidation (pig-01.yaml:14)` */
function metLine({ statement, strength, evidence }: Met): string {
  const memory = statement.strength !== strength ? " (from memory, so that it does not exclude)" : "";
  const shown = evidence.length === 0 ? "" : `: ${evidenceText(evidence)}`;
  return `${strength}: ${statement.says}${memory}${shown}`;
}

/** The same process of an organ seen in many places is said once, in the words of the first. */
function evidenceText(evidence: readonly Evidence[]): string {
  const kinds = [...grouped(evidence, ({ text: words }) => words.split(",")[0]).values()];
  const said = kinds.slice(0, mostNamed).map((same) => `${same[0].text} (${placesText(same)})`);
  const more = kinds.slice(mostNamed).flat().length;
  return [...said, ...(more > 0 ? [`${more} more`] : [])].join("; ");
}

const mostNamed = 4;
const mostPlaces = 3;

const placesText = (evidence: readonly Evidence[]): string => some(evidence.map(placeText));

/** `pig-01.yaml:14`: all files of a visit lie in its folder. */
const placeText = ({ subject, path }: Evidence): string =>
  `${basename(subject.file)}:${subject.document.where(path).line}`;

/** `negative for Toxigenic Pasteurella multocida: pcr of 01-A (results-pcr.yaml:7) and 7 more` */
const resultLines = ({ results: { positive, negative } }: Fit): string[] =>
  [...grouped([...positive, ...negative], resultHead)].map(
    ([head, same]) => `${head} ${some(same.map(resultPlace))}`,
  );

const resultHead = ({ entry }: PlacedResult): string =>
  `${entry.interpretation ?? ""} for ${agentName(entry.agent ?? "")}: ${entry.test} of`;

const resultPlace = ({ samples, file, path }: PlacedResult): string =>
  `${listing(samples)} (${basename(file.file)}:${file.document.where(path).line})`;

const unseenLine = ({ statement, organs }: Fit["unseen"][number]): string =>
  `${statement.says} (${some(organs)})`;

function some(names: readonly string[]): string {
  const more = names.length - mostPlaces;
  return more > 1 ? `${names.slice(0, mostPlaces).join(", ")} and ${more} more` : names.join(", ");
}

/** Samples in hand of which no result has come, for each test. */
function handLines({ confirmation, inHand }: Settling): string[] {
  const waiting = inHand.filter(({ answered }) => !answered);
  if (waiting.length === 0) return [];
  const asked = waiting.some((one) => one.asked) ? "asked for" : "not asked for yet";
  return [`${confirmation.test} of ${some(waiting.map(sampleName))}, ${asked}: ${confirmation.says}`];
}

const sampleName = ({ one, sample, index }: SampleInHand): string =>
  sample.id ??
  `${materialTitle(sample.from)} (${basename(one.file)}:${one.document.where(["samples", index]).line})`;

const nextLine = ({ confirmation: { test, sample, into, says } }: Settling): string =>
  `${some(sample.map(materialTitle))}${into === undefined ? "" : `, ${into}`}, for ${test}: ${says}`;

function criteriaBlocks({ disease }: Fit, { subject }: Workup): Block[] {
  const checked = criteriaOf(disease, subject);
  if (checked === undefined) return [];
  const { criteria, met } = checked;
  const of = checked.subject === subject ? "" : `, ${checked.subject.id}`;
  return list(
    `criteria: ${met} met of ${criteria.criteria.length}, ${criteria.needs} needed${of}`,
    [...checked.checked.map(criterionLine), `${criteria.title}: ${sourceLine(criteria.source)}`],
    inner,
  );
}

function criterionLine({ criterion: { says, test }, answer, results }: CheckedCriterion): string {
  if (results.length > 0) {
    const words = answer.is === "to-read" ? "to be read" : answer.is === "met" ? "met" : "not met";
    return `${words}: ${says}: ${test} of ${some(results.map(resultPlace))}`;
  }
  switch (answer.is) {
    case "met":
      return `met: ${says}${answer.evidence.length === 0 ? "" : `: ${evidenceText(answer.evidence)}`}`;
    case "to-read":
    case "not-met":
      return `not met: ${says}`;
    case "not-looked-at":
      return `not looked at${test === undefined ? "" : ` (${test})`}: ${says}`;
  }
}

const mostLeft = 8;

function unexplainedBlocks(workup: Workup, all: boolean): Block[] {
  const [first] = workup.fits;
  if (first === undefined) return [];
  const left = unexplained(workup.subject, workup.fits);
  const kinds = [...grouped(left, ({ lesion }) => lesion.text.split(",")[0]).values()];
  // What another disease explains is told before what nothing does.
  const told = kinds.toSorted((a, b) => Math.min(1, b[0].by.length) - Math.min(1, a[0].by.length));
  const more = kinds.length - mostLeft;
  return list(
    `Not explained by ${first.disease.name}`,
    [
      ...told.slice(0, all ? kinds.length : mostLeft).map(unexplainedLine),
      ...(all || more <= 0 ? [] : [`${more} more; --all shows them`]),
    ],
    { bullet: "- " },
  );
}

function unexplainedLine(same: readonly [Unexplained, ...Unexplained[]]): string {
  const [{ by }] = same;
  const names = by.map(({ disease }) => disease.name);
  const what = names.length === 0 ? "nothing that fits explains it" : `it fits ${some(names)}`;
  return `${evidenceText(same.map(({ lesion }) => lesion))}: ${what}`;
}
