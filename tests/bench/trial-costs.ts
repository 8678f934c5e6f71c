import { readdirSync, readFileSync } from "node:fs";
import type { Grammar } from "../../src-core/reader/syntax/grammar/grammar.ts";
import { createService } from "../../src-core/service/create-service.ts";
import { inTurn, median } from "./measure.ts";

const folder = "sample-workspace/ferry-c";

/** What trying the sample's encoder and decoder over all their inputs costs, once the firmware is read. */
export function trialCosts(grammar: Grammar, rounds: number): string {
  const texts = new Map(readdirSync(folder).map((name) => [name, readFileSync(`${folder}/${name}`, "utf8")]));
  const encoder = texts.get("report.c") ?? "";
  const host = {
    readText: (path: string) => texts.get(path),
    listFolder: (path: string) => (path === "." ? [...texts.keys()] : []),
  };
  const service = createService({ host, grammar, startName: "ferry-c" });
  const ids = service.projectsAt(".").map(({ id }) => id);
  let turn = 0;
  const [times = []] = inTurn(rounds, [
    () => {
      turn += 1;
      texts.set("report.c", `${encoder}\nuint8_t turn = ${turn % 250};\n`);
      for (const id of ids) service.check(id);
      const start = performance.now();
      for (const id of ids) service.tryOut(id);
      return performance.now() - start;
    },
  ]);
  return `
Trying the encoder and the decoder of ${folder} over all their inputs: median ${median(times).toFixed(1)} ms, fastest ${(times[0] ?? 0).toFixed(1)} ms
`;
}
