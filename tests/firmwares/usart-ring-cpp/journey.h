#pragma once

#include "mouse.h"

// Movements on their way to the PC, added up as long as the buttons stay as they are.
class Journey {
 public:
  void add(const Movement &movement);

  // The next report, 4 bytes; false when there is nothing that the PC does not know.
  bool next(uint8_t *report);
  void forget();

 private:
  static constexpr uint8_t most = 12;

  struct Leg {
    int16_t x;
    int16_t y;
    int16_t wheel;
    uint8_t buttons;

    bool isDone() const { return x == 0 && y == 0 && wheel == 0; }
  };

  Leg legs[most];
  uint8_t count = 0;
  uint8_t told = 0;
};
