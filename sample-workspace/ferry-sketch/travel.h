#pragma once

#include "ps2_port.h"

// Motion gathered until the slower serial line can take it. A change of the buttons opens a new entry, so that
// a short click is not lost behind the 30 ms that a report of four bytes takes on the line.
class Travel {
 public:
  void add(const Movement &movement);

  // Builds the next report; false when there is nothing to tell.
  bool take(uint8_t report[4]);
  void forget();

 private:
  static const uint8_t QUEUE_SIZE = 16;

  Movement &entry(uint8_t index) { return queue[(first + index) % QUEUE_SIZE]; }
  static bool sameButtons(const Movement &a, const Movement &b) {
    return a.left == b.left && a.right == b.right && a.middle == b.middle;
  }

  Movement queue[QUEUE_SIZE];
  uint8_t first = 0;
  uint8_t length = 0;
  Movement sent = {0, 0, 0, false, false, false};
};
