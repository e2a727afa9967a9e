/** Photographs in reports: small, upright, without what the camera wrote of place and device; or a message, and nothing written. */
import { existsSync, mkdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import exifr from "exifr";
import { beforeAll, beforeEach, describe, expect, it } from "vitest";
import { put, temporaryFolder } from "../cases/temporary.ts";
import { carcase, wide } from "../end-to-end/run.ts";
import { every } from "../every.ts";

const sharp = await import("sharp").then(
  (loaded) => loaded.default,
  () => undefined,
);

const lung = (number: number): string => `{file: photos/lung-${number}.jpg, shows: respiratory.lungs}`;
const pig = (photos: string): string =>
  `format: 1\ncase: v-1-01\nprotocol: full\npig: {age: 50 d}\nselection: {basis: clinical, signs: [cough]}\nphotos: ${photos}\n`;

describe.skipIf(sharp === undefined)("photographs in a report", () => {
  const around = temporaryFolder();
  const cwd = join(around, "repository");
  let photo = Buffer.alloc(0);
  let png = Buffer.alloc(0);

  beforeAll(async () => {
    mkdirSync(join(cwd, ".git"), { recursive: true });
    if (sharp === undefined) return;
    // Held on its side, as cameras do: what lies left in the file is above.
    const half = { width: 1000, height: 1000, channels: 3 as const };
    photo = await sharp({ create: { ...half, width: 2000, background: "#fff" } })
      .composite([{ input: { create: { ...half, background: "#000" } }, left: 0, top: 0 }])
      .withExif({
        IFD0: { Make: "Maker", Model: "Model 7", Orientation: "6" },
        IFD2: { DateTimeOriginal: "2026:03:14 10:20:00", BodySerialNumber: "12345" },
        IFD3: {
          GPSLatitudeRef: "N",
          GPSLatitude: "51/1 30/1 0/1",
          GPSLongitudeRef: "E",
          GPSLongitude: "7/1 0/1 0/1",
        },
      })
      .withMetadata({ orientation: 6 })
      .jpeg()
      .toBuffer();
    png = await sharp({ create: { ...half, width: 40, height: 20, background: "#a00" } })
      .png()
      .toBuffer();
  });

  beforeEach(() => {
    rmSync(join(cwd, "r.html"), { force: true });
    put(cwd, {
      "v/photos/lung-1.jpg": photo,
      "v/photos/lung-2.jpg": png,
      "v/photos/none.jpg": "this is text\n",
      "v/photos/cut.jpg": photo.subarray(0, 3000),
      "v/photos/new.heic": Buffer.from("\0\0\0\x18ftypheic\0\0\0\0", "latin1"),
      "v/photos/drawing.jpg": '<svg xmlns="http://www.w3.org/2000/svg"/>',
      "../outside.jpg": photo,
      "v/visit.yaml": "format: 1\nvisit: v-1\ndate: 2026-03-14\ncases: [v-1-01]\n",
    });
  });

  const report = (photos: string, ...more: string[]) => {
    writeFileSync(join(cwd, "v/pig-01.yaml"), pig(photos));
    const ran = carcase(["report", "v", "-o", "r.html", ...more], { cwd, env: wide });
    const html = existsSync(join(cwd, "r.html")) ? readFileSync(join(cwd, "r.html"), "utf8") : "";
    const pictures = [...html.matchAll(/src="data:image\/jpeg;base64,([^"]+)"/g)].map(([, data = ""]) =>
      Buffer.from(data, "base64"),
    );
    return { ...ran, html, pictures };
  };

  it("are small, upright, and say nothing of place, device and time", async () => {
    expect(await exifr.gps(photo)).toMatchObject({ latitude: 51.5, longitude: 7 });
    expect(await exifr.parse(photo)).toMatchObject({ Make: "Maker", Model: "Model 7" });
    const { code, html, pictures } = report(
      "[{file: photos/lung-1.jpg, shows: respiratory.lungs, note: grey and firm}]",
    );
    expect(code).toBe(0);
    expect(pictures).toHaveLength(1);
    const [made = Buffer.alloc(0)] = pictures;
    expect(await exifr.parse(made, true)).toBeUndefined();
    for (const word of ["Maker", "Model 7", "12345", "GPS", "Exif"])
      expect(made.includes(word), word).toBe(false);
    expect(await sharp?.(made).metadata()).toMatchObject({ format: "jpeg", width: 600, height: 1200 });
    const grey = await sharp?.(made).greyscale().raw().toBuffer();
    expect(grey?.[600 * 100]).toBeLessThan(20);
    expect(grey?.[600 * 1100]).toBeGreaterThan(235);
    expect(html).toContain('width="600" height="1200" alt="v-1-01, Lungs: grey and firm"');
  });

  it("give the same bytes again, and a JPEG of any picture", async () => {
    const once = report(`[${lung(1)}, ${lung(2)}]`);
    expect(once.pictures).toHaveLength(2);
    expect(report(`[${lung(1)}, ${lung(2)}]`).html).toBe(once.html);
  });

  it("are linked from where the report lies, when it is asked", () => {
    const { code, html, err } = report(`[${lung(1)}]`, "--photos", "link");
    expect([code, err]).toEqual([0, ""]);
    expect(html).toContain('<a href="v/photos/lung-1.jpg">v-1-01, Lungs</a>');
    expect(html).toContain("The photographs are not in this file");
    expect(html).not.toContain("data:image");
  });

  it("are linked with a word of it where nothing can make them small", () => {
    put(cwd, {
      "without.cjs":
        'const Module = require("node:module"); const { _resolveFilename: old } = Module; Module._resolveFilename = (name, ...more) => { if (name === "sharp") throw Object.assign(new Error("no"), { code: "MODULE_NOT_FOUND" }); return old(name, ...more); };',
    });
    writeFileSync(join(cwd, "v/pig-01.yaml"), pig(`[${lung(1)}]`));
    const env = { ...wide, NODE_OPTIONS: `--require ${join(cwd, "without.cjs")}` };
    const { code, out, err } = carcase(["report", "v"], { cwd, env });
    expect(code).toBe(0);
    expect(err).toBe(
      "carcase: photographs are linked and not put in, as the package sharp is not there: npm install --global sharp\n",
    );
    expect(out).toContain('<a href="v/photos/lung-1.jpg">');
  });

  it("are four for the farm, and all for the colleague", () => {
    const all = `[${[1, 2, 3, 4, 5, 6].map(lung).join(", ")}]`;
    for (const number of [3, 4, 5, 6])
      writeFileSync(join(cwd, `v/photos/lung-${number}.jpg`), Buffer.concat([png, Buffer.from([number])]));
    const farm = report(all);
    expect(farm.pictures).toHaveLength(4);
    expect(farm.html).toContain("4 of 6 photographs that lie beside the cases.");
    expect(report(all, "--for", "colleague").pictures).toHaveLength(6);
    expect(report(all, "--for", "laboratory").pictures).toHaveLength(6);
  });

  it("stand in the JSON by path, caption and digest, without their pixels", () => {
    const { out } = (() => {
      writeFileSync(join(cwd, "v/pig-01.yaml"), pig("[{file: photos/lung-1.jpg, note: firm}]"));
      return carcase(["report", "v", "--format", "json"], { cwd });
    })();
    expect(JSON.parse(out).pigs[0].photographs).toEqual([
      {
        file: "v/photos/lung-1.jpg",
        shows: "respiratory.lungs",
        note: "firm",
        sha256: expect.stringMatching(/^[0-9a-f]{64}$/),
      },
    ]);
    expect(out.length).toBeLessThan(20_000);
  });

  every(
    "that are none are told at their line, and nothing is written",
    [
      ["none.jpg", "it is no photograph in JPEG, PNG or WebP, whatever its name says"],
      ["drawing.jpg", "it is no photograph in JPEG, PNG or WebP, whatever its name says"],
      ["new.heic", "it is a HEIC picture, which browsers do not show; export it as JPEG"],
      ["cut.jpg", "it is no whole picture; export it anew as JPEG"],
      ["gone.jpg", "there is no such file"],
      ["../../../outside.jpg", "it lies outside the repository, and is not shown"],
      ["led.jpg", "it lies outside the repository, and is not shown"],
    ] as const,
    ([file, why]) => {
      if (file === "led.jpg") symlinkSync(join(around, "outside.jpg"), join(cwd, "v/photos/led.jpg"));
      const { code, err, html } = report(`[photos/${file}]`);
      expect([code, html]).toEqual([2, ""]);
      expect(err).toContain(`v/pig-01.yaml:6:10: not used: photos/${file}: ${why}\n`);
    },
    ([file]) => file,
  );

  it("must lie beside the case", () => {
    const { code, err } = report("['https://example.org/a.jpg']");
    expect(code).toBe(2);
    expect(err).toContain("write its path from the folder of the case, such as photos/03-lungs.jpg");
  });
});
