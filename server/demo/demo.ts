import { FileLines } from "../../src-core/present/line-index.ts";
import { checkAsText } from "../../src-core/present/text/check-as-text.ts";
import { coloured, plain } from "../../src-core/present/text/paint.ts";
import { createService } from "../../src-core/service/create-service.ts";
import { mergeResults } from "../../src-core/service/merge-results.ts";
import { DiskFiles } from "../files/disk-files.ts";
import { loadGrammar } from "../load-grammar.ts";
import { endWhenReaderLeaves, wantsColours } from "../terminal.ts";

/** `npm run demo`: checks the sample workspace and says what to try next. */

const samples = [
  ["sample-workspace/ferry-c-faults", "register-level C, with faults planted in it"],
  ["sample-workspace/ferry-sketch-faults", "the same adapter as a sketch, with faults planted in it"],
  ["sample-workspace/ferry-sketch-second-faults", "the sketch one evening later: it runs, with faults"],
  ["sample-workspace/ferry-c", "the C firmware as it should be"],
  ["sample-workspace/ferry-sketch", "the sketch as it should be"],
] as const;

endWhenReaderLeaves(process.stdout);
const files = new DiskFiles(process.cwd());
const grammar = await loadGrammar();
const service = createService({ host: files, grammar, startName: "" });
const paint = wantsColours(process.stdout, process.env) ? coloured : plain;
const say = (text: string) => process.stdout.write(text);

say(`
Edgewise reads the firmware of an adapter that lets a PS/2 mouse work on the serial port of an old PC, and
says what would go wrong on the wires. It checks five firmwares of the sample workspace now.
`);
for (const [folder, what] of samples) {
  const result = mergeResults(
    service.projectsAt(folder).map(({ id }) => {
      service.runWhole(id);
      return service.check(id);
    }),
  );
  say(`\n${paint("place", `--- npx edgewise check ${folder}`)}\n    (${what})\n\n`);
  say(checkAsText(result, new FileLines((file) => files.readText(file)), paint));
}
say(`
What to try next
  Change a number in sample-workspace/ferry-c-faults/ps2.c as its finding says, then
      npx edgewise check sample-workspace/ferry-c-faults
  Check firmware of your own:
      npx edgewise check path/to/firmware
  See the same while you type: "npm run package" writes edgewise.vsix; install it in VS Code with
  "Extensions: Install from VSIX..." and open sample-workspace there.
`);
