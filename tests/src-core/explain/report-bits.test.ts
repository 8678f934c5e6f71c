import { describe } from "vitest";
import { hoverTests, sampleScene, sceneOf, silenceTests } from "./scene.ts";

// Bits of the two-button report: mouse(4), table of the three-byte packet. Of the PS/2 report: ADNK-5023 design manual,
// p. 8. Of the five-byte report: mouse(4), five-byte packet: 1 0 0 0 0 ~left ~middle ~right.
describe("masks and shifts of an encoder", () => {
  hoverTests(sampleScene("ferry-c"), "report.c", [
    [
      "out[0] = 0x4§0 | (left",
      "byte 1 of a two-button report: 1",
      "bit  6  5     4      3   2   1   0",
      "     ^",
    ],
    ["(left ? 0x§20 : 0)", "byte 1 of a two-button report: left"],
    ["(right ? 0x1§0 : 0)", "byte 1 of a two-button report: right"],
    ["((y >> 4) & 0x§0C)", "byte 1 of a two-button report: y7 y6", "is   1  left  right  y7  y6  x7  x6"],
    ["((y >§> 4) & 0x0C)", "byte 1 of a two-button report: y7 y6"],
    ["| (x >> §6)", "byte 1 of a two-button report: x7 x6"],
    ["out[1] = x & 0§x3F", "byte 2 of a two-button report: x5 x4 x3 x2 x1 x0"],
    ["out§[2] = y & 0x3F", "byte 3 of a two-button report: y5 y4 y3 y2 y1 y0"],
  ]);
  silenceTests(sampleScene("ferry-c"), "report.c", ["(le§ft ? 0x20", "| (§x >> 6)"]);
});

describe("masks of a decoder", () => {
  hoverTests(sampleScene("ferry-c"), "ps2.c", [
    ["(bytes[0] & 0x§10) ? 256", "byte 1 of a ps2-standard report: x8"],
    ["(bytes[0] & 0x2§0) ? 256", "byte 1 of a ps2-standard report: y8"],
    ["out->left = bytes[0] & 0x§01", "byte 1 of a ps2-standard report: left"],
    ["out->right = bytes[0] & 0x§02", "byte 1 of a ps2-standard report: right"],
  ]);
});

describe("bytes that are sent one by one", () => {
  const scene = sceneOf({
    "mouse.ino": `// @wire board atmega328p clock=16MHz
void put(uint8_t value) { Serial.write(value); }
// @wire encodes five-byte from x=dx y=dy left=l right=r middle=m into put
void report(int8_t dx, int8_t dy, bool l, bool r, bool m) {
  put(0x80 | (l ? 0 : 4) | (m ? 0 : 2) | !r);
  put(dx);
  put(dy);
  put(0);
  put(0);
}
// @wire decodes ps2-wheel from b into x=x y=y wheel=z
void take(const uint8_t b[4], int &x, int &y, int8_t &z) {
  x = b[1] - (b[0] << 4 & 0x100);
  y = b[2] - (b[0] << 3 & 0x100);
  z = b[3] & 8 ? b[3] | 0xF0 : b[3] & 7;
}
void setup() {}
void loop() {}
`,
  });
  hoverTests(scene, "mouse.ino", [
    ["put(0x§80", "byte 1 of a five-byte report: 1"],
    ["(l ? 0 : §4)", "byte 1 of a five-byte report: ~left"],
    ["(m ? 0 : §2)", "byte 1 of a five-byte report: ~middle"],
    ["(b[0] << 4 & 0x§100)", "byte 1 of a ps2-wheel report: x8"],
    ["(b[0] <§< 3 & 0x100)", "byte 1 of a ps2-wheel report: y8"],
    ["b[3] & §8 ?", "byte 4 of a ps2-wheel report: wheel3"],
    ["b[3] & §7;", "byte 4 of a ps2-wheel report: wheel2 wheel1 wheel0"],
  ]);
});
