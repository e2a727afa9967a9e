/** Each figure: well-formed, the same bytes again, said in words, safe with any text, and nothing over anything else in a browser. */
import { existsSync } from "node:fs";
import { type Browser, chromium, type Page } from "playwright-core";
import { SaxesParser } from "saxes";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { figure } from "../../src/figures/index.ts";
import { figures } from "./made.ts";

const svgOf = (made: ReturnType<typeof figures>): [string, string][] =>
  Object.entries(made).map(([id, drawing]) => [
    id,
    figure({ id, title: `Figure ${id}`, description: `What ${id} shows.` }, drawing),
  ]);
const all = svgOf(figures());

describe.each(all)("%s", (id, svg) => {
  it("is well-formed, with a title and a description that belong to it", () => {
    const names: string[] = [];
    const parser = new SaxesParser();
    parser.on("error", (error) => {
      throw error;
    });
    parser.on("opentag", ({ name, attributes }) => {
      if (attributes.id !== undefined) names.push(`${name} ${attributes.id}`);
    });
    parser.write(svg).close();
    expect(names.slice(0, 2)).toEqual([`title ${id}-title`, `desc ${id}-desc`]);
    expect(svg).not.toMatch(/NaN|undefined|Infinity/);
  });

  it("comes out the same again", () => {
    expect(new Map(svgOf(figures())).get(id)).toBe(svg);
  });
});

const hostile = `</text><script>alert(1)</script>"'&<![CDATA[ ]]> \u202e${"W".repeat(400)}`;

it("shows any text, and obeys none", () => {
  for (const [id, svg] of svgOf(figures(() => hostile))) {
    expect(svg, id).not.toMatch(/<script|<!\[CDATA|\u202e/);
    const parser = new SaxesParser();
    parser.on("error", (error) => {
      throw error;
    });
    parser.write(svg).close();
  }
});

const browserAt = ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"].find(
  existsSync,
);

describe.skipIf(browserAt === undefined)("in a browser", () => {
  let browser: Browser | undefined;
  let page: Page | undefined;
  beforeAll(async () => {
    browser = await chromium.launch({
      ...(browserAt && { executablePath: browserAt }),
      args: ["--no-sandbox"],
    });
    page = await browser.newPage({ viewport: { width: 700, height: 900 } });
  });
  afterAll(async () => browser?.close());

  const faultsOf = async (svg: string): Promise<readonly string[]> => {
    await page?.setContent(`<body style="margin:0;width:680px">${svg}</body>`);
    return (
      (await page?.evaluate<string[]>(`(() => {
        const faults = [];
        const edge = document.querySelector("svg").getBoundingClientRect();
        const texts = [...document.querySelectorAll("svg text")].map((of) => ({ of, box: of.getBoundingClientRect(), turned: of.hasAttribute("transform") }));
        for (const [at, { of, box, turned }] of texts.entries()) {
          if (box.left < edge.left - 1 || box.right > edge.right + 1 || box.top < edge.top - 1 || box.bottom > edge.bottom + 1) faults.push(of.textContent.slice(0, 30) + " leaves the figure");
          for (const other of texts.slice(at + 1)) {
            const across = Math.min(box.right, other.box.right) - Math.max(box.left, other.box.left);
            const down = Math.min(box.bottom, other.box.bottom) - Math.max(box.top, other.box.top);
            if (!turned && !other.turned && across > 1 && down > 3) faults.push(of.textContent.slice(0, 30) + " lies over " + other.of.textContent.slice(0, 30));
          }
        }
        return faults;
      })()`)) ?? ["no browser"]
    );
  };

  it.each(all)("%s has its words inside, and none over another", async (_, svg) => {
    expect(await faultsOf(svg)).toEqual([]);
  });

  it.each(svgOf(figures((name) => `${name} ${"Wm".repeat(60)}`)))(
    "%s keeps to that with long names",
    async (_, svg) => {
      expect(await faultsOf(svg)).toEqual([]);
    },
  );
});
