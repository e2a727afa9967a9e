/** What the first screen of the example's reports says, in every language, kept to be read by people. `npm run docs` writes it anew. */
import { expect, it } from "vitest";
import { answerLines } from "../../src/formats/report/html.ts";
import { reportWords } from "../../src/report/index.ts";
import { languages } from "../../src/sheet/index.ts";
import { reports } from "./made.ts";

it("says what was wrong, how sure that is, whether it got better and what comes next", async () => {
  const told = Object.fromEntries(
    languages.map((language) => {
      const words = reportWords(language);
      return [
        language,
        Object.fromEntries(
          Object.entries(reports).map(([of, report]) => [
            of,
            [words.tell(report.title), words.say("answer"), ...answerLines(report, words)],
          ]),
        ),
      ];
    }),
  );
  await expect(`${JSON.stringify(told, null, 2)}\n`).toMatchFileSnapshot(
    "../fixtures/golden/report-first-screen.json",
  );
});
