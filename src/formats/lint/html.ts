/** The linter's result as one page, for those who do not read terminals: alarms and errors first, a file after the other. */
import type { Finding, Level } from "../../lint/index.ts";
import { grouped } from "../../words/grouped.ts";
import { count } from "../../words/listing.ts";
import { type Html, html } from "../page/html.ts";
import { htmlPage } from "../page/html-page.ts";
import { portablePath } from "../page/portable-path.ts";
import { type LintReport, reported } from "./report.ts";

const levels: readonly Level[] = ["error", "warning", "note"];

export function lintHtml({ result, unreadable, passedOver, version }: LintReport): string {
  const findings = reported(result, unreadable);
  const alarms = findings.filter(({ rule }) => rule.startsWith("alarm"));
  const rest = findings.filter((one) => !alarms.includes(one));
  const { errors, warnings, notes } = result.summary;
  const counts = `${count(errors, "error")}, ${count(warnings, "warning")}, ${count(notes, "note")}`;
  return htmlPage({
    language: "en",
    madeBy: "lint",
    title: findings.length === 0 ? "Nothing to put right" : counts,
    by: `${count(result.completeness.length, "case")}${passedOver.length === 0 ? "" : `, ${count(passedOver.length, "file")} of other tools passed over`}`,
    main: [
      ...(alarms.length === 0
        ? []
        : [
            html`<section class="stop" id="alarms"><h2>Stop: this may be a notifiable disease</h2>\n${alarms.map(findingOf)}</section>`,
          ]),
      ...[...grouped(rest, ({ file }) => file)].map(
        ([file, some]) =>
          html`<section><h2>${portablePath(file)}</h2>\n<ul>${inOrder(some).map((one) => html`<li>${findingOf(one)}</li>`)}</ul></section>`,
      ),
      ...(findings.length === 0
        ? [html`<section><p>Every organ due is recorded, and nothing contradicts itself.</p></section>`]
        : []),
    ],
    foot: `Made with carcase ${version}. carcase explain RULE says why a finding is made and what else looks like it.`,
  });
}

const inOrder = (findings: readonly Finding[]): Finding[] =>
  findings.toSorted((a, b) => levels.indexOf(a.level) - levels.indexOf(b.level) || a.line - b.line);

const findingOf = ({ level, line, message, rule, excerpt }: Finding): Html =>
  html`<p><b>${level}</b>, line ${line}: ${message} <code>${rule}</code></p>${excerpt.trim() === "" ? html`` : html`<pre>${excerpt}</pre>`}`;
