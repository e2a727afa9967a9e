/** What a note affirms and what it denies, and the rules that read notes. */
import { describe, expect, it } from "vitest";
import { alarmPatterns, alarmSigns, description, organById, vocabulary } from "../../src/knowledge/index.ts";
import { affirmed } from "../../src/notes/affirmed.ts";
import { lintExample } from "./lay-example.ts";

const words = ["vesicle*", "blister*", "black", "friable", "froth", "blood", "ulcer*", "oedema*", "blasen"];
const said = (text: string): string[] => affirmed(text, words).map((word) => word.text);

describe("a note affirms", () => {
  it.each([
    ["vesicles on the snout", ["vesicles"]],
    ["black, no froth", ["black"]],
    ["no froth, black", ["black"]],
    ["no froth, black and friable", ["black", "friable"]],
    ["no doubt vesicles", ["vesicles"]],
    ["not normal: blisters", ["blisters"]],
    ["vesicles cannot be excluded", ["vesicles"]],
    ["not swollen but black", ["black"]],
    ["no change except blisters on the teats", ["blisters"]],
    ["looked for vesicles: found two on the left fore foot", ["vesicles"]],
    ["vesicles on the snout, none on the feet", ["vesicles"]],
    ["vesicles on the snout none on the feet", ["vesicles"]],
    ["no lameness, blisters on snout or feet", ["blisters"]],
    ["edema of the wall", ["edema"]],
    ["Blasen am Kronsaum, kein Fieber", ["Blasen"]],
    ["vesicles?", ["vesicles"]],
    ["not sure if these are vesicles", ["vesicles"]],
    ["unclear whether vesicles", ["vesicles"]],
    ["it should be noted: blisters", ["blisters"]],
    ["ulcerated", ["ulcerated"]],
  ])("in %j", (text, found) => {
    expect(said(text)).toEqual(found);
  });

  it("in a long sentence every word, and a denial counts for what stands near it", () => {
    const denied = "no vesicles, ".repeat(300);
    expect(said(denied)).toEqual([]);
    expect(said(`${denied}but blisters on the snout`)).toEqual(["blisters"]);
    expect(said(`blisters on the snout, ${denied}`)).toEqual(["blisters"]);
    expect(said("no vesicles or blisters or froth or blood ".repeat(100))).toEqual([]);
    expect(said(`not ${"swollen ".repeat(100)}black`)).toEqual(["black"]);
    expect(said(`not seen: vesicles${" on the snout".repeat(100)}`)).toEqual([]);
  });

  it.each([
    "no vesicles",
    "vesicles absent",
    "vesicles: none",
    "vesicles none seen",
    "vesicles were not seen",
    "without blisters",
    "looked for vesicles, none",
    "Looked for vesicles on snout and feet. None found.",
    "looked for vesicles",
    "no sign of blisters",
    "vesicles excluded",
    "froth-free",
    "free of froth, blood and ulcers",
    "no froth, blood or ulcers",
    "no vesicles, blisters",
    "absence of ulcers confirmed",
    "keine Blasen",
    "Blasen: keine",
    "Blasen nicht vorhanden",
    "neither black nor friable",
    "a blackbird",
    "call me if vesicles are found on other pigs",
    "should there be blisters, stop at once",
  ])("nothing in %j", (text) => {
    expect(said(text)).toEqual([]);
  });
});

/** What an alarm brings with it. */
const alarmRules = new Set(["alarm-pattern", "alarm-exclude", "alarm-sign-recorded", "parcel-during-alarm"]);

