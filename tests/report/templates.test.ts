/** Templates of the practice: they say what the data hold, escaped; nothing in one acts, fetches, reads files or runs for ever. */
import { describe, expect, it } from "vitest";
import { TemplateFault, templates } from "../../src/formats/report/template.ts";
import { reportWords } from "../../src/report/index.ts";
import { every } from "../every.ts";
import { hostileReport, reports } from "./made.ts";

const made = (text: string, more: Readonly<Record<string, string>> = {}, report = reports.visit): string =>
  templates(
    new Map(Object.entries({ "a.liquid": text, ...more })),
    report,
    reportWords("en"),
    "farm",
  )("a.liquid").text;

/** Where and why a template is refused. */
function refused(text: string, more: Readonly<Record<string, string>> = {}): string {
  try {
    return `made: ${made(text, more)}`;
  } catch (error) {
    if (!(error instanceof TemplateFault)) throw error;
    const { file, place, message } = error;
    return `${file}${place === undefined ? "" : `:${place.line}:${place.column}`} ${message}`;
  }
}

describe("a template", () => {
  it("tells what the JSON of the report holds, in the words of its reader", () => {
    const text =
      "<h3>{{ title }}</h3>\n<ul>{% for pig in pigs limit: 1 %}<li>{{ pig.id }}, {{ pig.basis | name: 'bases' }}, {{ pig.lobes.accessory }}</li>{% endfor %}</ul><p>{{ day | day }}: {{ 0.405 | percent }}, {{ 1234.5 | number }}<br>{{ pigs.size }} &amp; {{ pigs | where: 'group', 'nursery-2' | size }}&nbsp;pigs</p>";
    expect(made(text)).toBe(
      "<h3>Report of the visit to Alder Farm on 14 March 2026</h3>\n<ul><li>alder-2026-03-14-01, chosen for signs, 10</li></ul><p>14 March 2026: 40.5%, 1,234.5<br>14 &amp; 8\u00a0pigs</p>",
    );
  });

  it("may be made of others beside it", () => {
    expect(
      made("{% for pig in pigs limit: 2 %}{% render 'row.liquid', pig: pig %}{% endfor %}", {
        "row.liquid": "<p>{{ pig.group }}</p>",
      }),
    ).toMatch(/^<p>[^<]+<\/p><p>[^<]+<\/p>$/);
  });

  it("puts what people wrote into the page as text", () => {
    const html = made(
      "<p title=\"{{ farm }}\">{{ farm }}</p><p>{{ visits[0].complaint | append: '<b>' }}</p>",
      {},
      { ...hostileReport(), farm: "\"'<script>\u202eevil" },
    );
    expect(html).not.toMatch(/<(?!\/?p[ >])/);
    expect(html).toContain("&lt;script&gt;alert(1)&lt;/script&gt;");
    expect(html).toContain("\\u{202e}");
  });

  every(
    "that asks for what is not there is told what there is, and where",
    [
      [
        "<p>\n  {{ nope }}",
        'a.liquid:2:6 there is no name "nope". There are made_by, of, title, farm, by, day, answer, visits, pigs, shares, scales, fits, compared, files, language and reader.',
      ],
      [
        "{% for pig in pigs %}\n{{ pig.gruop }}{% endfor %}",
        'a.liquid:2:4 there is no name "gruop". Did you mean group? There are id, visit, group, ',
      ],
      ["{% if pgs %}{% endif %}", 'a.liquid:1:7 there is no name "pgs". Did you mean pigs?'],
      ["{{ pigs | map: 'nme' }}", 'a.liquid:1:1 there is no name "nme".'],
      ["{{ day | dey }}", 'a.liquid:1:1 there is no filter "dey". Did you mean day?'],
      [
        "{{ day | name: 'organ' }}",
        'a.liquid:1:1 there is no name "organ". Did you mean organs? There are indicators, scales, systems, organs and bases.',
      ],
      ["{% exec 'ls' %}", 'a.liquid:1:1 there is no tag "exec"'],
      ["{% render 'b.liquid' %}", 'a.liquid:1:1 there is no template "b.liquid". '],
      ["x\n{% if day %}", "a.liquid:2:1 tag {% if day %} not closed"],
      ["{{ pigs[0] }}", "a.liquid:1:1 there are several values here; write which: id, visit, group, "],
    ] as const,
    ([text, why]) => expect(refused(text).slice(0, why.length)).toBe(why),
  );

  it("is told of the file in which it is, of several", () => {
    expect(refused("{% render 'b.liquid' %}", { "b.liquid": "\n\n{{ nope }}" })).toMatch(/^b\.liquid:3:4 /);
  });

  every(
    "reaches neither files nor the program",
    [
      "{{ pigs.constructor }}",
      "{{ pigs[0].constructor }}",
      "{{ pigs[0]['__proto__'] }}",
      "{{ title.constructor.constructor }}",
      "{{ process.version }}",
      "{{ globalThis }}",
      "{{ require }}",
      "{% render '../../../etc/passwd' %}",
      "{% include '/etc/passwd' %}",
      "{% layout '/etc/passwd' %}",
      "{% assign a = '/etc/passwd' %}{% include a %}",
      "{{ title | raw }}",
      "{{ 'now' | date: '%s' }}",
      "{{ pigs | sample }}",
    ],
    (text) => expect(refused(text)).toMatch(/^a\.liquid:1:\d+ there is no /),
  );

  every(
    "makes nothing that acts, fetches or leads astray",
    [
      ["<p>\n<script>1</script></p>", "a.liquid:2:1 <script> may not stand in a report"],
      ["<img src='https://example.org/a.png'/>", "a.liquid:1:1 <img> may not"],
      ["<iframe></iframe>", "a.liquid:1:1 <iframe> may not"],
      ["<svg><script>1</script></svg>", "a.liquid:1:1 <svg> may not"],
      ["<SCRIPT>1</SCRIPT>", "a.liquid:1:1 <SCRIPT> may not"],
      ["<p onclick='1'>a</p>", 'a.liquid:1:4 onclick="…" may not'],
      ["<p style='background:url(//example.org)'>a</p>", 'a.liquid:1:4 style="…" may not'],
      ["<p href='#a'>a</p>", 'a.liquid:1:4 href="…" may not'],
      ["<a href='javascript:1'>a</a>", 'a.liquid:1:4 a link leads to "javascript:1"'],
      ["<a href='{{ \"JAVAscript:1\" }}'>a</a>", 'a.liquid:1:4 a link leads to "JAVAscript:1"'],
      ["<a href='&#106;avascript:1'>a</a>", 'a.liquid:1:4 a link leads to "javascript:1"'],
      ["<a href=' javascript:1'>a</a>", "a.liquid:1:4 a link leads to"],
      ["<a href='data:text/html,x'>a</a>", "a.liquid:1:4 a link leads to"],
      ["<a href='http://example.org'>a</a>", "a.liquid:1:4 a link leads to"],
      ["<a href='//example.org'>a</a>", "a.liquid:1:4 a link leads to"],
      ["<p>a", "a.liquid what it makes is not whole HTML: unclosed tag: p"],
      ["</section><p>a</p>", "a.liquid what it makes is not whole HTML"],
      ["<!doctype html><p>a</p>", "a.liquid"],
      ["<?php 1 ?>", "a.liquid:1:1 <?php may not"],
    ] as const,
    ([text, why]) => expect(refused(text).slice(0, why.length)).toBe(why),
  );

  it("keeps the links that lead somewhere honest, and drops comments", () => {
    const links =
      '<a href="https://example.org/a?b=1&amp;c=2">a</a><a href="mailto:a@example.org">b</a><a href="#found">c</a>';
    expect(made(`${links}<!-- <script> -->`)).toBe(links);
  });

  every(
    "that does not end is ended",
    [
      ["{% for a in (1..100000000) %}{% endfor %}", "it makes or holds too much text"],
      [
        "{% assign a = 'pig' %}{% for i in (1..60) %}{% assign a = a | append: a %}{% endfor %}",
        "it makes or",
      ],
      [
        "{% assign a = 'pig' %}{% for i in (1..60) %}{% capture a %}{{ a }}{{ a }}{% endcapture %}{% endfor %}",
        "it makes or",
      ],
      [
        "{% for a in (1..9000) %}{% for b in (1..9000) %}{% for c in pigs %}{% endfor %}{% endfor %}{% endfor %}",
        "it takes longer than two seconds",
      ],
      ["{% render 'a.liquid' %}", "it renders itself without end"],
    ] as const,
    ([text, why]) => expect(refused(text)).toMatch(new RegExp(`^a\\.liquid:1:\\d+ ${why}`)),
    ([text]) => text.slice(0, 60),
  );
});
