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
    "an include where a constant is wanted": {
      "main.c": `
// @wire board atmega328p clock=16MHz
// @wire means ps2.request-hold
// ^^^^^^^^^^^^^^^^^^^^^^^^^^^^ note/unattached: #include
#include <stdint.h>
int main(void) { return 0; }
`,
    },
    "a macro where a function is wanted": {
      "ferry.ino": `
// @wire board atmega328p clock=16MHz
// @wire decodes ps2-standard from buf into x=dx
// ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ note/unattached: SIZE
#define SIZE 3
void setup() {}
void loop() {}
`,
    },
    "a struct where a constant is wanted": {
      "main.c": `
// @wire board atmega328p clock=16MHz
// @wire means ps2.request-hold
// ^^^^^^^^^^^^^^^^^^^^^^^^^^^^ note/unattached: declares none
struct hold { int us; };
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
    "a constant below, one on its line, and one with a comment between": {
      "main.c": `
// @wire board atmega328p clock=16MHz
// @wire means ps2.request-hold
// The mouse needs some time to see it.
#define HOLD_US 120
static const int settle = 14; // @wire means serial.ident-delay
enum {
  // @wire means serial.baud
  BAUD = 1200
};
int main(void) { return 0; }
`,
    },
    "a function behind its attributes": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
// @wire try right=1
static inline __attribute__((always_inline)) void build(int8_t dx) {}
int main(void) { return 0; }
`,
    },
    "two notes for one function": {
      "ferry.ino": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
// @wire encodes two-button from x=dx y=-dy left=b.0 right=b.1 into out
// @wire try right=12
void build(int8_t dx, int8_t dy, uint8_t b, uint8_t out[3]) { out[0] = dx | dy | b; }
void setup() {}
void loop() {}
`,
    },
    "a method": {
      "ferry.ino": `
// @wire board atmega328p clock=16MHz
class Report {
 public:
  // @wire encodes two-button from x=dx y=-dy left=left right=right into bytes
  void build(int8_t dx, int8_t dy, bool left, bool right) { bytes[0] = dx | dy | left | right; }
 private:
  uint8_t bytes[3];
};
void setup() {}
void loop() {}
`,
    },
  },
});