describe("alarm words", () => {
  const found = (one: string, visit?: string): string[] =>
    lintExample(
      { case: one, ...(visit === undefined ? {} : { visit }) },
      { only: ["alarm-word-unrecorded", "alarm-word-in-visit"] },
    ).findings.map(({ path }) => path);

  it.each([
    ["external: {feet: {state: normal, note: intact blisters on the coronary bands}}", "external.feet.note"],
    ["external: {feet: {not_examined: vesicles on the coronary band}}", "external.feet.not_examined"],
    [
      "external: {feet: {not_assessable: {because: damaged, why: blisters burst}}}",
      "external.feet.not_assessable.why",
    ],
    [
      "external: {feet: [{process: wound, site: coronary band, note: burst blister}]}",
      "external.feet[0].note",
    ],
    ["external: {feet: {state: normal, note: 'horn loose, claw coming off'}}", "external.feet.note"],
    ["note: 'horn loose, claw coming off'", "note"],
    ["note: Blasen am Kronsaum", "note"],
    ["note: Bläschen am Rüssel", "note"],
    ["note: Blase auf der Zunge", "note"],
    ["note: Klauen lösen sich", "note"],
    ["note: aphtes sur le groin", "note"],
    ["note: vésicules aux onglons", "note"],
    ["note: ampollas en el hocico", "note"],
    ["note: vescicole sul grugno", "note"],
    ["note: blærer på trynen", "note"],
    ["note: blaren op de snuit", "note"],
    ["note: sloughed claws on both hind feet", "note"],
    ["note: 'coronary bands raw, bleeding'", "note"],
    ["history: lame since yesterday with blistered snout", "history"],
    ["selection: {note: fresh vesicles between the claws}", "selection.note"],
    ["death: {note: shot because of blisters on all feet}", "death.note"],
    ["diagnosis: {comment: vesicles cannot be excluded}", "diagnosis.comment"],
    ["external: {snout: {state: normal, note: raw patches}}", "external.snout.note"],
    [
      "lymphoid: {spleen: {state: normal, note: 'black, friable, three times normal size'}}",
      "lymphoid.spleen.note",
    ],
    ["note: spleen huge and black", "note"],
    [
      "lymphoid: {spleen: [{process: enlargement, distribution: diffuse, size: 300 mm, note: black and friable}]}",
      "lymphoid.spleen[0].note",
    ],
    ["note: 'many lymph nodes bloody, like black cherries'", "note"],
    [
      "lymphoid: {gastrohepatic_nodes: {state: normal, note: haemorrhagic}}",
      "lymphoid.gastrohepatic_nodes.note",
    ],
    ["note: unclotted blood from the nose", "note"],
    ["note: blood at the nostrils that does not clot", "note"],
    ["opened: {note: throat swollen and gelatinous}", "opened.note"],
    ["note: petechiae of the skin of the belly", "note"],
    ["intestine: {spiral_colon: {state: normal, note: button ulcers}}", "intestine.spiral_colon.note"],
    ["note: cysts in the tongue", "note"],
    ["note: 'vesicles? on snout'", "note"],
    ["note: 'not lame: blisters on the coronary band'", "note"],
    ["note: vesicles exclusively on the snout", "note"],
    ["note: 'blisters on the feet, nothing else seen'", "note"],
    ["note: coronets white and lifting", "note"],
    ["note: 'spleen big, black and soft'", "note"],
    ["note: alle Lymphknoten blutig", "note"],
    ["note: 'Klauenhorn löst sich ab'", "note"],
    ["external: {subcutis: {state: normal, note: 'throat gelatinous, bloody'}}", "external.subcutis.note"],
    [
      "samples: [{id: 01-A, from: external.feet, site: roof of a vesicle, into: dry-swab, for: [pcr]}]",
      "samples[0].site",
    ],
    [
      "lymphoid: {submandibular_nodes: {state: normal, note: caseous and gritty}}",
      "lymphoid.submandibular_nodes.note",
    ],
  ])("%s", (text, path) => {
    expect(found(text)).toEqual([path]);
  });

  it.each([
    "note: no vesicles on snout, feet or mouth",
    "note: 'vesicles absent, coronary bands smooth'",
    "note: 'looked for vesicles, none'",
    "note: gall bladder full; urinary bladder empty",
    "note: Harnblase leer, Gallenblase voll",
    "note: Blase gefüllt",
    "note: seminal vesicles small",
    "genital: {accessory_glands: {state: normal, note: vesicles of equal size}}",
    "note: two blister packs of tablets left with the farmer",
    "note: 'horn worn on concrete, claws long'",
    "external: {feet: {state: normal, note: 'claws trimmed, loose housing'}}",
    "note: gas blisters in the mesentery",
    "note: keine Blasen an Rüssel und Klauen",
    "note: vesicles excluded by the official veterinarian on Monday",
    "external: {feet: {not_examined: cut off by the renderer before the visit}}",
    "external: {feet: [{process: vesicle, site: coronary band, distribution: multifocal, size: 15 mm, note: intact blisters}]}",
    "alarm_check: {vesicles: suspected}\nnote: blisters on the snout",
    "note: blisters on the snout\nauthority: {contacted: 2026-04-20T10:20, answer: official veterinarian on the way}",
    "lymphoid: {spleen: {state: normal, note: dark red}}",
    "note: 'spleen dark and full of blood, enlarged after barbiturate'",
    "note: spleen normal; lungs dark red and friable",
    "note: 'spleen black, not friable'",
    "note: 'nodes of the head red from absorbed blood'",
    "note: unclotted blood in the heart",
    "note: 'blood from the nose after the bolt, clots well'",
    "note: no swelling of the throat",
    "note: bruises and haemorrhage of the skin where the tag was torn out",
    "note: ovarian cysts are common on this farm",
    "note: 'vesicles: 0'",
    "note: vesicles? no",
    "note: 'vesicles or erosions: none seen on snout, lips, tongue, feet or teats'",
    "note: 'vesicles, erosions and haemorrhages of the skin were looked for and not found'",
    "note: farmer told to look for blisters every day",
    "note: swine vesicular disease serology negative in 2025",
    "note: deux ampoules de pentobarbital",
    "note: 'faeces loose, claws long'",
    "note: horn of the uterus loose in the abdomen",
    "note: 'dark, tarry faeces at the anus'",
    "note: 'spleen soft and dark, pig lay 20 h at 25 °C'",
    "note: bronchial nodes bloody beside the abscess",
    "note: calcified cyst of the kidney",
    "note: 'pas de vésicules, aucun aphte'",
    "note: no se observan vesículas en pezuñas",
    "note: non si osservano vescicole",
    "note: ingen blærer på trynen",
    "note: geen blaren op de snuit",
    "external: {snout: {state: normal, note: 'ring hole, healed ulcer'}}",
    "nervous: {middle_ears: {state: normal, note: bulla dry}}",
    "external: {ears: {left: [{process: necrosis, distribution: focal, size: 9 mm, note: haemorrhagic rim}], right: normal}}",
    "external: {feet: [{process: abscess, distribution: focal, size: 20 mm, note: horn detached above it}]}",
    "respiratory: {lungs: {note: 'large vesicles of air under the pleura'}}",
  ])("silent: %s", (text) => {
    expect(found(text)).toEqual([]);
  });

  it.each([
    "have never seen so many blisters",
    "no idea where the blisters on the snout come from",
    "no reason for the blisters",
    "no other lesions than blisters on the feet",
    "nothing found other than blisters",
    "without treatment the blisters healed",
    "no treatment given for blisters on the feet",
    "owner did not report the blisters",
    "nothing done about blisters",
    "does not eat and has blisters in the mouth",
    "no appetite and blisters on the snout",
    "pigs that are not vaccinated show blisters",
    "blisters on the snout were not there yesterday",
    "if you look closely there are blisters on the coronary band",
    "no secret that there are blisters",
    "ohne Fieber Blasen am Rüssel",
    "frisst nicht und hat Blasen am Maul",
    "keine Ahnung woher die Blasen",
    "losing their claws",
    "lost their claws",
    "claws dropped off",
    "hoof shed",
    "pigs thimbling",
    "claws come away",
    "hoof came right off",
    "blanching of the coronary band",
    "white coronary bands",
    "water-filled bubbles on the snout",
    "skin peels from the snout",
    "vesicels on the snout",
    "Ausschuhen bei drei Tieren",
    "Kronsaum blasig abgehoben",
    "Hornkapsel abgelöst",
    "neck swollen and gelatinous",
    "purple spots on the skin that do not press away",
    "buttons in the colon",
    "epithelium of tongue comes off in sheets",
    "spleen black and falls apart in the hand",
    "pig's snout with blisters, stockman has noticed",
    "blisters two days ago",
    "are these blisters on the snout?",
    "blisters on snouts since 2025",
    "FMD: vesicles on the snout",
    "blisters again, as last year",
  ])("in a note: %s", (text) => {
    expect(found(`note: ${JSON.stringify(text)}`)).toEqual(["note"]);
  });

  it.each([
    "blisters on the snout last year",
    "blisters last summer, healed",
    "in 2019 blisters on the feet",
    "MKS-Verdacht ausgeschlossen 2019, damals Blasen am Rüssel",
    "Aphthenseuche gab es zuletzt 1988",
    "water blister on the stockman's hand from the shovel",
    "the vet student has a blister on the heel from new boots",
    "the dog of the farm has an ulcer on the lip",
    "cattle on the farm: teat blisters in 2019, cowpox",
    "the goat has blisters on the lip",
    "paint blisters on the gate; snouts rub there",
    "out of a blister, 2 tablets",
    "Blister agent",
    "oil vesicles in histology",
    "bulla of the ear dry",
    "middle ear: bulla with pus",
    "Are there blisters anywhere?",
    "Can button ulcers be told from salmonellosis?",
    "FMD: vesicles; SVD: vesicles; neither seen",
    "ASF would give a black, enlarged spleen; this one is small",
    "students were shown pictures of vesicles on the snout",
    "slaughtered before blisters were asked about",
    "told to look out for blisters",
    "when blisters are seen; not here",
    "small blister? No: dried feed",
    "claw trimming in sows, horn loose pieces swept",
    "claw slipped off the board",
    "blood unclotted at the nose, heparinised",
    "Blut aus der Nase nach Bolzenschuss, nicht geronnen",
    "Entblutung: Blut lief aus Nase, ungeronnen",
    "Kehlgang geschwollen nach Spritzenabszess",
    "blisters on the feet last year, healed. No blisters now",
    "blisters on the snout in May 2019, healed",
    "snout raw from the snare",
    "no fresh blisters or erosions on the snout",
    "did not find any blisters",
    "no vesicles and erosions on snout or feet",
    "farmer did not report any blisters",
    "never seen blisters on this farm",
    "no signs of blistering",
    "es wurden keine frischen Blasen gefunden",
    "no skin haemorrhages",
    "no fever, lameness or blisters",
    "node of the goat cheesy",
    "asked about vesicles; the stockman has seen none",
    "no cough, no blisters",
    "not lame, no blisters or erosions on feet",
    "neither blisters nor erosions on the snout",
    "no claws loose",
    "caseous lymphadenitis is a disease of the neighbour's goats: nodes of the goats",
  ])("silent in a note: %s", (text) => {
    expect(found(`note: ${JSON.stringify(text)}`)).toEqual([]);
  });

  it.each([
    ["external: {feet: [{process: wound, site: sole, duration: chronic}]}", "claws coming off in ten pigs"],
    [
      "external: {skin: [{process: wound, distribution: focal}]}",
      "petechiae all over the skin of three pen mates",
    ],
    ["external: {feet: [{process: abscess, site: sole}]}", "coronary bands raw"],
    ["external: {snout: [{process: wound, distribution: focal}]}", "snouts raw and eroded in the whole pen"],
    [
      "external: {ears: {left: [{process: necrosis, site: tip}], right: normal}}",
      "petechiae on the skin of the mates",
    ],
    ["external: {subcutis: [{process: oedema, site: flank}]}", "throat swollen, gelatinous"],
    ["respiratory: {larynx: [{process: inflammation}]}", "throat swollen, gelatinous"],
    ["lymphoid: {submandibular_nodes: [{process: abscess}]}", "nodes like blood clots"],
    ["lymphoid: {spleen: [{process: torsion}]}", "mate's spleen black, friable"],
    ["external: {snout: [{process: haemorrhage, colour: dark-red}]}", "unclotted blood at the nose"],
  ])("are not answered by another finding: %s", (finding, history) => {
    expect(found(`${finding}\nhistory: ${JSON.stringify(history)}`)).toEqual(["history"]);
  });

  it.each([
    "treatments: [spray on blisters of the feet]",
    "changes: [blisters on the snouts in pen 3]",
    "environment: [{group: nursery-2, note: blisters on snouts}]",
    "pigs: {drawn: those with blisters}",
  ])("of a visit: %s", (visit) => {
    expect(found("{}", visit)).toHaveLength(1);
  });

  it.each([
    "samples: [{id: 01-A, from: respiratory.lungs, site: 'vesicle fluid, coronary band', into: dry-swab, for: [pcr]}]",
    "diagnosis: {morphologic: [blisters on the snout]}",
    "selection: {treated: {with: spray on the blisters of the feet, last: 12 h}}",
  ])("elsewhere in a case: %s", (text) => {
    expect(found(text)).toHaveLength(1);
  });

  it("are accepted with a reason", () => {
    const accepted =
      "accepted: [{rule: alarm-word-unrecorded, at: note, because: a word of the farmer for scabs}]";
    expect(found(`note: blisters on the snout\n${accepted}`)).toEqual([]);
  });

  it.each(Object.values(alarmSigns))("are denied by what the message proposes: $denial", ({ denial }) => {
    expect(found(`note: ${JSON.stringify(denial)}`)).toEqual([]);
  });

  it.each(Object.values(alarmSigns).flatMap((sign) => sign.at.map((organ) => [organ, sign] as const)))(
    "on %s bring an alarm and nothing else when the example is pasted",
    (organ, sign) => {
      const [system, key] = organ.split(".");
      const check = sign.check === undefined ? "" : `alarm_check: {${sign.check}: suspected}\n`;
      const sex = organ === "external.mammary_glands" ? "pig: {sex: female}\n" : "";
      const all = (text: string): string[] =>
        lintExample({ case: `${sex}${text}` }).findings.map(({ rule }) => rule);
      const before = all("note:");
      const after = all(`${check}${system}: {${key}: [${sign.record}]}`);
      const brought = new Set(after.filter((rule) => !before.includes(rule)));
      if (sign.part !== true) expect([...brought].some((rule) => alarmRules.has(rule))).toBe(true);
      expect([...brought].filter((rule) => !alarmRules.has(rule))).toEqual([]);
    },
  );

  it("of a visit are answered by a case that shows them", () => {
    const visit = "complaint: blisters on snouts";
    expect(found("{}", visit)).toEqual(["complaint"]);
    expect(found("{}", "complaint: no blisters on snouts")).toEqual([]);
    expect(found("external: {snout: [{process: vesicle, distribution: focal, size: 9 mm}]}", visit)).toEqual(
      [],
    );
  });

  it("say where, what it may be and what to write", () => {
    const { findings } = lintExample(
      { case: "external: {feet: {not_examined: vesicles on the coronary band}}" },
      { only: ["alarm-word-unrecorded"] },
    );
    expect(findings[0]?.message).toContain(
      'external.feet.not_examined: "vesicles" may be foot-and-mouth disease',
    );
    expect(findings[0]?.message).toContain("external: {feet: [{process: vesicle,");
  });

  it("come from data that names patterns, organs and processes that exist", () => {
    const signs = Object.values(alarmSigns);
    const patterns = alarmPatterns.map(({ id }) => id);
    expect(signs.filter(({ alarm }) => !patterns.includes(alarm))).toEqual([]);
    const named = signs.flatMap(({ at, recorded = [] }) => [...at, ...recorded.flatMap((one) => one.organs)]);
    expect(named.filter((id) => organById(id) === undefined)).toEqual([]);
    const processes = signs.flatMap(({ recorded = [], beside }) => [
      ...beside,
      ...recorded.flatMap((one) => one.process),
    ]);
    expect(processes.filter((word) => !vocabulary.process.includes(word))).toEqual([]);
  });

  it.each(Object.entries(alarmSigns))("of %s are silenced by the finding that they ask for", (_id, sign) => {
    const [system, key] = (sign.at[0] ?? "").split(".");
    const text = sign.words.map((list) => (list[0] ?? "").replace("*", "")).join(" ");
    const note = `note: "${text} ${(sign.places?.[0] ?? "").replace("*", "")}"`;
    const own = (more: string): string => `${system}: {${key}: {state: , left: , right: , ${more}}}`;
    const sex = sign.at[0] === "external.mammary_glands" ? "pig: {sex: female}\n" : "";
    const check = sign.check === undefined ? "" : `alarm_check: {${sign.check}: suspected}\n`;
    expect(found(`${sex}${own(note)}`)).toHaveLength(1);
    expect(found(`${sex}${check}${own(`${note}, findings: [${sign.record}]`)}`)).toEqual([]);
  });
});

