import { parityWrong } from "../../../../src-core/checks/ps2/parity-wrong.ts";
import { ruleTests } from "../harness.ts";
import { classBased, interruptDriven, listens, pasted, registers, sketch } from "./hosts.ts";

// Data and parity together have an odd number of ones: The PS/2 Mouse/Keyboard Protocol (2003), Host-to-Device; bit
// table of Auxiliary Device and System Timings. F4 has five ones, so its parity bit is 0; FF has eight, so it is 1.

const enable = `int main(void) {
  command(0xF4);
${listens}}
`;
const enableSketch = "void setup() { command(0xF4); }\nvoid loop() { reply(); }\n";

/** The text with `from` replaced; it has to be there. */
function changed(text: string, from: string, to: string): string {
  if (!text.includes(from)) throw new Error(`no ${from} in the snippet`);
  return text.replace(from, to);
}

const marked = (text: string): string =>
  changed(text, "  put(parity);\n", "  put(parity);\n//^^^^^^^^^^^ ps2/parity-wrong: 0xF4\n");

ruleTests(parityWrong, {
  wrong: {
    "an even start, registers": {
      "main.c": marked(changed(registers({}, enable), "uint8_t parity = 1;", "uint8_t parity = 0;")),
    },
    "an even start, a sketch": {
      "mouse.ino": changed(
        changed(sketch({}, enableSketch), "byte parity = 1;", "byte parity = 0;"),
        "  if (parity) letGo(DAT); else pullLow(DAT);\n",
        "  if (parity) letGo(DAT); else pullLow(DAT);\n  //          ^^^^^^^^^^ ps2/parity-wrong: 0xF4 is sent with parity bit 1\n",
      ),
    },
    "the wrong way round, macros": {
      "tiny.c": changed(
        pasted({}, enable),
        "  if (odd) LET_GO(DATA); else PULL(DATA);\n",
        "  if (odd) PULL(DATA); else LET_GO(DATA);\n  //                        ^^^^^^^^^^^^ ps2/parity-wrong\n",
      ),
    },
    "a class": {
      "mouse.ino": changed(
        changed(classBased({}, enableSketch), "bool odd = true;", "bool odd = false;"),
        "    if (odd) {\n      high(data_);\n",
        "    if (odd) {\n      high(data_);\n    //^^^^^^^^^^^ ps2/parity-wrong\n",
      ),
    },
    "a function that tells whether the ones are odd": {
      "main.c": changed(
        changed(
          changed(
            registers({}, enable),
            "  put(parity);\n",
            "  put(odd_ones(byte));\n//^^^^^^^^^^^^^^^^^^^ ps2/parity-wrong\n",
          ),
          "  uint8_t parity = 1;\n",
          "  uint8_t byte = value;\n",
        ),
        "    parity ^= value & 1;\n",
        "",
      ).replace(
        "void mouse_send(",
        "static uint8_t odd_ones(uint8_t value) {\n  value ^= value >> 4;\n  value ^= value >> 2;\n  value ^= value >> 1;\n  return value & 1;\n}\n\nvoid mouse_send(",
      ),
    },
    "counted ones": {
      "main.c": changed(
        changed(
          changed(
            registers({}, enable),
            "  put(parity);\n",
            "  put(ones & 1);\n//^^^^^^^^^^^^^ ps2/parity-wrong: odd\n",
          ),
          "  uint8_t parity = 1;\n",
          "  uint8_t ones = 0;\n",
        ),
        "    parity ^= value & 1;\n",
        "    if (value & 1) {\n      ones++;\n    }\n",
      ),
    },
    "always 1": {
      "main.c": changed(
        changed(registers({}, enable), "  put(parity);\n", "  put(1);\n//^^^^^^ ps2/parity-wrong\n"),
        "    parity ^= value & 1;\n",
        "",
      ),
    },
  },
  right: {
    registers: { "main.c": registers({}, enable) },
    "a sketch": { "mouse.ino": sketch({}, enableSketch) },
    macros: { "tiny.c": pasted({}, enable) },
    "a class": { "mouse.ino": classBased({}, enableSketch) },
    "an even start, turned over at the end": {
      "main.c": changed(
        changed(registers({}, enable), "uint8_t parity = 1;", "uint8_t parity = 0;"),
        "put(parity)",
        "put(!parity)",
      ),
    },
    "counted ones": {
      "main.c": changed(
        changed(
          changed(registers({}, enable), "put(parity)", "put((ones & 1) == 0)"),
          "  uint8_t parity = 1;\n",
          "  uint8_t ones = 0;\n",
        ),
        "    parity ^= value & 1;\n",
        "    ones += value & 1;\n",
      ),
    },
    "by the handler, which is not followed bit by bit": {
      "main.c": interruptDriven({}, `int main(void) {\n  sei();\n  command(0xF4);\n${listens}}\n`),
    },
    "a parity that is not known": {
      "main.c": changed(
        changed(
          registers({}, enable),
          "  put(parity);\n",
          "  low(DATA);\n  if (parity_of(byte)) release(DATA);\n",
        ),
        "  uint8_t parity = 1;\n",
        "  uint8_t parity = 1, byte = value;\n",
      ).replace("void mouse_send(", "uint8_t parity_of(uint8_t value);\n\nvoid mouse_send("),
    },
    "a byte that is not known": {
      "main.c": changed(
        registers({}, "volatile uint8_t wish;\nint main(void) {\n  command(wish);\n  for (;;) reply();\n}\n"),
        "uint8_t parity = 1;",
        "uint8_t parity = 1; /* FF and F4 alike */",
      ),
    },
  },
});
