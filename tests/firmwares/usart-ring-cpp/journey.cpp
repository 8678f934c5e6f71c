#include "journey.h"

namespace {

template <typename Number>
Number clamp(Number value, Number least, Number largest) {
  return value < least ? least : value > largest ? largest : value;
}

// y grows downwards for the PC.
// @wire encodes wheel from x=x y=-y wheel=wheel left=buttons.0 right=buttons.1 middle=buttons.2 into report
void build(uint8_t *report, int8_t x, int8_t y, int8_t wheel, uint8_t buttons) {
  const uint8_t right = static_cast<uint8_t>(x);
  const uint8_t down = static_cast<uint8_t>(-y);
  report[0] = 0x40 | (buttons & 1) << 5 | (buttons & 2) << 3 | (down >> 6) << 2 | right >> 6;
  report[1] = right & 0x3F;
  report[2] = down & 0x3F;
  report[3] = (buttons & 4) << 2 | (wheel & 0x0F);
}

}  // namespace

void Journey::add(const Movement &movement) {
  if (count == 0 || (legs[count - 1].buttons != movement.buttons && count < most)) {
    legs[count++] = {0, 0, 0, movement.buttons};
  }
  Leg &last = legs[count - 1];
  last.x += movement.x;
  last.y += movement.y;
  last.wheel += movement.wheel;
  last.buttons = movement.buttons;
}

bool Journey::next(uint8_t *report) {
  if (count == 0) {
    return false;
  }
  Leg &first = legs[0];
  const bool hasNews = !first.isDone() || first.buttons != told;
  const int16_t x = clamp<int16_t>(first.x, -127, 127);
  const int16_t y = clamp<int16_t>(first.y, -127, 127);
  const int16_t wheel = clamp<int16_t>(first.wheel, -8, 7);
  build(report, x, y, wheel, first.buttons);
  told = first.buttons;
  first.x -= x;
  first.y -= y;
  first.wheel -= wheel;
  if (first.isDone()) {
    count--;
    for (uint8_t i = 0; i < count; i++) {
      legs[i] = legs[i + 1];
    }
  }
  return hasNews;
}

void Journey::forget() {
  count = 0;
  told = 0;
}
