// Runs commands of the built program one after the other in this process, and says what each took. As `counted` it also
// counts steps: how often every block of the program ran, as V8 counts it for coverage, and how many characters or
// entries the built-in functions went through. The figures are the same on every machine, however busy.
const fs = require("node:fs");
const { Session } = require("node:inspector");
const { join } = require("node:path");

const main = join(__dirname, "../../dist/program/main.cjs");
const counted = process.argv[2] === "counted";

/** Characters and entries that a built-in function goes through in the time of one step. */
const perStep = 16;
let walked = 0;
let session;
if (counted) {
  // Before the program is loaded: V8 counts blocks only in what it compiles afterwards.
  session = new Session();
  session.connect();
  ask("Profiler.enable");
  ask("Profiler.startPreciseCoverage", { callCount: true, detailed: true });
  countBuiltIn();
}

function ask(method, parameters) {
  let answer;
  session.post(method, parameters, (error, result) => {
    if (error) throw new Error(error.message);
    answer = result;
  });
  return answer;
}

function countBuiltIn() {
  const wrap = (holder, names, cost) => {
    for (const name of names) {
      const original = holder[name];
      Object.defineProperty(holder, name, {
        configurable: true,
        writable: true,
        value: function (...given) {
          const result = Reflect.apply(original, this, given);
          walked += cost(this, result, given);
          return result;
        },
      });
    }
  };
  const whole = ({ length }) => length;
  const found = ({ length }, index) => (index < 0 ? length : index);
  // `includes` does not say where.
  const including = (list, is, [what]) => (is ? list.indexOf(what) / 2 : list.length);
  const made = (_, { length }) => length;
  wrap(
    String.prototype,
    "replace replaceAll split normalize toLowerCase toUpperCase trim trimStart trimEnd match search".split(
      " ",
    ),
    whole,
  );
  wrap(String.prototype, ["includes"], including);
  wrap(
    String.prototype,
    ["indexOf"],
    ({ length }, at, [, from = 0]) => (at < 0 ? length : at) - Math.min(from, length),
  );
  wrap(
    String.prototype,
    ["lastIndexOf"],
    ({ length }, at, [, from = length]) => Math.min(from, length) - Math.max(at, 0),
  );
  wrap(Array.prototype, ["indexOf", "findIndex"], found);
  wrap(Array.prototype, ["includes"], including);
  wrap(Array.prototype, ["slice", "concat"], made);
  wrap(Array.prototype, ["join", "reverse", "splice", "shift", "unshift", "fill"], whole);
  // V8 copies the text for every piece of it.
  wrap(Intl.Segmenter.prototype, ["segment"], (_, __, [text]) => String(text).length ** 2);
  wrap(RegExp.prototype, ["exec"], (pattern, match, [text]) => {
    if (match !== null) return match[0].length + (pattern.sticky || pattern.global ? 0 : match.index);
    return pattern.sticky ? 0 : String(text).length;
  });
}

/** Steps since this was asked last. */
function steps() {
  const { result } = ask("Profiler.takePreciseCoverage");
  let sum = walked / perStep;
  walked = 0;
  const hot = [];
  for (const { url, functions } of result) {
    if (!/^(?:file:|\/|[A-Z]:)/.test(url) || url.endsWith("runner.cjs")) continue;
    for (const { functionName, ranges } of functions) {
      const count = ranges.reduce((all, range) => all + range.count, 0);
      sum += count;
      if (process.env.CARCASE_HOT && count > 20_000)
        hot.push([count, functionName, url.split("/").at(-1), ranges[0].startOffset]);
    }
  }
  if (process.env.CARCASE_HOT) {
    hot.sort((a, b) => b[0] - a[0]);
    fs.appendFileSync(process.env.CARCASE_HOT, `${Math.round(sum)} ${JSON.stringify(hot.slice(0, 8))}\n`);
  }
  return Math.round(sum);
}

const readSync = fs.readSync;
const write = (say) => (text, encoding, done) => {
  say(String(text));
  (typeof encoding === "function" ? encoding : done)?.();
  return true;
};

async function run({ args, cwd, input, env = {} }) {
  process.chdir(cwd);
  Object.assign(process.env, env);
  process.argv = [process.execPath, "carcase", ...args];
  process.exitCode = undefined;
  let [out, err] = ["", ""];
  process.stdout.write = write((text) => (out += text));
  process.stderr.write = write((text) => (err += text));
  let left = input;
  fs.readSync = (descriptor, buffer, ...rest) => {
    if (descriptor !== 0) return readSync(descriptor, buffer, ...rest);
    const piece = left?.subarray(0, buffer.length) ?? [];
    buffer.set(piece);
    left = left?.subarray(piece.length);
    return piece.length;
  };
  if (counted) steps();
  const began = process.cpuUsage();
  delete require.cache[main];
  require(main);
  while (process.exitCode === undefined) await new Promise(setImmediate);
  const { user, system } = process.cpuUsage(began);
  const code = process.exitCode;
  const took = counted ? steps() : undefined;
  for (const stream of [process.stdout, process.stderr]) stream.removeAllListeners("error");
  process.exitCode = undefined;
  for (const name of Object.keys(env)) delete process.env[name];
  return { code, out, err, cpu: (user + system) / 1e6, steps: took };
}

process.on("message", async (job) => process.send(await run(job)));
