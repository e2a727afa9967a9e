/** What is still as it was signed off, for people: what is not, then how many of each. */
import { count, listing } from "../../words/listing.ts";
import { type Block, gap, list, text } from "../page/blocks.ts";
import type { Style } from "../page/style.ts";
import { textOf } from "../page/text.ts";
import type { VerifiedRecord } from "./record.ts";

interface VerifyLook {
  readonly width: number;
  /** Only what needs attention. */
  readonly quiet: boolean;
  /** Whether every record has to be sealed. */
  readonly all: boolean | undefined;
}

export const verifyText = (
  records: readonly VerifiedRecord[],
  style: Style,
  { width, quiet, all = false }: VerifyLook,
): string => textOf(blocksOf(records, quiet, all), style, width);

function blocksOf(records: readonly VerifiedRecord[], quiet: boolean, all: boolean): Block[] {
  const unsealed = records.filter(({ state }) => state === "unsealed");
  const wrong = [
    ...records.flatMap(({ file, wrong: why }) =>
      list(
        file,
        why.map((one) => `broken: ${one}`),
      ),
    ),
    ...(all
      ? list(
          "Not sealed",
          unsealed.map(({ file }) => file),
        )
      : []),
  ];
  if (quiet) return wrong;
  return [
    ...wrong,
    ...list(
      "Amended",
      records
        .filter(({ state }) => state === "amended")
        .flatMap(({ file, seals }) =>
          seals
            .slice(1)
            .map(
              ({ by, at, because = "no reason is given" }) =>
                `${file}: ${at.slice(0, 10)}, ${by}: ${because}`,
            ),
        ),
    ),
    ...(records.some(({ state }) => state === "amended" || state === "broken") || wrong.length > 0
      ? [gap]
      : []),
    text(`${count(records.length, "record")}: ${listing(counts(records))}.`, { indent: 0 }),
    ...signatures(records),
  ];
}

const states = {
  sealed: "as signed",
  amended: "amended",
  broken: "not as signed",
  unsealed: "not sealed",
} as const;

const counts = (records: readonly VerifiedRecord[]): string[] =>
  Object.entries(states).flatMap(([state, words]) => {
    const many = records.filter((one) => one.state === state).length;
    return many === 0 ? [] : [`${many} ${words}`];
  });

/** What is known of the signatures, where something is sealed. */
function signatures(records: readonly VerifiedRecord[]): Block[] {
  const sealed = records.filter(({ state }) => state !== "unsealed");
  if (sealed.length === 0) return [];
  const many = (...of: VerifiedRecord["signature"][]): number =>
    sealed.filter(({ signature }) => of.includes(signature)).length;
  const unchecked = many("not checked");
  const said = [
    ...(many("right") === 0 ? [] : [`${many("right")} by those who may sign`]),
    ...(many("wrong") === 0 ? [] : [`${many("wrong")} not theirs`]),
    ...(unchecked === 0 ? [] : [`${unchecked} not checked: --signers says who may sign`]),
    ...(many("none") === 0 ? [] : [`${many("none")} unsigned`]),
  ];
  return [text(`Signatures: ${said.join("; ")}.`, { indent: 0, quiet: true })];
}
