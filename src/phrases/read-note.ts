/**
 * Reads a note: `lungs consolidation cv 15 % left middle, 10 right middle; bronchial nodes enlarged 20 mm firm tan`.
 * Every word is looked up; what has no meaning, or two, is said with its place, and nothing is guessed.
 */
import type { Finding } from "../cases/index.ts";
import type { PlacedOrgan } from "../knowledge/index.ts";
import { grouped } from "../words/grouped.ts";
import { listing } from "../words/listing.ts";
import { type Item, type NameItem, partsOf, piecesOf, type Stretch, type TextItem } from "./items.ts";
import { firstName, wordKeys } from "./names.ts";
import { observed, oneValue, type Value } from "./observed.ts";
import { type PlacedLobe, type PlacedSide, placesIn, type Side } from "./places.ts";

/** What was not understood, and what to write. */
export interface Misread extends Stretch {
  readonly message: string;
}

/** One thing that a note says of an organ, or of one side of it. */
export interface Told extends Stretch {
  readonly organ: PlacedOrgan;
  readonly side: "left" | "right" | undefined;
  /** A lesion, or a value with its keys below the organ; none for the word normal. */
  readonly says: { readonly finding: Finding } | { readonly path: readonly string[]; readonly value: Value };
}

interface ReadNote {
  readonly told: readonly Told[];
  readonly misread: readonly Misread[];
}

/** Whoever writes more writes several. */
const longest = 5000;

/** @param note one line, or several: a line ends like a semicolon. Of a part that is not understood nothing is told */
export function readNote(note: string): ReadNote {
  if (note.length > longest)
    return {
      told: [],
      misread: [{ start: 0, end: 1, message: `a note has at most ${longest} characters. Write several` }],
    };
  const told: Told[] = [];
  const misread: Misread[] = [];
  let organ: Telling | undefined;
  for (const stretch of partsOf(note)) {
    const part = new PartReader(note, stretch, organ).read();
    if (part.misread.length === 0) told.push(...part.told);
    misread.push(...part.misread);
    organ = part.misread.length === 0 ? part.organ : undefined;
  }
  if (told.length + misread.length === 0)
    misread.push({
      start: 0,
      end: note.length,
      message: "the note is empty. Write an organ and what you see",
    });
  const again = twice(told);
  return {
    told: told.filter((one) => !again.includes(one)),
    misread: [
      ...misread,
      ...again.map(({ start, end }) => ({ start, end, message: "the same is told twice. Write it once" })),
    ],
  };
}

/** What is told a second time. */
function twice(told: readonly Told[]): readonly Told[] {
  const key = ({ organ, side, says }: Told): string =>
    JSON.stringify([organ.id, side, "path" in says ? says.path : says.finding]);
  return [...grouped(told, key).values()].flatMap(([, ...again]) => again);
}

type Fields = { -readonly [Key in keyof Finding]?: Finding[Key] };

/** The organ that is being told of. */
interface Telling extends Stretch {
  readonly organ: PlacedOrgan;
  side: Side | undefined;
  /** The finding that what follows belongs to. */
  finding: Draft | undefined;
  isTold: boolean;
  /** Organs named before it of which nothing was said yet: `heart, liver and spleen normal`. */
  readonly pending: readonly Telling[];
}

interface Draft extends Stretch {
  readonly organ: PlacedOrgan;
  readonly side: Side | undefined;
  readonly fields: Fields;
  /** Its share of parts was told, which is an observation: the finding needs more than that to be written. */
  isMeasured: boolean;
}

/** Reads one part of a note: what stands between semicolons. */
class PartReader {
  readonly #note: string;
  readonly #stretch: Stretch;
  readonly #misread: Misread[] = [];
  readonly #told: (Draft | Told)[] = [];
  #now: Telling | undefined;

  /** @param organ the one of the part before, of which a part is told that names none */
  constructor(note: string, stretch: Stretch, organ: Telling | undefined) {
    this.#note = note;
    this.#stretch = stretch;
    if (organ !== undefined) this.#now = { ...organ, finding: undefined };
  }

  read(): ReadNote & { readonly organ: Telling | undefined } {
    for (const piece of piecesOf(this.#note, this.#stretch)) if (this.#isKnown(piece)) this.#piece(piece);
    this.#end();
    const told = this.#told.flatMap((one): Told[] => {
      if (!("fields" in one)) return [one];
      const { process, ...others } = one.fields;
      if (
        process === undefined ||
        (one.isMeasured && Object.values(others).every((value) => value === undefined))
      )
        return [];
      return [{ ...one, says: { finding: { ...one.fields, process } } }];
    });
    return { told, misread: this.#misread, organ: this.#now };
  }

  #fail(at: Stretch, message: string): void {
    this.#misread.push({ start: at.start, end: at.end, message });
  }

