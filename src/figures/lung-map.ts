/** The lungs from above: of one pig, each lobe shaded by its per cent, or of a group, by how often it is affected. */
import { lobes as shapes } from "../drawings/lung-shapes.ts";
import { type Lobe, lobeNames, lungs } from "../drawings/lungs.ts";
import { outline, placed } from "../drawings/svg.ts";
import { type Drawing, fitted, hinted, label } from "./canvas.ts";
import { legend } from "./legend.ts";
import { inkOn, ramp, stepOfShare } from "./ramp.ts";

interface LobeLook {
  readonly lobe: Lobe;
  /** Between 0 and 1; undefined where nobody looked. */
  readonly share: number | undefined;
  /** What stands in the lobe. */
  readonly shown: string;
  /** The whole, in words. */
  readonly hint: string;
}

/** Where adhesions are: the front and lower parts, or above and behind, a little or a third of the lobe and more. */
export type PleurisyPlace = "cranioventral" | "dorsocaudal-focal" | "dorsocaudal-extensive";

export interface LungMap {
  readonly id: string;
  readonly lobes: readonly LobeLook[];
  /** By side; nothing where there is none or nobody looked. */
  readonly pleurisy?: Readonly<Record<"left" | "right", readonly PleurisyPlace[]>>;
  readonly words: {
    readonly left: string;
    readonly right: string;
    /** What the five steps stand for. */
    readonly steps: readonly string[];
    readonly pleurisy?: string;
  };
}

const wide = 360;

export function lungMap({ id, lobes, pleurisy, words }: LungMap): Drawing {
  const hatch = `${id}-hatch`;
  const seen = new Map(lobes.map((look) => [look.lobe, look]));
  const shaded = lobeNames.map((lobe) => {
    const look = seen.get(lobe);
    const step = look?.share === undefined ? undefined : stepOfShare(look.share);
    const { points, at } = shapes[lobe];
    const fill =
      step === undefined
        ? 'class="blank"'
        : `class="lobe${lobe === "accessory" ? " dashed" : ""}" style="fill:${ramp[step]}"`;
    const shape = `<path d="${outline(points)}" ${fill}/>`;
    return hinted(
      [
        shape,
        label(at[0], at[1] + 5, look?.shown ?? "", {
          anchor: "middle",
          class: "strong",
          fill: inkOn(step ?? 0),
        }),
      ].join(""),
      look?.hint ?? lobe,
    );
  });
  // The windpipe and its bronchi as everywhere; the lobes of that drawing lie below ours.
  const body = [
    `<defs><pattern id="${hatch}" width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><path d="M0 0V7" class="hatch"/></pattern></defs>`,
    lungs(() => "air"),
    ...shaded,
    ...(pleurisy === undefined
      ? []
      : (["left", "right"] as const).flatMap((side) =>
          pleurisy[side]
            .flatMap((place) => patches[place](side))
            .map((d) => `<path d="${d}" fill="url(#${hatch})"/>`),
        )),
    label(-90, 456, words.left, { anchor: "middle", class: "soft" }),
    label(94, 456, words.right, { anchor: "middle", class: "soft" }),
  ].join("\n");
  const below = legend(words.steps, wide - 20);
  const key =
    pleurisy === undefined || words.pleurisy === undefined
      ? ""
      : `<g transform="translate(10 ${474 + below.height})"><rect width="16" height="12" fill="url(#${hatch})" stroke="#4f463e"/>${label(22, 10, fitted(words.pleurisy, wide - 44, 11), { class: "small" })}</g>`;
  return {
    width: wide,
    height: 474 + below.height + (key === "" ? 0 : 20),
    body: [placed(body, wide / 2, 0), placed(below.body, 10, 470), key].join("\n"),
  };
}

const mirrored = (side: "left" | "right", lobe: "cranial" | "middle" | "caudal"): string =>
  outline(shapes[`${side}_${lobe}`].points);

/** A band of the caudal lobe behind and towards the spine: to a third of its length, or over all of it. */
const behind = (side: "left" | "right", from: number): string => {
  const turn = side === "left" ? -1 : 1;
  return outline([
    [turn * 30, from],
    [turn * 120, from + 26],
    [turn * 154, 400],
    [turn * 150, 424],
    [turn * 110, 412],
    [turn * 60, 372],
    [turn * 24, from + 20],
  ]);
};

const patches: Readonly<Record<PleurisyPlace, (side: "left" | "right") => string[]>> = {
  cranioventral: (side) => [mirrored(side, "cranial"), mirrored(side, "middle")],
  "dorsocaudal-focal": (side) => [behind(side, 350)],
  "dorsocaudal-extensive": (side) => [behind(side, 260)],
};
