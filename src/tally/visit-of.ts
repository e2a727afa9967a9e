/** The visit that a table belongs to. */
import { basename, resolve } from "node:path";
import type { ArchiveContext } from "../cases/files/archive-context.ts";
import { formatPath, unknownName } from "../cases/index.ts";
import type { Defaults } from "../generated/visit.types.ts";
import { lay, recordText, schemaHead } from "./record-text.ts";
import type { Pig } from "./rows.ts";
import { TableFault } from "./table.ts";
import type { NewFile, TallyWish } from "./wish.ts";

const isoDay = /^\d{4}-\d{2}-\d{2}$/;
/** What a visit may hold for its cases. */
export const ofTheDay = [
  "protocol",
  "examiner",
  "pig.group",
  "pig.age",
  "pig.class",
  "death.manner",
  "death.method",
  "death.at",
  "opened.at",
  "opened.ambient",
  "opened.place",
  "respiratory.turbinates.section",
];

/** The visit that the pigs belong to: the one that is there, or a new one with what all rows share. */
export class VisitOf {
  readonly known;
  readonly id: string;
  readonly defaults: Defaults;
  readonly #wish: TallyWish;
  readonly #date: string;

  constructor(wish: TallyWish, context: ArchiveContext, pigs: readonly Pig[]) {
    this.#wish = wish;
    this.known = context.visit(resolve(wish.folder));
    const faults = [...context.unreadable, ...(this.known?.faults ?? [])];
    if (faults.length > 0) throw new TableFault(faults);
    const days = new Set(
      pigs.flatMap(({ entries }) =>
        entries
          .filter(({ path }) => formatPath(path) === "opened.at")
          .map(({ value }) => String(value).slice(0, 10)),
      ),
    );
    const named = basename(resolve(wish.folder));
    const [day = ""] = days.size === 1 ? days : [];
    this.#date = wish.date ?? (isoDay.test(named) ? named : day);
    const farm = context.farm(resolve(wish.folder))?.id;
    this.id = this.known?.id ?? wish.visit ?? (farm === undefined ? "" : `${farm}-${this.#date}`);
    if (this.known === undefined && this.#date === "")
      throw new RangeError(
        `there is no visit.yaml in ${wish.folder}, and no one day under "opened at"; say it, such as --date 2026-03-14`,
      );
    if (this.id === "")
      throw new RangeError(
        `there is no visit.yaml in ${wish.folder}, nor a farm.yaml above it; name the visit, such as --visit alder-${this.#date}`,
      );
    const { protocol } = wish;
    const names = [...context.settings(resolve(wish.folder)).protocols.keys()];
    if (protocol !== undefined && this.known !== undefined)
      throw new RangeError(
        `--protocol: ${this.known.file} is there already; write protocol: ${protocol} under its defaults`,
      );
    if (protocol !== undefined && !names.includes(protocol))
      throw new RangeError(`--protocol: ${unknownName(protocol, names, "protocol")}`);
    this.defaults =
      this.known === undefined
        ? { ...(protocol !== undefined && { protocol }), ...shared(pigs) }
        : (this.known.record.defaults ?? {});
  }

  get namesItsCases(): boolean {
    return this.known?.record.cases !== undefined;
  }

  file(cases: readonly string[]): NewFile | undefined {
    if (this.known !== undefined) return undefined;
    const file = `${this.#wish.folder}/visit.yaml`;
    const defaults = Object.keys(this.defaults).length === 0 ? {} : { defaults: this.defaults };
    return {
      file,
      text: `${schemaHead(file, "visit")}${recordText({ format: 1, visit: this.id, date: this.#date, ...defaults, cases })}`,
    };
  }
}

/** What every row says alike. One pig shares nothing. */
function shared(pigs: readonly Pig[]): Defaults {
  const defaults = {};
  if (pigs.length < 2) return defaults;
  for (const id of ofTheDay) {
    const said = pigs.map(({ entries }) => entries.find(({ column }) => column.to.id === id));
    const [first] = said;
    if (first === undefined) continue;
    if (said.every((one) => JSON.stringify(one?.value) === JSON.stringify(first.value)))
      lay(defaults, first.path, first.value);
  }
  return defaults;
}
