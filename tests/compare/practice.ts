/** Many farms of one practice for the tests; all invented. */
import { farm, visit } from "../herd/archive.ts";
import { affected, caseOf, type Pig } from "./farm.ts";

type Visits = Readonly<Record<string, readonly Pig[]>>;

/** @param farms pigs by date of the visit, by farm @param head pigs of nursery-1, in every farm */
export const practiceOf = (farms: Readonly<Record<string, Visits>>, head = 300) =>
  Object.fromEntries(
    Object.entries(farms).flatMap(([name, visits]): [string, object][] => [
      [`practice/${name}/farm.yaml`, { ...farm(name), groups: { "nursery-1": { head } } }],
      ...Object.entries(visits).flatMap(([date, pigs]): [string, object][] => [
        [`practice/${name}/${date}/visit.yaml`, visit(`${name}-${date}`, date)],
        ...pigs.map((pig, at): [string, object] => [`practice/${name}/${date}/pig-${at}.yaml`, caseOf(pig)]),
      ]),
    ]),
  );

/** Pigs of pens: so many affected of so many in each. */
export const inPens = (...pens: readonly (readonly [affected: number, of: number])[]): Pig[] =>
  pens.flatMap(([yes, of], pen) => affected(yes, of, { pen: pen + 1 }));

/** The practice of docs/compare.md: birch stands out, oak shares pens, rowan has ill pigs only. */
export const examplePractice = {
  alder: { "2026-03-02": affected(20, 30), "2026-09-01": affected(4, 30) },
  birch: { "2026-08-24": affected(24, 30) },
  cedar: { "2026-09-03": affected(6, 30) },
  elm: { "2026-06-11": affected(3, 20) },
  hazel: { "2026-09-08": affected(2, 25) },
  larch: { "2026-07-20": affected(5, 30), "2026-09-21": affected(2, 3, { basis: "clinical" }) },
  maple: { "2026-08-12": affected(0, 12) },
  oak: { "2026-08-17": inPens([4, 5], [1, 5], [0, 5], [3, 5], [0, 5], [1, 5]) },
  rowan: { "2026-07-02": affected(4, 6, { basis: "clinical" }) },
};
