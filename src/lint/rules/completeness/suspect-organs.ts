/** Organs that the signs or lesions of a pig point to, and that were left unexamined, whatever the reason given. */
import { type Case, formatPath, isWeaned, quantity } from "../../../cases/index.ts";
import { deathMethods, organById, organs, type PlacedOrgan, plausible } from "../../../knowledge/index.ts";
import {
  blankSystems,
  isLeftOut,
  isSentClosed,
  type LesionQuestion,
  lesions,
  type PlacedFinding,
  signFamiliesOf,
} from "../../../record/index.ts";
import { listing } from "../../../words/listing.ts";
import { type CaseRule, fromMemory, practice, type RuleRow, verified } from "../../rule.ts";

interface SuspectOrgans extends RuleRow {
  readonly organs: readonly string[];
  /** What points to them, as in `not examined in a pig with fever`; undefined where nothing does. */
  pointer(one: Case): string | undefined;
  readonly advice: string;
}

const rows: readonly SuspectOrgans[] = [
  {
    id: "pars-oesophagea-unseen",
    level: "warning",
    summary: "The pars oesophagea of a pale pig, and of a grown pig found dead, is examined.",
    protects:
      "A bleeding ulcer kills without warning and is found only when the stomach is opened: of 146 finishers that died in two weeks, 39 had died of one.",
    lookAlike:
      "A stomach that had burst, rotted or gone could not be judged: not_assessable with the cause is passed, and only not_examined is asked about.",
    source: verified(
      "gastric ulcers in 27 % of dead finishers in each of two weeks of necropsies (abstract; Melnichouk 2002, Canadian Veterinary Journal 43:223, author, year and page from memory)",
    ),
    bad: {
      case: "selection: {signs: [pallor]}\nlocomotor: {bone_marrow: normal}\nstomach: {pars_oesophagea: {not_examined: stomach left closed}}",
    },
    good: { case: "selection: {signs: [pallor]}\nlocomotor: {bone_marrow: normal}" },
    organs: ["stomach.pars_oesophagea"],
    pointer(one) {
      if (one.ageClass === undefined || !isWeaned(one.ageClass)) return undefined;
      if (isPale(one)) return "in a pig that was pale";
      return isFoundDead(one) && one.ageClass !== "weaner" ? "in a pig that was found dead" : undefined;
    },
    advice:
      "Open the stomach along the greater curvature, wash it and look; if it is gone, say so in the diagnosis.",
  },
  {
    id: "mesenteric-root-unpalpated",
    level: "warning",
    summary: "Where the intestine is bloody or twisted, the mesenteric root is palpated.",
    protects:
      "Only the root of the mesentery tells a twisted gut from a haemorrhagic bowel, and it must be felt before the gut is moved.",
    lookAlike:
      "A rectum that prolapsed and bled points to no root, and is passed; gut that was torn out or rotten is not_assessable, and passed too.",
    source: verified("Straw et al. 2002, J Swine Health Prod 10:75-79"),
    bad: {
      case: "intestine: {jejunum: [{process: haemorrhage, distribution: diffuse, extent: 90 %, colour: dark-red}], mesentery: {not_examined: gut already out}}",
    },
    good: {
      case: "intestine: {jejunum: [{process: haemorrhage, distribution: diffuse, extent: 90 %, colour: dark-red}], mesentery: normal}",
    },
    organs: ["intestine.mesentery"],
    pointer: (one) =>
      shown(one, {
        processes: ["haemorrhage", "congestion", "torsion", "displacement", "infarct"],
        organs: organs
          .filter(({ system, key }) => system === "intestine" && key !== "rectum")
          .map(({ id }) => id),
      }),
    advice:
      "Torsion cannot be ruled out for this pig: say so in the diagnosis, and in the next one palpate the root before the gut is moved.",
  },
  {
    id: "fever-nodes-unseen",
    level: "warning",
    summary:
      "The spleen and the gastrohepatic and renal nodes of a pig with fever or haemorrhages are examined.",
    protects: "These are the organs in which swine fevers show first, and the ones most often left out.",
    lookAlike:
      "A focal bruise of the skin points to no node; blood from the bolt, the shot or the stick neither, with certainty: artefact. Nodes that had rotted are not_assessable.",
    source: fromMemory("organs named for the suspicion of a swine fever: Commission Decision 2003/422/EC"),
    bad: { case: "pig: {temperature: 41.2 °C}\nlymphoid: {renal_nodes: {not_examined: not found}}" },
    good: { case: "pig: {temperature: 41.2 °C}\nlymphoid: {renal_nodes: normal}" },
    organs: ["lymphoid.spleen", "lymphoid.gastrohepatic_nodes", "lymphoid.renal_nodes"],
    pointer(one) {
      const temperature = quantity("temperature", one.record.pig?.temperature);
      if (one.signs.includes("fever") || (temperature !== undefined && temperature >= plausible.fever))
        return "in a pig with fever";
      return shown(
        one,
        {
          processes: ["haemorrhage", "petechiae"],
          organs: ["lymphoid", "urinary", "external.skin", "cardiovascular", "serosa", "respiratory.larynx"],
        },
        // One bruise of the skin is a blow.
        ({ organ, finding }) => organ.id !== "external.skin" || finding.distribution !== "focal",
      );
    },
    advice: "Look at it before the carcass goes; swine fevers show here.",
  },
  {
    id: "nasal-signs-turbinates-unseen",
    level: "warning",
    summary: "When a pig sneezes or has a crooked snout, the snout is sawn and the turbinates are examined.",
    protects: "The complaint is in the nose; without a section the necropsy cannot answer it.",
    lookAlike:
      "A head kept whole for the laboratory: accept the finding with that reason; a snout that was crushed or taken by scavengers is not_assessable, and passed.",
    source: practice("common practice of necropsy: the organ of the complaint is examined"),
    bad: {
      case: "respiratory: {turbinates: {state: , section: , left: , right: , septum: , grades: , loss_looks: , not_examined: no saw}}",
    },
    good: {
      case: "selection: {signs: [cough]}\nrespiratory: {turbinates: {state: , section: , left: , right: , septum: , grades: , loss_looks: , not_examined: no saw}}",
    },
    organs: ["respiratory.turbinates"],
    pointer(one) {
      if (signFamiliesOf(one).includes("nasal")) return "in a pig with nasal signs";
      const crooked = lesions(one, { processes: ["deviation", "malformation"], organs: ["external.snout"] });
      return crooked.length > 0 ? "in a pig with a crooked snout" : undefined;
    },
    advice:
      "Take the head with you and saw across behind the first upper premolar, at the corner of the mouth.",
  },
  {
    id: "valves-unseen",
    level: "warning",
    summary:
      "In a pig with infarcts in kidney, spleen or lung, and in an adult found dead, the heart is opened and the valves are examined.",
    protects: "Endocarditis sheds the emboli; the infarcts alone do not show where they came from.",
    lookAlike:
      "A heart that was sent unopened: accept the finding, and say who will open it; one that was torn, rotten or gone is not_assessable, and passed.",
    source: fromMemory("endocarditis and its emboli, standard texts"),
    bad: {
      case: "urinary: {kidneys: {left: [{process: infarct, distribution: multifocal, number: 3, size: 8 mm}], right: normal}}\ncardiovascular: {valves: {not_examined: heart not cut}}",
    },
    good: {
      case: "urinary: {kidneys: {left: [{process: infarct, distribution: multifocal, number: 3, size: 8 mm}], right: normal}}",
    },
    organs: ["cardiovascular.valves"],
    pointer: (one) =>
      shown(one, {
        processes: ["infarct", "thrombus"],
        organs: ["urinary.kidneys", "lymphoid.spleen", "respiratory.lungs", "nervous.brain"],
      }) ?? (one.ageClass === "adult" && isFoundDead(one) ? "in an adult found dead" : undefined),
    advice: "Open the heart along the flow of the blood and look at all four valves.",
  },
  {
    id: "brain-unseen",
    level: "warning",
    summary:
      "The brain of a pig with nervous signs or sudden death is examined, whatever the reason for leaving it.",
    protects: "The disease may sit where nobody looked; no other organ can answer for the brain.",
    lookAlike:
      "A head that went whole to the laboratory, listed under samples with brain: {taken: left-in-skull}, is passed; so is a brain that bolt or shot destroyed.",
    source: verified("Schyns 2022, Vet Sci 9:341 (meningitis often invisible from outside)"),
    bad: {
      case: "selection: {signs: [convulsions]}\nnervous: {meninges: {not_examined: no saw}, brain: {not_examined: no saw}, middle_ears: normal, spinal_cord: normal}\nendocrine: {pituitary: normal}",
    },
    good: {
      case: "selection: {signs: [convulsions]}\nnervous: {brain: normal, middle_ears: normal, spinal_cord: normal}\nendocrine: {pituitary: normal}",
    },
    organs: ["nervous.brain"],
    pointer(one) {
      const family = signFamiliesOf(one).find((id) => id === "nervous" || id === "sudden-death");
      const method = one.record.death?.method;
      const isDestroyed = method !== undefined && deathMethods[method]?.brain === "destroyed";
      if (family === undefined || isDestroyed) return undefined;
      return family === "nervous" ? "in a pig with nervous signs" : "in a pig that died suddenly";
    },
    advice: "Open the skull, or send the whole head chilled and say so here and in the diagnosis.",
  },
  {
    id: "polyserositis-joints-unseen",
    level: "warning",
    summary: "Where two serous membranes are covered with fibrin, the joints are opened.",
    protects:
      "Glässer's disease, streptococci and mycoplasmas go to the joints as well; without them the set for the laboratory lacks its best site.",
    lookAlike:
      "Fibrin on one serous membrane alone, as over a pneumonia; old adhesions, which are another process; pleura and pericardium of which one is an artefact.",
    source: practice(
      "common practice at diagnostic laboratories: serosae, joints and meninges of a pig with polyserositis",
    ),
    bad: {
      case: "serosa: {peritoneum: [{process: fibrin, distribution: diffuse, severity: mild}]}\ncardiovascular: {pericardium: [{process: fibrin, distribution: diffuse, severity: mild}]}\nsamples: \nlocomotor: {joints: {state: , opened: , not_examined: no time}}",
    },
    good: {
      case: "serosa: {peritoneum: [{process: fibrin, distribution: diffuse, severity: mild}]}\ncardiovascular: {pericardium: [{process: fibrin, distribution: diffuse, severity: mild}]}\nsamples: \nlocomotor: {joints: {state: normal, opened: [left-hock, right-stifle]}}",
    },
    organs: ["locomotor.joints"],
    pointer(one) {
      const covered = lesions(one, { processes: ["fibrin"], organs: [...serousMembranes] });
      const membranes = new Set(covered.map(({ organ }) => organ.id));
      return membranes.size < 2 ? undefined : `although ${listing([...membranes])} show fibrin`;
    },
    advice: "Open at least two joints and list them under opened.",
  },
  {
    id: "enteric-gut-unseen",
    level: "warning",
    summary: "The jejunum, ileum, caecum and spiral colon of a pig with enteric signs are each examined.",
    protects:
      "Each cause of diarrhoea has its own stretch of gut; the one left out may be the one that had it.",
    lookAlike:
      "Gut that was sent unopened: list it under samples with lumen_opened: no, and nothing is asked; gut that had rotted or been pulled out by scavengers is not_assessable, and passed.",
    source: verified(
      "Animal Health Laboratory, University of Guelph: gut segments to examine and sample in diarrhoea",
    ),
    bad: {
      case: "selection: {signs: [diarrhoea]}\nintestine: {spiral_colon: {not_examined: ran out of time}}",
    },
    good: { case: "selection: {signs: [diarrhoea]}\nintestine: {spiral_colon: normal}" },
    organs: ["intestine.jejunum", "intestine.ileum", "intestine.caecum", "intestine.spiral_colon"],
    pointer: (one) => (signFamiliesOf(one).includes("enteric") ? "in a pig with enteric signs" : undefined),
    advice:
      "Open it and look at contents, wall and mucosa; if it is gone, say in the diagnosis what that leaves open.",
  },
  {
    id: "cough-lungs-unseen",
    level: "warning",
    summary: "The lungs, the pleura and the bronchial nodes of a pig with cough or dyspnoea are examined.",
    protects: "The complaint is in the chest; a reason for leaving the lungs does not answer it.",
    lookAlike:
      "Nodes that vanished in adhesions or were cut away on the line: write not_assessable with because: removed or damaged, and the rule is quiet.",
    source: practice("common practice of necropsy: the organs of the complaint are examined"),
    bad: { case: "lymphoid: {bronchial_nodes: {not_examined: cut away with the pluck}}" },
    good: { case: "lymphoid: {bronchial_nodes: normal}" },
    organs: ["respiratory.lungs", "respiratory.pleura", "lymphoid.bronchial_nodes"],
    pointer(one) {
      const sign = one.signs.find((word) => word === "cough" || word === "dyspnoea");
      return sign === undefined ? undefined : `in a pig with ${sign}`;
    },
    advice: "Examine it, or say in the diagnosis what that leaves open.",
  },
];

