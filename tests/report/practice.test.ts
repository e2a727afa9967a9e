/** What a practice puts into its reports: letterhead, sections and their order, templates; or a message, and nothing written. */
import { cpSync, existsSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { beforeEach, describe, expect, it } from "vitest";
import { reportSections } from "../../src/knowledge/index.ts";
import { put, temporaryFolder } from "../cases/temporary.ts";
import { carcase, wide } from "../end-to-end/run.ts";
import { every } from "../every.ts";

/** The smallest picture: a point. */
const png = Buffer.from(
  "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==",
  "base64",
);

describe("the report of a practice", () => {
  const around = temporaryFolder();
  const cwd = join(around, "repository");
  cpSync("cases-example/alder-farm", join(cwd, "alder-farm"), { recursive: true });
  put(cwd, {
    ".git/HEAD": "",
    "report/logo.png": png,
    "report/costs.txt": "The visit and\nfourteen pigs.\n\nWithout <b>tests</b>.\n",
    "report/samples.liquid":
      "<ul>{% for pig in pigs %}{% for sample in pig.samples %}{% render 'report/row.liquid', sample: sample %}{% endfor %}{% endfor %}</ul>",
    "report/row.liquid": "<li>{{ sample.id }}</li>",
    "report/wrong.liquid": "<p>\n{{ farmer }}</p>",
    "report/text.png": "text",
    "../outside.txt": "secret",
  });
  beforeEach(() => rmSync(join(cwd, "r.html"), { force: true }));

  const report = (settings: string, ...more: string[]) => {
    writeFileSync(join(cwd, "carcase.yaml"), `format: 1\nreport:\n${settings}`);
    const ran = carcase(["report", "alder-farm/2026-03-14", "-o", "r.html", ...more], { cwd, env: wide });
    const html = existsSync(join(cwd, "r.html")) ? readFileSync(join(cwd, "r.html"), "utf8") : "";
    return { ...ran, html, sections: [...html.matchAll(/<section[^>]* id="([^"]+)"/g)].map(([, id]) => id) };
  };

  it("has its letterhead above the title", () => {
    const { code, html } = report(
      "  letterhead:\n    name: Practice <Marlow>\n    address: [Mill Lane 4, Elmbridge]\n    telephone: 555 0100\n    logo: report/logo.png\n",
    );
    expect(code).toBe(0);
    expect(html).toContain(
      `<img src="data:image/png;base64,${png.toString("base64")}" alt=""><p><strong>Practice &lt;Marlow&gt;</strong><br>Mill Lane 4\n<br>Elmbridge\n<br>555 0100</p>`,
    );
    expect(html.indexOf("letterhead")).toBeLessThan(html.indexOf("<h1>"));
  });

  it("has its own sections in its own order, and loses none of ours", () => {
    const plain = report("  order: {}\n").sections;
    const { code, html, sections } = report(
      "  extra:\n    costs: {title: What it costs, file: report/costs.txt}\n    terms: {title: Terms, file: report/samples.liquid}\n  order:\n    farm: [next, costs, method]\n",
    );
    expect(code).toBe(0);
    expect(sections).toEqual([
      "answer",
      "next",
      "own-costs",
      "method",
      ...plain.filter((id) => id !== "answer" && id !== "next"),
      "own-terms",
    ]);
    expect(html).toContain(
      "<h2>What it costs</h2>\n<p>The visit and fourteen pigs.</p>\n<p>Without &lt;b&gt;tests&lt;/b&gt;.</p>",
    );
  });

  it("has its own templates in place of sections, of one that another file helps to make", () => {
    const { code, html } = report("  templates: {samples: report/samples.liquid}\n", "--for", "colleague");
    expect(code).toBe(0);
    expect(html).toMatch(
      /<section id="samples"><h2>Samples and results<\/h2>\n<div class="made"><ul><li>[^<]+<\/li>/,
    );
  });

  it("is the same report in JSON whatever the practice puts around it", () => {
    const json = (settings: string): unknown => {
      writeFileSync(join(cwd, "carcase.yaml"), `format: 1\n${settings}`);
      return JSON.parse(carcase(["report", "alder-farm", "--format", "json"], { cwd }).out);
    };
    expect(json("report: {letterhead: {name: P}, templates: {samples: report/samples.liquid}}\n")).toEqual(
      json(""),
    );
  });

  every(
    "whose files cannot be used is not written, and says where and why",
    [
      [
        "  letterhead: {name: P, logo: gone.png}",
        "carcase.yaml:3:31: not used: gone.png: there is no such file; ",
      ],
      [
        "  letterhead: {name: P, logo: report/text.png}",
        "carcase.yaml:3:31: not used: report/text.png is no picture in",
      ],
      [
        "  extra: {a: {title: A, file: gone.txt}}",
        "carcase.yaml:3:31: not used: gone.txt: there is no such file; ",
      ],
      [
        "  extra: {a: {title: A, file: ../outside.txt}}",
        "carcase.yaml:3:31: not used: ../outside.txt lies outside the folder of this file, and is not read.",
      ],
      ["  extra: {a: {title: A, file: report/logo.png}}", "report/logo.png: not read: it is not a text file"],
      ["  extra: {a: {title: A, file: report}}", "carcase.yaml:3:31: not used: report: it is a folder; "],
      [
        "  templates: {samples: gone.liquid}",
        "carcase.yaml:3:24: not used: gone.liquid: there is no such file; ",
      ],
      [
        "  templates: {samples: gone/a.liquid}",
        "carcase.yaml:3:24: not used: gone/a.liquid: there is no such file; ",
      ],
      [
        "  templates: {samples: ../outside.liquid}",
        "carcase.yaml:3:24: not used: ../outside.liquid lies outside the folder",
      ],
      [
        "  templates: {samples: report/wrong.liquid}",
        'report/wrong.liquid:2:4: not used: there is no name "farmer". Did you mean farm? There are made_by, ',
      ],
      [
        "  extra: {a: {title: A, file: report/wrong.liquid}}",
        'report/wrong.liquid:2:4: not used: there is no name "farmer".',
      ],
    ] as const,
    ([settings, why]) => {
      const { code, err, html } = report(`${settings}\n`);
      expect([code, html]).toEqual([2, ""]);
      expect(err.slice(0, why.length)).toBe(why);
    },
    ([settings]) => settings,
  );

  every(
    "whose settings name what is not there says what there is",
    [
      [
        "  order: {farm: [herds]}",
        'carcase.yaml:3:18: not read: report.order.farm[0]: there is no section "herds". Did you mean herd?',
      ],
      [
        "  order: {farm: [answer]}",
        "carcase.yaml:3:18: not read: report.order.farm[0]: the answer comes first always; take it out here.",
      ],
      ["  order: {farmer: [herd]}", "carcase.yaml:3:11: not read: "],
      [
        "  extra: {herd: {title: A, file: a.txt}}",
        "carcase.yaml:3:17: not read: report.extra.herd: herd is a section that ships; give yours another name.",
      ],
      [
        "  templates: {cautions: report/samples.liquid}",
        "carcase.yaml:3:25: not read: report.templates.cautions: cautions stay as they are; say yours in a section under extra.",
      ],
      [
        "  templates: {hurd: report/samples.liquid}",
        'carcase.yaml:3:21: not read: report.templates.hurd: there is no section that ships "hurd". Did you mean herd?',
      ],
      [
        "  templates: {herd: report/herd.html}",
        "carcase.yaml:3:21: not read: report.templates.herd: the name of a template ends in .liquid.",
      ],
    ] as const,
    ([settings, why]) => {
      const { code, err } = report(`${settings}\n`);
      expect(code).toBe(2);
      expect(err.slice(0, why.length)).toBe(why);
    },
    ([settings]) => settings,
  );

  it("names sections as the page does", () => {
    const { sections } = report("  order: {}\n", "--for", "colleague");
    expect(sections.filter((id) => id !== "answer" && !reportSections.some((name) => name === id))).toEqual(
      [],
    );
  });
});
