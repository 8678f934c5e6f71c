import { unattached } from "../../../../src-core/checks/note/unattached.ts";
import { ruleTests } from "../harness.ts";

// What a note belongs to is our own definition: the declaration below it or on its line.

ruleTests(unattached, {
  wrong: {
    "the end of the file": {
      "main.c": `
// @wire board atmega328p clock=16MHz
int main(void) { return 0; }
// @wire means ps2.request-hold
// ^^^^^^^^^^^^^^^^^^^^^^^^^^^^ note/unattached: nothing follows
`,
    },
    "a function where a constant is wanted": {
      "main.c": `
// @wire board atmega328p clock=16MHz
// @wire means ps2.request-hold
// ^^^^^^^^^^^^^^^^^^^^^^^^^^^^ note/unattached: main
int main(void) { return 0; }
`,
    },
    "a constant where a function is wanted": {
      "main.c": `
// @wire board atmega328p clock=16MHz
// @wire try right=12
// ^^^^^^^^^^^^^^^^^^ note/unattached: COUNTS
enum { COUNTS = 12 };
int main(void) { return 0; }
`,
    },
  },
  right: {
    "notes in groups that are skipped": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#ifdef SLOW
// @wire means ps2.request-hold
#endif
int main(void) { return 0; }
`,
    },
  },
});
