/** The lungs from above, head up, each lobe in its own look; named in the order of the data. */
import { lobes, windpipe } from "./lung-shapes.ts";
import { curve, line, outline, path } from "./svg.ts";

export type Lobe = keyof typeof lobes;
export const lobeNames = Object.keys(lobes) as Lobe[];

/** The lungs with each lobe in its look; x from the midline, y from 14 to 430. */
export const lungs = (look: (lobe: Lobe) => string): string =>
  [
    ...windpipe.map((points) => path(curve(points), "line")),
    ...[24, 36, 48, 60, 72, 84].map((y) => line(-8, y, 8, y)),
    ...lobeNames.map((lobe) =>
      path(outline(lobes[lobe].points), `${look(lobe)}${lobe === "accessory" ? " dashed" : ""}`),
    ),
  ].join("\n");