  /** Of each organ that was named something must be said. */
  #end(): void {
    const untold = this.#now?.isTold === false ? this.#now : this.#now?.pending[0];
    if (untold !== undefined && this.#misread.length === 0)
      this.#fail(
        untold,
        `nothing is said of ${nameOf(untold.organ)}. Write normal, what you see, or not examined: and why`,
      );
  }

  #isKnown(piece: readonly Item[]): boolean {
    const before = this.#misread.length;
    for (const item of piece) {
      if (item.is === "unknown") this.#fail(item, item.message);
      if (item.is !== "name") continue;
      const [only, ...others] = item.named;
      if (only?.is !== "term" || others.length > 0) continue;
      const write = only.write === undefined ? "" : ` In the file that is ${only.write}`;
      this.#fail(item, `${item.text}: ${only.means}${write}`);
    }
    return this.#misread.length === before;
  }

  #piece(piece: readonly Item[]): void {
    const whole = { start: piece[0]?.start ?? 0, end: piece.at(-1)?.end ?? 0 };
    const items = this.#withoutOrgan(piece, whole);
    const now = this.#now;
    if (items === undefined || now === undefined || items.length === 0) return;
    const { sides, lobes, rest } = placesIn(items);
    if (!this.#takeSide(now, sides, rest.length + lobes.length === 0)) return;
    const words = rest.filter((item) => item.is === "name");
    const normal = words.find(({ named }) => named.some(({ is }) => is === "normal"));
    if (normal !== undefined) {
      if (rest.length > 1)
        this.#fail(whole, `${normal.text} stands alone: nothing else can be said of an organ that is normal`);
      else for (const each of [...now.pending, now]) this.#tell(each, whole, [], "normal");
      this.#now = { ...now, pending: [] };
      return;
    }
    const values = rest.filter((item) => item.is === "text").filter((item) => this.#value(now, item));
    const others = rest.filter((item) => !values.some((value) => value === item) && !this.#weight(now, item));
    const fieldSide = now.organ.definition.form === "paired" ? undefined : sides[0]?.side;
    if (others.length + lobes.length === 0 && fieldSide === undefined) return;
    const draft = this.#draft(now, others, whole);
    if (draft === undefined) return;
    if (fieldSide !== undefined) this.#field(draft, "side", fieldSide, sides[0] ?? whole);
    const shares = others.filter((item) => item.is === "number" && (item.unit === "%" || item.unit === ""));
    const left = this.#lobes(now, draft, lobes, shares)
      ? others.filter((item) => !shares.includes(item))
      : others;
    for (const item of left) this.#describe(draft, item);
  }

  #tell(now: Telling, at: Stretch, path: readonly string[], value: Value): void {
    now.isTold = true;
    this.#told.push({
      organ: now.organ,
      side: now.side,
      start: at.start,
      end: at.end,
      says: { path, value },
    });
  }

  /** Finds the organ of a piece, and what is left of the piece without it; a part of an organ is a place in it. */
  #withoutOrgan(piece: readonly Item[], whole: Stretch): readonly Item[] | undefined {
    const named = piece.filter(isOrgan);
    const item =
      named.find((one) => one.named.some((name) => name.is === "organ" && !name.within)) ?? named[0];
    if (item === undefined) {
      if (this.#now === undefined) this.#fail(whole, "which organ? Begin with one: liver …");
      return this.#now === undefined ? undefined : piece;
    }
    const meant = item.named.filter((name) => name.is === "organ");
    const [one] = meant;
    if (one === undefined) return undefined;
    if (meant.length > 1) {
      this.#fail(
        item,
        `${item.text} may be ${listing(
          meant.map(({ organ }) => nameOf(organ)),
          "or",
        )}. Write which`,
      );
      return undefined;
    }
    const foreign = named.find(
      (other) =>
        other !== item &&
        !other.named.some((name) => name.is === "organ" && name.within && name.organ === one.organ),
    );
    if (foreign !== undefined) {
      this.#fail(foreign, `${item.text} and ${foreign.text} are two organs. Put a ; between them`);
      return undefined;
    }
    if (!(one.within && this.#now?.organ === one.organ)) {
      const before = this.#now;
      if (before?.isTold === true) this.#end();
      const pending = before?.isTold === false ? [...before.pending, before] : [];
      this.#now = { organ: one.organ, side: undefined, finding: undefined, isTold: false, pending, ...whole };
    }
    const sites = named
      .filter((other) => other !== item || one.within)
      .map(({ text, start, end }): Item => ({ is: "text", key: "site", text, start, end }));
    return [...piece.filter((other) => !isOrgan(other)), ...sites];
  }

  /** The side of a paired organ holds until another is named. @returns whether the piece can be read on */
  #takeSide(now: Telling, sides: readonly PlacedSide[], isAlone: boolean): boolean {
    const [first, second] = sides;
    if (second !== undefined)
      this.#fail(second, "two sides in one piece. Put a comma between them, or write both");
    if (first === undefined || second !== undefined) return second === undefined;
    if (now.organ.definition.form !== "paired") return true;
    now.side = first.side === "both" ? undefined : first.side;
    if (!isAlone) {
      now.finding = undefined;
      return true;
    }
    if (first.side === "both" && now.isTold) return false;
    if (now.isTold)
      this.#fail(first, `nothing is said of the ${first.side} one. Write normal or what you see`);
    return false;
  }

  /** `septum: straight`, `left: dorsal 1 ventral 2`, `not examined: why`. @returns whether it was one */
  #value(now: Telling, item: TextItem): boolean {
    if (item.key === "not examined") {
      if (item.text === "") this.#fail(item, "write why behind not examined:");
      this.#tell(now, item, ["not_examined"], item.text);
      return true;
    }
    const key = item.key.replaceAll(" ", "_");
    const observation = Object.entries(now.organ.definition.observations ?? {}).find(
      ([name]) => name === key,
    )?.[1];
    if (observation === undefined || observation.kind === "measured") return false;
    const read = observed(observation, item.text);
    if (typeof read === "string") this.#fail(item, `${item.key}: ${read}`);
    else for (const { part, value } of read) this.#tell(now, item, [key, ...part], value);
    return true;
  }

  #weight(now: Telling, item: Item): boolean {
    if (item.is !== "number" || !/^k?g$/.test(item.unit)) return false;
    this.#tell(now, item, ["weight"], `${item.value} ${item.unit}`);
    return true;
  }

  /** The finding that a piece begins, or the one before, which it goes on with. */
  #draft(now: Telling, items: readonly Item[], whole: Stretch): Draft | undefined {
    const processes = items.filter(
      (item) => item.is === "name" && item.named.every((one) => one.is === "word" && one.key === "process"),
    );
    const [first, second] = processes;
    if (second !== undefined) {
      this.#fail(
        second,
        `two findings in one piece. Put a comma or "and" before ${second.is === "name" ? second.text : ""}`,
      );
      return undefined;
    }
    const maybe = items.filter((item) => meansProcess(item));
    const begun = first ?? (now.finding === undefined && maybe.length === 1 ? maybe[0] : undefined);
    if (begun === undefined) {
      if (now.finding === undefined) this.#fail(whole, processWanted(items));
      return now.finding;
    }
    const process =
      begun.is === "name" ? begun.named.find((one) => one.is === "word" && one.key === "process") : undefined;
    if (process?.is !== "word") return undefined;
    const draft: Draft = { organ: now.organ, side: now.side, fields: {}, isMeasured: false, ...whole };
    draft.fields.process = process.word as Finding["process"];
    this.#told.push(draft);
    now.finding = draft;
    now.isTold = true;
    return draft;
  }

  /** `15 % left middle` of an observation that is named like the finding; elsewhere a lobe is a site. @returns whether the shares are told */
  #lobes(now: Telling, draft: Draft, lobes: readonly PlacedLobe[], shares: readonly Item[]): boolean {
    const [share, more] = shares;
    const name = draft.fields.process ?? "";
    const observation = now.organ.definition.observations?.[name];
    const parts = observation?.kind === "percent" ? observation.parts : undefined;
    if (lobes.length === 0) return false;
    if (share?.is !== "number" || observation === undefined || parts === undefined) {
      for (const lobe of lobes) draft.fields.site = [draft.fields.site, lobe.text].filter(Boolean).join(", ");
      return false;
    }
    const [lobe, other] = lobes;
    if (lobe === undefined || other !== undefined || more !== undefined) {
      this.#fail(
        other ?? more ?? share,
        "one share for one lobe. Put a comma between them: 15 left middle, 10 right middle",
      );
      return true;
    }
    if (!Object.hasOwn(parts, lobe.key)) {
      this.#fail(
        lobe,
        `there is no ${lobe.text} lobe. Write ${listing(
          Object.keys(parts).map((part) => part.replaceAll("_", " ")),
          "or",
        )}`,
      );
      return true;
    }
    const read = oneValue(observation, share.value);
    if ("fault" in read) this.#fail(share, `${share.text}: ${read.fault}`);
    else this.#tell(now, lobe, [name, lobe.key], read.value);
    draft.isMeasured = true;
    return true;
  }

  #describe(draft: Draft, item: Item): void {
    if (item.is === "number") this.#number(draft, item);
    else if (item.is === "text") this.#keyed(draft, item);
    else if (item.is === "name") this.#word(draft, item);
  }

  #number(draft: Draft, item: Extract<Item, { is: "number" }>): void {
    const { value, unit } = item;
    if (unit === "%") {
      if (Number(value) > 100) this.#fail(item, `${item.text}: a share is 0 to 100 %`);
      this.#field(draft, "extent", `${value} %`, item);
    } else if (unit === "mm" || unit === "cm") this.#field(draft, "size", `${value} ${unit}`, item);
    else if (unit === "ml" || unit === "l") this.#field(draft, "volume", `${value} ${unit}`, item);
    else if (/^[1-9]\d*$/.test(value)) this.#field(draft, "number", Number(value), item);
    else
      this.#fail(
        item,
        `${item.text} has no unit: mm, cm, %, ml, l, g or kg. Without one it is how many there are`,
      );
  }

  #keyed(draft: Draft, item: TextItem): void {
    if (item.text === "") this.#fail(item, `nothing stands behind ${item.key}:`);
    else if (item.key === "site" || item.key === "note") this.#field(draft, item.key, item.text, item);
    else {
      const key = wordKeys.find((one) => one === item.key);
      const words = item.text.split(/[ \t]+/);
      const match = key === undefined ? undefined : firstName(words);
      const named = match?.named.find((one) => one.is === "word" && one.key === key);
      if (key === undefined)
        this.#fail(
          item,
          `there is no ${item.key}: of a finding of ${nameOf(draft.organ)}. Write ${listing([...wordKeys, "site", "note"], "or")}`,
        );
      else if (named?.is !== "word" || match?.length !== words.length)
        this.#fail(item, `"${item.text}" is no ${key}. carcase explain ${key} lists the words`);
      else if (key !== "process") this.#field(draft, key, named.word, item);
      else if (draft.fields.process !== named.word)
        this.#fail(item, "a finding has one process. Put a comma before it");
    }
  }

  #word(draft: Draft, item: NameItem): void {
    const words = item.named.filter((one) => one.is === "word");
    const process = words.find(({ key }) => key === "process");
    if (
      process !== undefined &&
      process.word === draft.fields.process &&
      this.#note.slice(draft.start, draft.end).includes(item.text)
    )
      return;
    const meant = item.text;
    const [one, two] =
      draft.start <= item.start && item.end <= draft.end
        ? words.filter(({ key }) => key !== "process")
        : words;
    if (one === undefined)
      this.#fail(item, `${meant} does not belong to a finding of ${nameOf(draft.organ)}`);
    else if (two !== undefined)
      this.#fail(
        item,
        `${meant} has two meanings: write ${listing(
          words.map(({ key, word: value }) => `${key}: ${value}`),
          "or",
        )}`,
      );
    else this.#field(draft, one.key, one.word, item);
  }

  #field<Key extends keyof Fields>(draft: Draft, key: Key, value: string | number, at: Stretch): void {
    const there = draft.fields[key];
    if (there === value) return;
    if (there !== undefined)
      this.#fail(
        at,
        `a finding has one ${key}, and ${there} stands there already. Write one of them${key === "colour" ? ", or mottled" : ""}`,
      );
    else Object.assign(draft.fields, { [key]: value });
  }
}

function processWanted(items: readonly Item[]): string {
  const kind = items.find(
    (item) => item.is === "name" && item.named.some((one) => one.is === "word" && one.key === "exudate"),
  );
  if (kind?.is === "name")
    return `${kind.text} says of what kind. Write exudate ${kind.text}, or effusion ${kind.text}`;
  return "what is it? A finding needs the word for its process, such as haemorrhage or enlarged";
}

const nameOf = (organ: PlacedOrgan): string => organ.key.replaceAll("_", " ");

const isOrgan = (item: Item): item is NameItem =>
  item.is === "name" && item.named.some(({ is }) => is === "organ");
const meansProcess = (item: Item): boolean =>
  item.is === "name" && item.named.some((one) => one.is === "word" && one.key === "process");
