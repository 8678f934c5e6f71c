import type { Facts } from "../facts/facts.ts";
import type { SendSequence } from "../facts/ps2/ps2-facts.ts";
import type { Span } from "../finding.ts";
import { commands } from "../model/commands.ts";
import { type Knock, knocks } from "../model/knocks.ts";
import { formatSources } from "../model/sources.ts";

const setSampleRate = commands.find(({ argument }) => argument === "sample-rate")?.code;

/**
 * Three sample rates in a row that unlock something, if the byte there is always one of their six: a command that
 * a helper function sends for other rates as well is none.
 */
export function knockLine({ ps2 }: Facts, { file, start }: Span): string | undefined {
  let found: Knock | undefined;
  for (const sequence of ps2.sequences) {
    for (const [index, { span }] of sequence.bytes.entries()) {
      if (span.file !== file || span.start !== start) continue;
      const knock = knockAround(sequence, index);
      if (knock === undefined || (found !== undefined && found !== knock)) return undefined;
      found = knock;
    }
  }
  return found && knockText(found);
}

function knockAround({ bytes }: SendSequence, index: number): Knock | undefined {
  return knocks.find(({ rates }) => {
    const wanted = rates.flatMap((rate) => [setSampleRate, rate]);
    const starts = wanted.map((_, back) => index - back);
    return starts.some((from) => wanted.every((byte, at) => bytes[from + at]?.byte === byte));
  });
}

function knockText({ rates, meaning, id, sources }: Knock): string {
  return (
    `Part of the sequence ${rates.join(", ")}: it ${meaning}. ` +
    `A mouse that can do this then gives id ${id} (${formatSources(sources)}).`
  );
}