describe("the note of a normal organ", () => {
  const speaks = (text: string): boolean => {
    const { findings } = lintExample({ case: text }, { only: ["normal-note-contradiction"] });
    return findings.length > 0;
  };
  const normal = (organ: string, note: string): string => {
    const [system, key] = organ.split(".");
    return `${system}: {${key}: {state: normal, findings: , consolidation: , milk_spots: , note: "${note}"}}`;
  };

  it.each([
    ["liver_pancreas.liver", "milk spots"],
    ["liver_pancreas.liver", "a few milk spots on both faces"],
    ["liver_pancreas.liver", "white spots on the surface"],
    ["stomach.glandular_part", "ulcerated"],
    ["stomach.glandular_part", "bleeding ulcer"],
    ["external.navel", "small hernia"],
    ["cardiovascular.heart", "pale streaks"],
    ["lymphoid.spleen", "big and soft"],
    ["external.ears", "blue tips"],
    ["cardiovascular.pericardium", "20 ml straw coloured fluid"],
    ["serosa.peritoneum", "fluid, 300 ml, yellow"],
    ["serosa.pleural_space", "0.2 l clear fluid"],
    ["lymphoid.spleen", "vergrössert"],
    ["lymphoid.spleen", "vergroessert, brüchig"],
    ["urinary.bladder", "Blutungen in der Schleimhaut"],
    ["liver_pancreas.liver", "Abszess im linken Lappen"],
    ["locomotor.joints", "Schwellung, Eiter"],
    ["respiratory.trachea", "bloody froth"],
    ["intestine.jejunum", "wall edema"],
    ["urinary.bladder", "haemorrhages, swab taken"],
    ["lymphoid.thymus", "no blood, atrophied"],
    ["respiratory.bronchi", "two lungworms"],
    ["lymphoid.thymus", "not small: swollen"],
    ["stomach.pars_oesophagea", "Magengeschwür"],
  ])("%s: %s", (organ, note) => {
    expect(speaks(normal(organ, note))).toBe(true);
  });

  it.each([
    ["respiratory.trachea", "froth-free"],
    ["liver_pancreas.gall_bladder", "bile green-black"],
    ["liver_pancreas.gall_bladder", "green-black bile"],
    ["external.navel", "closed, dry, scar only"],
    ["external.skin", "black pigment spots"],
    ["external.skin", "tattoo blue-black"],
    ["external.feet", "claws black, pigmented breed"],
    ["liver_pancreas.liver", "absence of abscess confirmed"],
    ["stomach.glandular_part", "no ulcer"],
    ["lymphoid.spleen", "not enlarged"],
    ["lymphoid.spleen", "firm; not enlarged, no infarcts"],
    ["lymphoid.spleen", "dark red, edges sharp"],
    ["lymphoid.spleen", "nicht vergrössert, keine Blutungen"],
    ["lymphoid.spleen", "perhaps a little enlarged"],
    ["lymphoid.spleen", "somewhat large, normal for its age"],
    ["respiratory.trachea", "free of froth, blood and worms"],
    ["cardiovascular.pericardium", "5 ml clear fluid"],
    ["cardiovascular.heart", "filled with blood"],
    ["intestine.ileum", "lymphoid nodules visible"],
    ["respiratory.trachea", "blood vessels visible"],
    ["respiratory.trachea", "blood from the stick wound"],
    ["intestine.jejunum", "palpated for torsion, none"],
    ["lymphoid.bronchial_nodes", "neither swollen nor haemorrhagic"],
    ["urinary.urine", "clear, 20 ml"],
    ["liver_pancreas.liver", "milk spots: 0"],
    ["urinary.kidneys", "checked for petechiae and white spots"],
    ["nervous.brain", "haemorrhage from the captive bolt"],
    ["respiratory.lungs", "keine Verwachsungen oder Knoten"],
    ["serosa.peritoneum", "fluid less than 20 ml"],
    ["external.tail", "docked; stump healed with a scar"],
    ["lymphoid.spleen", "contracted after bleeding"],
    ["lymphoid.spleen", "weighed on a large scale"],
    ["lymphoid.spleen", "would be enlarged in salmonellosis; is not"],
    ["lymphoid.spleen", "normal groß"],
    ["liver_pancreas.liver", "red-brown, blood flows from the cut"],
    ["liver_pancreas.gall_bladder", "enlarged after fasting"],
    ["lymphoid.mesenteric_nodes", "large in weaners, pale"],
    ["lymphoid.mesenteric_nodes", "bigger than in sows, as at this age"],
    ["cardiovascular.heart", "Einstichblutung der Euthanasie"],
    ["lymphoid.submandibular_nodes", "dark from blood swallowed at bleeding"],
    ["external.perineum", "blood clotted from the thermometer"],
  ])("silent: %s: %s", (organ, note) => {
    expect(speaks(normal(organ, note))).toBe(false);
  });

  it("takes its organs from the anatomy", () => {
    const { also, fine, fluid } = description.changed;
    const named = [...[...also, ...fine].flatMap(({ at }) => at), ...fluid.at].filter((id) =>
      id.includes("."),
    );
    expect(named.filter((id) => organById(id) === undefined)).toEqual([]);
  });
});

