import type { Snippets } from "../../harness.ts";

/**
 * Encoders that clip nothing: whether a movement wraps is up to who calls them. Limits as in the snippets of encoders that stand
 * by themselves.
 */
export const clippedByCallersSnippets: Snippets = {
  wrong: {
    "two-button: one of two callers keeps to the limits": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
struct movement {
  int16_t dx, dy;
  uint8_t buttons;
};
struct movement waiting;
uint8_t sent[3];
static int16_t clip(int16_t v) { return v > 127 ? 127 : v < -127 ? -127 : v; }
// @wire encodes two-button from x=m->dx y=m->dy left=m->buttons.0 right=m->buttons.1 into out
static void encode(const struct movement *m, uint8_t *out) {
  out[0] = 0x40 | (m->buttons & 1) << 5 | (m->buttons & 2) << 3 | (m->dy & 0xC0) >> 4 | (m->dx & 0xC0) >> 6;
  out[1] = m->dx & 0x3F;
  //       ^^^^^^^^^^^^ report/clip-missing
  out[2] = m->dy & 0x3F;
}
void flush(void) {
  struct movement part;
  part.dx = waiting.dx;
  part.dy = clip(waiting.dy);
  part.buttons = waiting.buttons;
  encode(&part, sent);
}
void turn(void) {
  struct movement part = {clip(waiting.dx), clip(waiting.dy), waiting.buttons};
  encode(&part, sent);
}
`,
    },
    "two-button: callers keep to limits that are too wide": {
      "main.ino": `
// @wire board atmega328p clock=16MHz
int sumX, sumY;
void sendByte(byte value) { Serial.write(value); }
// @wire encodes two-button from x=x y=-y left=b.0 right=b.1 into sendByte
void report(int x, int y, byte b) {
  sendByte(0x40 | (b & 1) << 5 | (b & 2) << 3 | (-y & 0xC0) >> 4 | (x & 0xC0) >> 6);
  sendByte(x & 0x3F);
  //       ^^^^^^^^ report/clip-missing
  sendByte(-y & 0x3F);
}
void loop() {
  int x = constrain(sumX, -255, 255);
  int y = constrain(sumY, -127, 127);
  report(x, y, 0);
  sumX -= x;
  sumY -= y;
}
`,
    },
    "two-button: what was kept to the limits is counted on before the call": {
      "main.ino": `
// @wire board atmega328p clock=16MHz
int sumX, sumY;
void sendByte(byte value) { Serial.write(value); }
// @wire encodes two-button from x=x y=-y left=b.0 right=b.1 into sendByte
void report(int x, int y, byte b) {
  sendByte(0x40 | (b & 1) << 5 | (b & 2) << 3 | (-y & 0xC0) >> 4 | (x & 0xC0) >> 6);
  sendByte(x & 0x3F);
  //       ^^^^^^^^ report/clip-missing
  sendByte(-y & 0x3F);
}
void loop() {
  int x = constrain(sumX, -127, 127);
  int y = constrain(sumY, -127, 127);
  if (digitalRead(4) == LOW) x *= 2;
  report(x, y, 0);
}
`,
    },
  },
  right: {
    "two-button: the only caller keeps to the limits by a function": {
      "main.cpp": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
#define min(a, b) ((a) < (b) ? (a) : (b))
#define max(a, b) ((a) > (b) ? (a) : (b))
struct Movement {
  int16_t right, up;
  uint8_t buttons;
};
constexpr int16_t most = 127;
static int16_t limit(int16_t v) { return max(-most, min(most, v)); }
Movement waiting[4];
uint8_t first;
uint8_t bytes[3];
// @wire encodes two-button from x=m.right y=-m.up left=m.buttons.0 right=m.buttons.1 into out
static void render(uint8_t (&out)[3], const Movement &m) {
  const uint8_t x = m.right & 0xFF;
  const uint8_t y = -m.up & 0xFF;
  out[0] = 0x40 | (m.buttons & 1) << 5 | (m.buttons & 2) << 3 | (y >> 6) << 2 | x >> 6;
  out[1] = x & 0x3F;
  out[2] = y & 0x3F;
}
void deliver() {
  Movement &next = waiting[first];
  const Movement part = {limit(next.right), limit(next.up), next.buttons};
  next.right -= part.right;
  next.up -= part.up;
  render(bytes, part);
}
`,
    },
    "wheel: the only caller keeps members to the limits": {
      "main.ino": `
// @wire board atmega328p clock=16MHz
struct Motion {
  int16_t x = 0, y = 0;
  int8_t z = 0;
  byte buttons = 0;
};
Motion pending[10];
byte bytes[4];
// @wire encodes wheel from x=m.x y=-m.y left=m.buttons.0 right=m.buttons.1 middle=m.buttons.2 wheel=m.z into out
void encode(const Motion &m, byte (&out)[4]) {
  const byte x = lowByte(m.x), y = lowByte(-m.y);
  out[0] = 0x40 | (m.buttons & 1) << 5 | (m.buttons & 2) << 3 | (y >> 6) << 2 | x >> 6;
  out[1] = x & 0x3F;
  out[2] = y & 0x3F;
  out[3] = (m.z & 0x0F) | (m.buttons & 4 ? 0x10 : 0);
}
void pump() {
  Motion piece;
  Motion &head = pending[0];
  piece.x = constrain(head.x, -127, 127);
  piece.y = constrain(head.y, -127, 127);
  piece.z = constrain(head.z, -7, 7);
  piece.buttons = head.buttons;
  head.x -= piece.x;
  head.y -= piece.y;
  if (piece.x || piece.y || piece.z) encode(piece, bytes);
}
`,
    },
    "two-button: long movements go out in several reports": {
      "main.c": `
// @wire board atmega328p clock=16MHz
#include <stdint.h>
void send_byte(uint8_t byte);
// @wire encodes two-button from x=dx y=dy left=b.0 right=b.1 into send_byte
static void send_report(int16_t dx, int16_t dy, uint8_t b) {
  send_byte(0x40 | (b & 1) << 5 | (b & 2) << 3 | (dy & 0xC0) >> 4 | (dx & 0xC0) >> 6);
  send_byte(dx & 0x3F);
  send_byte(dy & 0x3F);
}
void send_movement(int16_t dx, int16_t dy, uint8_t b) {
  if (dy > 127) dy = 127;
  if (dy < -127) dy = -127;
  while (dx > 127) {
    send_report(127, 0, b);
    dx -= 127;
  }
  while (dx < -127) {
    send_report(-127, 0, b);
    dx += 127;
  }
  if (dx > 127) return;
  send_report(dx, dy, b);
}
`,
    },
  },
};
