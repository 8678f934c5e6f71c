#include "SerialMouse.h"

void SerialMouse::begin() {
  pinMode(rtsPin, INPUT);
  port.begin(1200, SERIAL_7N2);
}

void SerialMouse::add(const Steps &steps) {
  if (length > 0 && (length == MOST || sameButtons(waiting[length - 1], steps))) {
    Steps &last = waiting[length - 1];
    int right = last.right + steps.right;
    int up = last.up + steps.up;
    last = steps;
    last.right = right;
    last.up = up;
  } else {
    waiting[length++] = steps;
  }
}

void SerialMouse::update() {
  bool on = isOn();
  if (on && !wasOn) {
    length = 0;
    told = {0, 0, false, false};
    introduce(port);
  }
  wasOn = on;
  if (!on || length == 0 || !lineIsFree()) {
    return;
  }
  Steps &next = waiting[0];
  int8_t right = constrain(next.right, -127, 127);
  int8_t up = constrain(next.up, -127, 127);
  if (right != 0 || up != 0 || !sameButtons(next, told)) {
    uint8_t report[LONGEST];
    uint8_t bytes = fill(report, right, -up, next.leftButton, next.rightButton);
    port.write(report, bytes);
    told = next;
    next.right -= right;
    next.up -= up;
  }
  if (next.right == 0 && next.up == 0) {
    length--;
    for (uint8_t i = 0; i < length; i++) {
      waiting[i] = waiting[i + 1];
    }
  }
}

// @wire encodes two-button from x=right y=down left=leftButton right=rightButton into report
uint8_t TwoButtonMouse::fill(uint8_t *report, int8_t right, int8_t down, bool leftButton, bool rightButton) {
  report[0] = 0x40;
  bitWrite(report[0], 5, leftButton);
  bitWrite(report[0], 4, rightButton);
  report[0] |= (down >> 4) & 0x0C;
  report[0] |= (right >> 6) & 0x03;
  report[1] = right & 0x3F;
  report[2] = down & 0x3F;
  return 3;
}
