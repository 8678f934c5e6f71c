#pragma once

#include <stdint.h>

namespace ticks {

void begin();

// Milliseconds since power-on, counted round.
uint16_t now();

}  // namespace ticks

// So long something may take, from its making on.
class Deadline {
 public:
  explicit Deadline(uint16_t ms) : since(ticks::now()), length(ms) {}
  bool isOver() const { return static_cast<uint16_t>(ticks::now() - since) > length; }

 private:
  const uint16_t since;
  const uint16_t length;
};
