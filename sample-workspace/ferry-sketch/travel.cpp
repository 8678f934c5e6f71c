#include "travel.h"

void Travel::add(const Movement &movement) {
  if (length > 0 && (length == QUEUE_SIZE || sameButtons(entry(length - 1), movement))) {
    Movement &last = entry(length - 1);
    last.dx += movement.dx;
    last.dy += movement.dy;
    last.wheel += movement.wheel;
    last.left = movement.left;
    last.right = movement.right;
    last.middle = movement.middle;
    return;
  }
  entry(length) = movement;
  length++;
}

// The serial report counts y downwards, the mouse upwards.
// @wire encodes wheel from x=dx y=-dy left=left right=right middle=middle wheel=wheel into report
// @wire try right=12 down=5 press=left
static void buildReport(uint8_t report[4], int8_t dx, int8_t dy, int8_t wheel, bool left, bool right, bool middle) {
  uint8_t x = dx;
  uint8_t y = -dy;
  report[0] = 0x40 | (left ? 0x20 : 0) | (right ? 0x10 : 0) | ((y >> 4) & 0x0C) | (x >> 6);
  report[1] = x & 0x3F;
  report[2] = y & 0x3F;
  report[3] = (middle ? 0x10 : 0) | (wheel & 0x0F);
}

bool Travel::take(uint8_t report[4]) {
  if (length == 0) {
    return false;
  }
  Movement &next = entry(0);
  int8_t dx = constrain(next.dx, -127, 127);
  int8_t dy = constrain(next.dy, -127, 127);
  int8_t wheel = constrain(next.wheel, -8, 7);
  bool news = dx != 0 || dy != 0 || wheel != 0 || !sameButtons(next, sent);
  if (news) {
    buildReport(report, dx, dy, wheel, next.left, next.right, next.middle);
    sent = next;
    next.dx -= dx;
    next.dy -= dy;
    next.wheel -= wheel;
  }
  if (next.dx == 0 && next.dy == 0 && next.wheel == 0) {
    first = (first + 1) % QUEUE_SIZE;
    length--;
  }
  return news;
}

void Travel::forget() {
  length = 0;
  sent = {0, 0, 0, false, false, false};
}
