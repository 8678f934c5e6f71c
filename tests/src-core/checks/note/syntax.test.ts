import { syntax } from "../../../../src-core/checks/note/syntax.ts";
import { ruleTests } from "../harness.ts";

// The grammar of wire notes is our own; these cases follow its description in the README and DEVELOPERS.md.

ruleTests(syntax, {
  wrong: {
    "a clock without its unit": {
      "main.c": `
// @wire board atmega328p clock=16
//                              ^^ note/syntax: 16MHz
int main(void) { return 0; }
`,
    },
    "an allow without a reason": {
      "main.c": `
// @wire board atmega328p clock=16MHz
// @wire allow note/unattached
//             ^^^^^^^^^^^^^^^ note/syntax: because
int main(void) { return 0; }
`,
    },
    "spaces around the equals sign": {
      "ferry.ino": `
// @wire board atmega328p clock=16MHz
// @wire ps2 clock = 2
//           ^^^^^^^^^ note/syntax: key=value
void setup() {
}
void loop() {
}
`,
    },
  },
  right: {
    "comments that only speak of notes": {
      "main.c": `
// @wire board atmega328p clock=16MHz
// The \`@wire\` notes above say what the code does not.
int main(void) { return 0; }
`,
    },
  },
});
