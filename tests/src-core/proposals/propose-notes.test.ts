import { describe, expect, test } from "vitest";
import { hostOfFiles } from "../../../src-core/reader/source-host.ts";
import { createService } from "../../../src-core/service/create-service.ts";
import { registers } from "../checks/ps2/hosts.ts";
import { loadGrammar } from "../reader/syntax/load-grammar.ts";

const grammar = await loadGrammar();

function serviceOver(files: Readonly<Record<string, string>>) {
  const service = createService({ host: hostOfFiles(files), grammar, startName: "firmware" });
  const [project] = service.projectsAt(".");
  if (project === undefined) throw new Error("no project");
  return { service, id: project.id };
}

/** The notes, each with the file and the text that it belongs above. */
function noted(files: Readonly<Record<string, string>>): readonly string[] {
  const { service, id } = serviceOver(files);
  return service
    .notes(id)
    .proposals.map(
      ({ note, before: { file, start } }) => `${file} | ${note} | ${lineAt(files[file] ?? "", start)}`,
    );
}

function lineAt(text: string, offset: number): string {
  return text.slice(offset).split("\n")[0] ?? "";
}

const board = "// @wire board atmega328p clock=16MHz\n";

const host = registers(
  { hold: "HOLD_US", notes: `${board}#define HOLD_US 120\n` },
  "int main(void) { UBRR0 = 832; UCSR0B = _BV(TXEN0); command(0xF4); for (;;) UDR0 = reply(); }\n",
);

describe("what the code tells is offered as notes", () => {
  test("pins, UART and the constant of the hold", () => {
    expect(noted({ "main.c": host })).toEqual([
      "main.c | @wire means ps2.request-hold | HOLD_US 120",
      "main.c | @wire ps2 clock=PD2 data=PD3 | // @wire board atmega328p clock=16MHz",
      "main.c | @wire serial uart=0 | // @wire board atmega328p clock=16MHz",
    ]);
  });

  test("above the variable that holds the constant", () => {
    const files = { "main.c": host.replace("#define HOLD_US 120", "static const double HOLD_US = 120;") };
    expect(noted(files)).toContain(
      "main.c | @wire means ps2.request-hold | static const double HOLD_US = 120;",
    );
  });

  test("at the top of the file with main, not of the first file", () => {
    const files = { "a.c": `${board}int other;\n`, "main.c": host.replace(board, "") };
    expect(noted(files)).toContain("main.c | @wire ps2 clock=PD2 data=PD3 | #define HOLD_US 120");
  });

  test("for a bit-banged line, its pin and the constant that times its bits", () => {
    const text = `${board}#include <avr/io.h>
#include <util/delay.h>
#define BIT_US 833
void send(uint8_t byte) {
  PORTB &= ~_BV(PB1);
  _delay_us(BIT_US);
  for (uint8_t i = 0; i < 7; i++) {
    if (byte & 1) PORTB |= _BV(PB1); else PORTB &= ~_BV(PB1);
    _delay_us(BIT_US);
    byte >>= 1;
  }
  PORTB |= _BV(PB1);
  _delay_us(BIT_US);
}
int main(void) { DDRB |= _BV(PB1); for (;;) send(PIND); }
`;
    expect(noted({ "main.c": text })).toEqual([
      "main.c | @wire means serial.bit-time | BIT_US 833",
      "main.c | @wire serial tx=PB1 | // @wire board atmega328p clock=16MHz",
    ]);
  });

  test("but not what is said already, nor a number without a name", () => {
    const said = "// @wire ps2 clock=PD2 data=PD3\n// @wire serial uart=0\n";
    expect(
      noted({ "main.c": said + host.replace("#define", "// @wire means ps2.request-hold\n#define") }),
    ).toEqual([]);
    expect(noted({ "main.c": said + host.replace("_delay_us(HOLD_US)", "_delay_us(120)") })).toEqual([]);
  });
});

test("what no code tells is listed with the word that says it", () => {
  const { service, id } = serviceOver({ "main.c": host.replace(board, "") });
  const { untold } = service.notes(id);
  expect(untold.join("\n")).toMatch(/the chip.*\n.*its clock.*\n[\s\S]*control line[\s\S]*shifter/);
});

test("each note that is written is understood, and none is offered again", () => {
  let text = host;
  for (let left = 5; left > 0; left--) {
    const { service, id } = serviceOver({ "main.c": text });
    const [proposal] = service.notes(id).proposals;
    if (proposal === undefined) break;
    const [action] = service.actions(id, proposal.span).filter(({ title }) => title.includes(proposal.note));
    const [edit] = action?.edits ?? [];
    if (edit === undefined) throw new Error(`no action for ${proposal.note}`);
    text = text.slice(0, edit.span.start) + edit.text + text.slice(edit.span.end);
  }
  const { service, id } = serviceOver({ "main.c": text });
  expect(service.notes(id).proposals).toEqual([]);
  expect(service.check(id).findings.filter(({ rule }) => rule.startsWith("note/"))).toEqual([]);
  expect(text).toContain("// @wire means ps2.request-hold\n#define HOLD_US 120");
});
