/** What laboratories look for, by id; only results, diagnoses and the work-up need it. */
import { agents as data } from "../generated/knowledge/agents.ts";
import type { Agent, Source } from "../generated/knowledge.types.ts";

export type { Agent } from "../generated/knowledge.types.ts";

export const agents: ReadonlyMap<string, Agent> = new Map(Object.entries(data.agents));
export const agentsSource: Source = data.source;

/** How people call an agent: `Mycoplasma hyopneumoniae`. */
export const agentName = (id: string): string => agents.get(id)?.name ?? id;

/** Whether an agent is another one, or a narrower one of it: PRRS virus type 1 is PRRS virus. */
export const isAgentOf = (id: string, wider: string): boolean => id === wider || agents.get(id)?.of === wider;

/** The agent that a text names whole, by id, name or short name. */
export function agentCalled(text: string): string | undefined {
  called ??= new Map(
    [...agents].flatMap(([id, { name, short = [] }]) =>
      [id, name, ...short].map((one) => [plain(one), id] as const),
    ),
  );
  return called.get(plain(text));
}

/** The id of an agent by each of its names. */
let called: ReadonlyMap<string, string> | undefined;
const plain = (text: string): string =>
  text
    .trim()
    .toLowerCase()
    .replace(/[\s_-]+/g, " ");