const serousMembranes = ["serosa.peritoneum", "cardiovascular.pericardium", "respiratory.pleura"];

const isFoundDead = (one: Case): boolean => one.record.death?.manner === "found-dead";

const isPale = (one: Case): boolean =>
  signFamiliesOf(one).includes("anaemic") ||
  lesions(one, {
    processes: ["pallor"],
    organs: ["external", "upper_digestive", "locomotor", "subcutis"],
  }).length > 0;

/** The first lesion that is asked for, as in `not examined although urinary.kidneys.left[0] shows infarct`. */
function shown(
  one: Case,
  question: LesionQuestion,
  isMeant: (lesion: PlacedFinding) => boolean = () => true,
): string | undefined {
  const lesion = lesions(one, question).find(isMeant);
  return lesion === undefined
    ? undefined
    : `although ${formatPath(lesion.path)} shows ${lesion.finding.process}`;
}

/** Whether an organ was left alone: with a reason, or blank where it is wanted and no line tells of its system. */
function isLeft(one: Case, organ: PlacedOrgan): boolean {
  if (one.organ(organ).status === "not_examined") return true;
  const isTold = blankSystems(one).some(({ id }) => id === organ.system);
  return one.due.includes(organ) && !isTold && isLeftOut(one, organ);
}

export const suspectOrganRules: readonly CaseRule[] = rows.map(({ organs, pointer, advice, ...row }) => {
  const asked = organs.map(organById).filter((organ) => organ !== undefined);
  return {
    ...row,
    scope: "case",
    family: "completeness",
    check(one, report) {
      const left = asked.filter((organ) => isLeft(one, organ) && !isSentClosed(one, organ));
      const why = left.length === 0 ? undefined : pointer(one);
      if (why === undefined) return;
      const [first] = left;
      if (first === undefined) return;
      report(`${listing(left.map(({ id }) => id))}: not examined ${why}. ${advice}`, one.organ(first).path);
    },
  };
});
