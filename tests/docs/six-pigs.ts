/** The visit of the guide: four pigs that sneeze and two healthy ones, as somebody types it into the files that `carcase new` wrote. */

/** A place in a file, named by the text before it, which stands there once; and what is typed there. */
export type Typed = readonly [after: string, text: string];

export const command = [
  ...["new", "alder-farm/2026-03-14", "--group", "nursery-2", "--head", "420", "--age", "58 d"],
  ...["--pigs", "4", "--signs", "sneezing", "--healthy", "2", "--method", "barbiturate"],
  ...["--veterinarian", "H. Marlow", "--complaint", "sneezing since weaning"],
];

const look: readonly Typed[] = [
  ...["vesicles", "skin_haemorrhage", "throat_swelling", "bloody_orifices"],
  ...["dark_spleen", "bloody_nodes", "petechiae", "button_ulcers", "bloody_fluid", "pale_heart"],
].map((sign) => [`${sign}: `, "none"]);

interface Pig {
  readonly tag: string;
  readonly sex: string;
  readonly weight: string;
  readonly died: string;
  readonly opened: string;
}

const eachPig = ({ tag, sex, weight, died, opened }: Pig): readonly Typed[] => [
  ["tag: ", `"${tag}"`],
  ["sex: ", sex],
  ["weight: ", weight],
  ["treated: ", "no"],
  ["death: {at: ", `2026-03-14T${died}`],
  ["opened: {at: ", `2026-03-14T${opened}`],
  ["state: ", "fresh"],
  ...look,
  ["\nnormal:", " [external, lymphoid, cardiovascular, stomach, intestine, liver_pancreas, serosa, urinary]"],
];

interface Snout {
  readonly onset: string;
  readonly left: readonly [dorsal: number, ventral: number];
  readonly right: readonly [dorsal: number, ventral: number];
  readonly septum: string;
  readonly nares: string;
}

const sneezer = (pig: Pig, { onset, left, right, septum, nares }: Snout): readonly Typed[] => [
  ...eachPig(pig),
  ["onset: ", onset],
  ["typical: ", "yes"],
  ["nares:", ` ${nares}`],
  ["left: {dorsal: ", `${left[0]}`],
  [`left: {dorsal: ${left[0]}, ventral: `, `${left[1]}`],
  ["right: {dorsal: ", `${right[0]}`],
  [`right: {dorsal: ${right[0]}, ventral: `, `${right[1]}`],
  ["septum:", ` ${septum}`],
  [`septum: ${septum}\n  rest:`, " normal"],
];

const healthy = (pig: Pig): readonly Typed[] => [
  ...eachPig(pig),
  ["turbinates: ", "normal"],
  ["rest: ", "normal"],
];

const discharge =
  "[{process: discharge, distribution: bilateral, volume: 1 ml, colour: yellow, exudate: mucopurulent}]";
const [female, castrate] = ["female", "castrate"];

/** What is typed between two runs of the linter, by file. */
export const rounds: readonly Readonly<Record<string, readonly Typed[]>>[] = [
  {
    "visit.yaml": [
      ["at_risk: ", "248"],
      ["affected: ", "71"],
      ["dead: ", "5"],
      ["onset: ", "2026-03-01"],
      ["environment:", " [{group: nursery-2, ammonia: 28 ppm}]"],
      ["treatments:", " [none]"],
      ["vaccinations:", " [none]"],
      ["ambient: ", "11 °C"],
      ["section: ", "premolar-1"],
    ],
    "pig-01.yaml": sneezer(
      { tag: "4127", sex: female, weight: "11.6 kg", died: "08:50", opened: "09:15" },
      { onset: "40 h", left: [1, 3], right: [1, 2], septum: "slight", nares: discharge },
    ),
    "pig-02.yaml": sneezer(
      { tag: "4131", sex: castrate, weight: "12.4 kg", died: "09:30", opened: "09:50" },
      { onset: "36 h", left: [1, 2], right: [1, 1], septum: "straight", nares: discharge },
    ),
    "pig-03.yaml": sneezer(
      { tag: "4140", sex: female, weight: "10.9 kg", died: "10:10", opened: "10:30" },
      { onset: "2 d", left: [0, 1], right: [0, 1], septum: "straight", nares: "normal" },
    ),
    "pig-04.yaml": sneezer(
      { tag: "4102", sex: castrate, weight: "13.0 kg", died: "10:50", opened: "11:05" },
      { onset: "36 h", left: [1, 3], right: [2, 2], septum: "slight", nares: discharge },
    ),
    "pig-05.yaml": healthy({ tag: "4155", sex: female, weight: "14.8 kg", died: "11:30", opened: "11:45" }),
    "pig-06.yaml": healthy({ tag: "4160", sex: castrate, weight: "15.2 kg", died: "12:10", opened: "12:25" }),
  },
  {
    "pig-01.yaml": [["septum: slight", "\n    loss_looks: undecided"]],
    "pig-02.yaml": [["septum: straight", "\n    loss_looks: undecided"]],
    "pig-04.yaml": [["septum: slight", "\n    loss_looks: undecided"]],
  },
];
