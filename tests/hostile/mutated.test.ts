/**
 * Files of every kind that the program reads, changed at random: each is answered, plainly and within a bound of steps.
 * `npm run test:long` tries 30,000 of them.
 */
import { afterAll, describe, expect, it } from "vitest";
import { folderInTurns } from "../cases/temporary.ts";
import { runs, seed, seedName, singleName } from "../random.ts";
import { type Kind, kinds } from "./kinds.ts";
import { mutated, randomFrom } from "./mutate.ts";
import { type Done, Program } from "./program.ts";

/** `case:77` tries that one file again, with the seed that was printed. */
const single = process.env[singleName];

/** Every so many commands the steps are counted; otherwise only the time is looked at. */
const countedEvery = 20;
/** What any of the files takes is a few hundredths of it (printed). */
const stepsBound = (bytes: number, files: number): number => 3_000_000 * files + 400 * bytes;
/** Seconds of processor time for one file, many times what any takes; only there so that no hang goes unseen. */
const timeBound = 10;

const [plain, counted] = [new Program(), new Program({ counted: true })];
afterAll(() => {
  for (const program of [plain, counted]) program.stop();
});

const all = kinds.reduce((sum, { share }) => sum + share, 0);

describe("changed files", () => {
  it.each(kinds.map((kind) => [kind.name, kind] as const))(
    "%s",
    async (_, kind) => {
      const [name, chosen] = single?.split(":") ?? [];
      if (name !== undefined && name !== kind.name) return;
      const count = chosen === undefined ? Math.ceil((runs(3_000) * kind.share) / all) : 1;
      const inTurns = folderInTurns();
      const failed: string[] = [];
      const worst = { cpu: 0, at: 0, share: 0 };
      for (let first = Number(chosen ?? 0); failed.length < 10; first += kind.together) {
        if (chosen === undefined ? first >= count : first > Number(chosen)) break;
        const numbers = Array.from(
          { length: chosen === undefined ? kind.together : 1 },
          (_, at) => first + at,
        );
        const isCounted = chosen !== undefined || (first / kind.together) % countedEvery === 0;
        const found = await tried(kind, numbers, isCounted, inTurns);
        if (found.cpu > worst.cpu) [worst.cpu, worst.at] = [found.cpu, first];
        worst.share = Math.max(worst.share, found.share);
        // Of files that were read together, which one was it?
        const suspects = found.faults.length === 0 || numbers.length === 1 ? [] : numbers;
        const alone: string[] = [];
        for (const number of suspects)
          alone.push(
            ...(await tried(kind, [number], true, inTurns)).faults.map((fault) => told(kind, number, fault)),
          );
        failed.push(...(alone.length > 0 ? alone : found.faults.map((fault) => told(kind, first, fault))));
      }
      const most = `at most ${worst.cpu.toFixed(1)} s a command (${kind.name}:${worst.at}), ${(100 * worst.share).toFixed(0)} % of the bound on steps`;
      console.log(
        `changed files: ${count} of ${kind.name}, ${kind.together} a command, seed ${seed}; ${most}`,
      );
      expect(failed).toEqual([]);
    },
    7_200_000,
  );
});

const told = ({ name, together }: Kind, number: number, fault: string): string =>
  `${fault}, or those up to ${together - 1} after it; again: ${seedName}=${seed} ${singleName}=${name}:${number} npx vitest run tests/hostile/mutated.test.ts`;

interface Tried {
  readonly cpu: number;
  /** Steps as a share of their bound; 0 where they are not counted. */
  readonly share: number;
  readonly faults: readonly string[];
}

async function tried(
  { name, sound, file, beside = {}, commands, together }: Kind,
  numbers: readonly number[],
  isCounted: boolean,
  inTurns: ReturnType<typeof folderInTurns>,
): Promise<Tried> {
  const [first = 0] = numbers;
  const command = commands[hash(name, first - (first % together)) % commands.length] ?? [];
  const changed = numbers.map((number) => {
    const random = randomFrom(hash(name, number));
    return mutated(sound[Math.floor(random() * sound.length)] ?? "", sound, random);
  });
  const inFolder = (at: number, one: string): string => (together === 1 ? one : `${at}/${one}`);
  const files = changed.flatMap((bytes, at) =>
    file === undefined
      ? []
      : [[file, bytes] as const, ...Object.entries(beside)].map(
          ([one, content]) => [inFolder(at, one), content] as const,
        ),
  );
  const cwd = inTurns({ "read-me": "", ...Object.fromEntries(files) });
  const paths = changed.map((_, at) => inFolder(at, file ?? ""));
  const args = command.flatMap((word) => (word === "*" ? paths : [word]));
  const input = file === undefined && changed[0] !== undefined ? { input: changed[0] } : {};
  try {
    const done = await (isCounted ? counted : plain).run({ args, cwd, ...input });
    const size = changed.reduce((sum, { length }) => sum + length, 0);
    const share = (done.steps ?? 0) / stepsBound(size, numbers.length);
    return { cpu: done.cpu, share, faults: faultsOf(asDiff(args, done), share, numbers.length) };
  } catch (error) {
    return { cpu: 0, share: 0, faults: [error instanceof Error ? error.message : String(error)] };
  }
}

/** A seed for each file, from that of the run. */
function hash(name: string, number: number): number {
  let mixed = seed;
  for (const sign of `${name} ${number}`)
    mixed = Math.imul(mixed ^ (sign.codePointAt(0) ?? 0), 0x01000193) >>> 0;
  return mixed;
}

/** Nothing that a terminal would obey, or that turns text about. */
const raw = /[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069\ufeff]/;
const ofTheProgram = /internal fault|\n\s+at .*:\d+:\d+|node:internal|TypeError|RangeError|\[object/;

/** A diff holds the tabs and line ends of its file, or it could not be applied. */
const asDiff = (args: readonly string[], done: Done): Done =>
  args.includes("--dry-run")
    ? { ...done, out: done.out.replaceAll("\t", " ").replaceAll("\r\n", "\n") }
    : done;

function faultsOf({ code, out, err, cpu, steps }: Done, share: number, files: number): string[] {
  const found = (pattern: RegExp): string | undefined => pattern.exec(`${out}${err}`)?.[0];
  return [
    ...(code === 0 || code === 1 || code === 2 ? [] : [`exit code ${code}`]),
    ...(found(ofTheProgram) === undefined ? [] : [`says ${found(ofTheProgram)}`]),
    ...(found(raw) === undefined ? [] : [`shows ${JSON.stringify(found(raw))}`]),
    ...(cpu <= timeBound * files ? [] : [`${cpu.toFixed(1)} s`]),
    ...(share <= 1 ? [] : [`${steps} steps, ${(100 * share).toFixed(0)} % of the bound`]),
  ];
}
