import { ackIgnored } from "../../../../src-core/checks/ps2/ack-ignored.ts";
import { ruleTests } from "../harness.ts";
import { queuedC } from "./firmware/queued-c.ts";
import { classBased, interruptDriven, listens, pasted, registers, sketch } from "./hosts.ts";

// FA answers each byte that the mouse took, FE asks for it again: EM84502 data sheet, section E and D i.

const enable = `int main(void) {
  command(0xF4);
${listens}}
`;
const enableSketch = "void setup() { command(0xF4); }\nvoid loop() { reply(); }\n";

function changed(text: string, from: string, to: string): string {
  if (!text.includes(from)) throw new Error(`no ${from} in the snippet`);
  return text.replace(from, to);
}

const handlerMain = `int main(void) {\n  EICRA = _BV(ISC01);\n  sei();\n  command(0xF4);\n${listens}}\n`;

ruleTests(ackIgnored, {
  wrong: {
    "registers, nobody looks at what command gives": {
      "main.c": changed(
        registers({}, enable),
        "  mouse_send(value);\n",
        "  mouse_send(value);\n//^^^^^^^^^^^^^^^^^ ps2/ack-ignored: 0xFA\n",
      ),
    },
    "a sketch": {
      "mouse.ino": changed(
        sketch({}, enableSketch),
        "  sendByte(value);\n",
        "  sendByte(value);\n//^^^^^^^^^^^^^^^ ps2/ack-ignored\n",
      ),
    },
    "macros, and 250 ms of something else": {
      "tiny.c": changed(
        changed(pasted({}, enable), "  send(byte);\n", "  send(byte);\n//^^^^^^^^^^ ps2/ack-ignored\n"),
        "  command(0xF4);\n",
        "  command(0xF4);\n  _delay_ms(250);\n",
      ),
    },
    "a class": {
      "mouse.ino": changed(
        classBased({}, enableSketch),
        "    send(value);\n",
        "    send(value);\n  //^^^^^^^^^^^ ps2/ack-ignored\n",
      ),
    },
    "sent by the handler": {
      "main.c": changed(
        interruptDriven({}, handlerMain),
        "  start_sending(byte);\n",
        "  start_sending(byte);\n//^^^^^^^^^^^^^^^^^^^ ps2/ack-ignored\n",
      ),
    },
    "answers are counted only": {
      ...queuedC,
      "main.c": changed(
        queuedC["main.c"],
        "  ps2_start_sending(step->byte);\n",
        "  ps2_start_sending(step->byte);\n//^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ ps2/ack-ignored\n",
      ),
    },
  },
  right: {
    "compared in the wrapper": {
      "main.c": changed(registers({}, enable), "  return reply();\n", "  return reply() == 0xFA;\n"),
    },
    "asked for again": {
      "mouse.ino": changed(
        sketch({}, enableSketch),
        "  sendByte(value);\n  return reply();\n",
        "  byte answer;\n  do {\n    sendByte(value);\n    answer = reply();\n  } while (answer == 0xFE);\n  return answer;\n",
      ),
    },
    "an enumerator in a switch": {
      "main.c": changed(
        changed(
          registers({}, enable),
          "  return reply();\n",
          "  switch (reply()) {\n    case TAKEN:\n      return 1;\n    default:\n      return 0;\n  }\n",
        ),
        "#define CLOCK",
        "enum answer { TAKEN = 0xFA };\n#define CLOCK",
      ),
    },
    "a class constant": {
      "mouse.ino": changed(
        changed(classBased({}, enableSketch), "    return receive();\n", "    return receive() == ACK;\n"),
        "class Mouse {\npublic:\n",
        "class Mouse {\npublic:\n  static const uint8_t ACK = 0xFA;\n",
      ),
    },
    "a function that is told what to expect": {
      "main.c": changed(
        interruptDriven({}, handlerMain),
        "  return reply();\n}\n",
        "  return expect(0xFA);\n}\n",
      ).replace(
        "static uint8_t command(",
        "static uint8_t expect(uint8_t wanted) { return reply() == wanted; }\n\nstatic uint8_t command(",
      ),
    },
    "a table of answers": {
      "main.c": changed(
        registers({}, enable),
        "  return reply();\n",
        "  for (uint8_t i = 0; i < 2; i++) {\n    if (reply() != answers[i]) {\n      return 0;\n    }\n  }\n  return 1;\n",
      ).replace("#define CLOCK", "static const uint8_t answers[] = {0xFA, 0xAA};\n#define CLOCK"),
    },
    "a library, which may look itself": {
      "mouse.ino":
        "#include <PS2Mouse.h>\nPS2Mouse mouse(2, 3);\nvoid setup() { mouse.write(0xFF); mouse.write(0xF4); }\nvoid loop() {}\n",
    },
  },
});
