#include "Ps2Wires.h"

void Ps2Wires::begin() {
  clock.release();
  data.release();
}

void Ps2Wires::clockFell() {
  bool bit = data.isHigh();
  if (busy) {
    return;
  }
  unsigned long now = micros();
  if (position > 0 && now - began > LONGEST_FRAME_US) {
    position = 0;
  }
  if (position == 0) {
    if (bit) {
      return;  // no start bit
    }
    began = now;
    parity = false;
  } else if (position < 9) {
    value = (value >> 1) | (bit ? 0x80 : 0);
    parity ^= bit;
  } else if (position == 9) {
    parity ^= bit;
  } else {
    position = 0;
    if (bit && parity && count < CAPACITY) {
      bytes[(first + count) % CAPACITY] = value;
      count++;
    }
    return;
  }
  position++;
}

uint8_t Ps2Wires::read() {
  noInterrupts();
  uint8_t byte = bytes[first];
  first = (first + 1) % CAPACITY;
  count--;
  interrupts();
  return byte;
}

void Ps2Wires::clear() {
  noInterrupts();
  count = 0;
  position = 0;
  interrupts();
}

bool Ps2Wires::awaitClock(bool high) {
  for (unsigned int looks = 0; looks < PATIENCE; looks++) {
    if (clock.isHigh() == high) {
      return true;
    }
  }
  return false;
}

bool Ps2Wires::writeBit(bool bit) {
  if (!awaitClock(false)) {
    return false;
  }
  if (bit) {
    data.release();
  } else {
    data.pullLow();
  }
  return awaitClock(true);
}

bool Ps2Wires::writeFrame(uint8_t byte) {
  bool odd = true;
  for (uint8_t i = 0; i < 8; i++) {
    if (bitRead(byte, i)) {
      odd = !odd;
    }
    if (!writeBit(bitRead(byte, i))) {
      return false;
    }
  }
  if (!writeBit(odd) || !writeBit(true) || !awaitClock(false)) {
    return false;
  }
  bool taken = !data.isHigh();
  return awaitClock(true) && taken;
}

bool Ps2Wires::write(uint8_t byte) {
  busy = true;
  clock.pullLow();
  delayMicroseconds(150);
  data.pullLow();
  noInterrupts();
  clock.release();
  bool taken = writeFrame(byte);
  data.release();
  interrupts();
  clear();
  busy = false;
  return taken;
}
