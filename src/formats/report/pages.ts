/** An archive as pages that open from the disk: farms, visits, pigs, findings by organ, and a search over all of it. */
import type { Archive, Case } from "../../cases/index.ts";
import { makeReport, type ReportPig, type ReportResult, type ReportWords } from "../../report/index.ts";
import { grouped } from "../../words/grouped.ts";
import { type Html, html } from "../page/html.ts";
import { htmlPage, type Way } from "../page/html-page.ts";
import { type Dress, plain } from "./dress.ts";
import { reportHtml } from "./html.ts";
import { searchScript } from "./search.ts";

export interface ArchivePage {
  readonly name: string;
  readonly text: string;
}

interface Made {
  readonly version: string;
  filesOf(cases: readonly Case[]): ReportResult["files"];
  readonly words: ReportWords;
  readonly digests?: ReadonlyMap<string, string>;
  readonly dress?: Dress;
}

/** What the search finds: a page, and the words that stand on it. */
interface Found extends Way {
  readonly words: string;
}

const pigPage = (id: string): string => `pig-${id}.html`;
const visitPage = (id: string): string => `visit-${id}.html`;

/** One page after the other, so that no more than one is held. */
export function* archivePages(
  archive: Archive,
  { version, filesOf, words, digests = new Map(), dress = plain }: Made,
): Generator<ArchivePage> {
  const report = (cases: readonly Case[], of: ReportResult["of"]): ReportResult =>
    makeReport({ ...archive, cases }, { version, files: filesOf(cases), digests, of });
  const page = (made: ReportResult, ways: readonly Way[]): string =>
    reportHtml(made, "colleague", words, ways, dress);
  const home: Way = { to: "index.html", name: words.say("pages_all") };
  const titleOf = (organ: string): string => words.name("organs", organ);
  const found: Found[] = [];
  const organs = new Map<string, { pig: string; words: string }[]>();
  const farms = grouped(archive.cases, ({ farm }) => farm?.id ?? "");
  for (const [farm, ofFarm] of farms) {
    const visits = grouped(ofFarm, ({ visit }) => visit?.id ?? "");
    const farmPage: Way = { to: `farm-${farm}.html`, name: ofFarm[0].farm?.record.name ?? farm };
    if (farm !== "") {
      yield {
        name: farmPage.to,
        text: page(report(ofFarm, visits.size > 1 ? "farm" : "visit"), [
          home,
          ...[...visits.keys()].filter(Boolean).map((id) => ({ to: visitPage(id), name: id })),
        ]),
      };
      found.push({ ...farmPage, words: farmPage.name });
    }
    for (const [id, cases] of visits) {
      const above = farm === "" ? [home] : [home, farmPage];
      const visit: Way = { to: visitPage(id), name: id };
      if (id !== "") {
        const made = report(cases, "visit");
        yield {
          name: visit.to,
          text: page(made, [
            ...above,
            ...cases.map((one) => ({ to: pigPage(one.id), name: numberOf(one.id) })),
          ]),
        };
        found.push({
          ...visit,
          words: [made.visits.flatMap(({ complaint, question }) => [complaint, question])].flat().join(" "),
        });
      }
      for (const one of cases) {
        const made = report([one], "case");
        yield {
          name: pigPage(one.id),
          text: page(made, id === "" ? above : [...above, visit]),
        };
        const [pig] = made.pigs;
        if (pig === undefined) continue;
        found.push({ to: pigPage(one.id), name: one.id, words: wordsOf(pig, titleOf) });
        for (const { organ, words: told } of pig.findings)
          organs.set(organ, [...(organs.get(organ) ?? []), { pig: one.id, words: told }]);
      }
    }
  }
  for (const [organ, findings] of organs) {
    yield { name: organPage(organ), text: organText(organ, findings, version, home, words) };
    found.push({
      to: organPage(organ),
      name: titleOf(organ),
      words: findings.map(({ words: told }) => told).join(" "),
    });
  }
  yield { name: "index.html", text: indexText(farms, [...organs.keys()], version, words) };
  yield { name: "search.js", text: searchScript(found) };
}

const numberOf = (id: string): string => id.slice(id.lastIndexOf("-") + 1);
const organPage = (organ: string): string => `organ-${organ}.html`;

const wordsOf = (
  { group, findings, diagnosis: { morphologic, aetiologic, differentials } }: ReportPig,
  titleOf: (organ: string) => string,
): string =>
  [
    group,
    ...findings.flatMap(({ organ, words }) => [titleOf(organ), words]),
    ...morphologic,
    ...aetiologic,
    ...differentials,
  ].join(" ");

const linkTo = ({ to, name }: Way): Html => html`<a href="${to}">${name}</a>`;

function organText(
  organ: string,
  findings: readonly { pig: string; words: string }[],
  version: string,
  home: Way,
  words: ReportWords,
): string {
  const pigs = grouped(findings, ({ pig }) => pig);
  return htmlPage({
    language: words.language,
    madeBy: "report",
    title: words.name("organs", organ),
    by: words.name("systems", organ.split(".")[0] ?? ""),
    ways: [home],
    main: [
      html`<section><h2>${words.say("pages_pigs")}</h2><ul>${[...pigs].map(([pig, some]) => html`<li>${linkTo({ to: pigPage(pig), name: pig })}: ${some.map(({ words: told }) => told).join("; ")}</li>`)}</ul></section>`,
    ],
    foot: words.say("pages_made", { version }),
  });
}

function indexText(
  farms: ReadonlyMap<string, readonly Case[]>,
  organs: readonly string[],
  version: string,
  words: ReportWords,
): string {
  const ofFarm = ([farm, cases]: [string, readonly Case[]]): Html => {
    const visits = grouped(cases, ({ visit }) => visit?.id ?? "");
    const name = cases[0]?.farm?.record.name ?? farm;
    return html`<section><h2>${farm === "" ? words.say("pages_no_farm") : linkTo({ to: `farm-${farm}.html`, name })}</h2><ul>${[
      ...visits,
    ].map(
      ([id, some]) =>
        html`<li>${id === "" ? some.map((one) => linkTo({ to: pigPage(one.id), name: one.id })) : html`${linkTo({ to: visitPage(id), name: id })}, ${words.say("pages_visit", { n: some.length })}`}</li>`,
    )}</ul></section>`;
  };
  return htmlPage({
    language: words.language,
    madeBy: "report",
    title: words.say("pages"),
    by: "",
    main: [
      html`<section><h2><label for="sought">${words.say("pages_search")}</label></h2><input type="search" id="sought" autocomplete="off"><ul id="found" aria-live="polite"></ul></section>`,
      ...[...farms].map(ofFarm),
      html`<section><h2>${words.say("pages_organs")}</h2><ul>${organs.map((organ) => html`<li>${linkTo({ to: organPage(organ), name: words.name("organs", organ) })}</li>`)}</ul></section>`,
    ],
    foot: `${words.say("pages_made", { version })} ${words.say("pages_script")}`,
    script: "search.js",
  });
}
