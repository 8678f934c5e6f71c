import { expect, test } from "vitest";
import { hostOfFiles } from "../../../src-core/reader/source-host.ts";
import { createService } from "../../../src-core/service/create-service.ts";
import { loadGrammar } from "../reader/syntax/load-grammar.ts";

const grammar = await loadGrammar();

// mouse(4) of the Linux man-pages, table of the three-byte packet: bit 6 of the second byte is 0. Bit 6 of -1 is 1.
const body = `{
  out[0] = 0x40 | (b & 1) << 5 | (b & 2) << 3 | (dy & 0xC0) >> 4 | (dx & 0xC0) >> 6;
  out[1] = dx & 0x7F;
  out[2] = dy & 0x3F;
}
`;
const parameters = "(uint8_t *out, int8_t dx, int8_t dy, uint8_t b)";

test.each([
  ["on a line of its own", "main.c", `void encode${parameters} ${body}`],
  ["whose type stands on the line before", "main.c", `static void\nencode${parameters}\n${body}`],
  ["below a comment", "main.c", `/* Builds a report. */\nvoid encode${parameters} ${body}`],
  ["behind another function on its line", "main.c", `void idle(void) {} void encode${parameters} ${body}`],
  [
    "that is declared before",
    "main.c",
    `void encode${parameters};\nint other;\nvoid encode${parameters} ${body}`,
  ],
  [
    "with the line ends of other systems",
    "main.c",
    `void encode${parameters} ${body}`.replaceAll("\n", "\r\n"),
  ],
  ["of a class", "main.cpp", `struct Port {\n  void encode${parameters} ${body}};\nPort port;\n`],
  [
    "of a class, outside it",
    "main.cpp",
    `struct Port { void encode${parameters}; };\nPort port;\nvoid Port::encode${parameters} ${body}`,
  ],
  ["in a namespace", "main.cpp", `namespace line {\nvoid encode${parameters} ${body}}\n`],
  ["with C linkage", "main.cpp", `extern "C" void encode${parameters} ${body}`],
])("the note that is offered for a function %s has that function checked", (_, file, text) => {
  const files = { [file]: `// @wire board atmega328p clock=16MHz\n#include <stdint.h>\n${text}` };
  const service = createService({ host: hostOfFiles(files), grammar, startName: "firmware" });
  const [project] = service.projectsAt(file);
  if (project === undefined) throw new Error("no project");
  service.tryOut(project.id);
  expect(service.check(project.id).findings).toEqual([]);
  const source = files[file] ?? "";
  const name = source.lastIndexOf("encode(");
  const [action] = service.actions(project.id, { file, start: name, end: name });
  const [edit] = action?.edits ?? [];
  if (edit === undefined) throw new Error("nothing is offered");

  const noted = { [file]: source.slice(0, edit.span.start) + edit.text + source.slice(edit.span.end) };
  const after = createService({ host: hostOfFiles(noted), grammar, startName: "firmware" });
  after.projectsAt(file);
  after.tryOut(project.id);
  const { findings, notUnderstood } = after.check(project.id);
  expect(findings.map(({ rule }) => rule)).toEqual(["report/sync-bit"]);
  expect(notUnderstood).toEqual([]);
});