describe("the material of a test for the toxin gene", () => {
  const speaks = (from: string, samples?: string): boolean =>
    lintExample(
      {
        visit: `tests: [{test: toxin-gene, from: ${JSON.stringify(from)}, result: negative, at: 2026-04-28}]`,
        ...(samples === undefined ? {} : { case: `samples: [${samples}]` }),
      },
      { only: ["toxin-test-material"] },
    ).findings.length > 0;
  const nose = "{id: 01-A, from: respiratory.nares, into: dry-swab, for: [pcr]}";
  const tonsil = "{id: 01-B, from: lymphoid.tonsil, into: dry-swab, for: [pcr]}";
  const lung = "{id: 01-A, from: respiratory.lungs, into: chilled, for: [pcr]}";

  it.each([
    "lungs, no nasal swabs",
    "lungs of three finishers",
    "faeces",
    "Lungen",
    "blood of six sows",
    "poumons",
  ])("%s", (from) => {
    expect(speaks(from)).toBe(true);
  });

  it("samples of another organ", () => {
    expect(speaks("01-A", lung)).toBe(true);
  });

  it.each([
    "Nasentupfer von sechs Absetzern",
    "écouvillons nasaux",
    "tamponi nasali e tonsillari",
    "Tonsillen",
    "hisopos nasales",
    "næsesvabere",
    "neusswabs",
    "nose and lungs of two pigs",
    "isolate 4 from the lungs",
    "six pigs of nursery-2",
    "colonies of P. multocida",
    "wymazy",
  ])("silent: %s", (from) => {
    expect(speaks(from)).toBe(false);
  });

  it("silent for the numbers of its own samples of nose and tonsil", () => {
    expect(speaks("01-A, 01-B", `${nose}, ${tonsil}`)).toBe(false);
  });
});

