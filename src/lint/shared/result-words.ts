/** How a finding calls a result: `01-C, pcr, Mycoplasma hyopneumoniae`. */
import { agentName } from "../../knowledge/agents.ts";
import type { PlacedResult } from "../../record/index.ts";
import { listing } from "../../words/listing.ts";

const sought = ({ entry: { agent, analyte } }: PlacedResult): string | undefined =>
  agent === undefined ? analyte : agentName(agent);

export const resultName = (result: PlacedResult): string =>
  [listing(result.samples), result.entry.test, sought(result)]
    .filter((one) => one !== undefined && one !== "")
    .join(", ");