describe("a pool in words", () => {
  const speaks = (site: string): boolean =>
    lintExample(
      {
        case: `samples: [{id: 01-A, from: blood, site: ${JSON.stringify(site)}, into: edta-tube, for: [pcr]}]`,
        visit: "cases: [birch-2026-04-20-01, birch-2026-04-20-02, birch-2026-04-20-03]",
        others: [
          "case: birch-2026-04-20-02\npig: {tag: '902'}",
          "case: birch-2026-04-20-03\npig: {tag: '903'}",
        ],
      },
      { only: ["pool-unnamed"] },
    ).findings.some(({ rule, file }) => rule === "pool-unnamed" && file.endsWith("pig-01.yaml"));

  it.each([
    "pooled with 02 and 03",
    "pool of three pigs",
    "mixed with 02, 3 ml each",
    "pooled with 2",
    "pooled with #2",
    "pooled with pig no. 2",
    "pool: 01+02+03",
    "pool 01-03",
    "pooled with all others",
    "gepoolt mit 02",
    "same tube as 02",
    "pooled with 03 at the laboratory",
  ])("%s", (site) => {
    expect(speaks(site)).toBe(true);
  });

  it.each([
    "do not pool with 02",
    "not pooled with 02",
    "never pooled with littermates",
    "pooled at the laboratory, 03 ml each",
    "pooled from 02 swabs of this pig",
    "pooled at 02:30",
    "pooled on 2026-03-14",
    "pooled on 2026-04-03",
    "pool of 2 swabs of this pig",
  ])("silent: %s", (site) => {
    expect(speaks(site)).toBe(false);
  });
});

describe("a sample number that no case has", () => {
  const parcel = (samples: string): string => `{samples: ${samples}, by: road}`;
  const message = (parcels: readonly string[], ids: readonly string[]): string =>
    lintExample(
      {
        case: `samples: [${ids.map((id) => `{id: ${id}, from: respiratory.lungs, into: chilled, for: [pcr]}`).join(", ")}]`,
        visit: `parcels: [${parcels.map(parcel).join(", ")}]`,
      },
      { only: ["parcel-sample-unknown"] },
    ).findings[0]?.message ?? "";

  it("is taken for one that is in no parcel", () => {
    expect(message(["[10-A]", "[01-B]"], ["01-A", "01-B"])).toContain("Did you mean 01-A?");
  });

  it("is never taken for one of another parcel", () => {
    expect(message(["[01-A, 01-C]", "[01-B]"], ["01-A", "01-B"])).toContain(
      "Every sample of the visit is in a parcel.",
    );
  });

  it("shows what is left when it is near to nothing", () => {
    expect(message(["[77-X]"], ["01-A", "01-B"])).toContain("Not in a parcel yet: 01-A and 01-B.");
  });
});
