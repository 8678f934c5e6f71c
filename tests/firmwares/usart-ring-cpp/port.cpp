#include "port.h"
#include "ring.h"
#include "ticks.h"

#include <avr/interrupt.h>
#include <avr/io.h>
#include <util/delay.h>

namespace {

// A line of the port.
template <uint8_t Bit>
struct Line {
  static void low() {
    PORTE &= ~_BV(Bit);
    DDRE |= _BV(Bit);
  }
  static void release() {
    DDRE &= ~_BV(Bit);
    PORTE |= _BV(Bit);
  }
  static bool isHigh() { return PINE & _BV(Bit); }
};

using Clock = Line<PE4>;
using Data = Line<PE5>;

// A mouse starts clocking 15 ms after the request at the latest, and takes 2 ms for a byte.
constexpr uint16_t sendTimeout = 18;
// Milliseconds after which a byte that has begun will not be completed any more.
constexpr uint16_t byteTimeout = 2;

Ring<uint8_t, 32> received;
volatile uint8_t position = 0;
volatile uint8_t shift = 0;
volatile bool odd = false;
volatile bool disturbed = false;
volatile uint16_t began = 0;

void listen() {
  position = 0;
  EIFR = _BV(INTF4);
  EIMSK |= _BV(INT4);
}

bool waitForClock(bool high, const Deadline &deadline) {
  while (Clock::isHigh() != high) {
    if (deadline.isOver()) {
      return false;
    }
  }
  return true;
}

// The mouse looks at data while the clock is high: the bit changes while it is low.
bool sendBit(bool bit, const Deadline &deadline) {
  if (!waitForClock(false, deadline)) {
    return false;
  }
  if (bit) {
    Data::release();
  } else {
    Data::low();
  }
  return waitForClock(true, deadline);
}

bool sendFrame(uint8_t byte) {
  const Deadline deadline(sendTimeout);
  bool parity = true;
  for (uint8_t i = 0; i < 8; i++) {
    const bool bit = byte & 1;
    parity ^= bit;
    byte >>= 1;
    if (!sendBit(bit, deadline)) {
      return false;
    }
  }
  if (!sendBit(parity, deadline) || !sendBit(true, deadline) || !waitForClock(false, deadline)) {
    return false;
  }
  const bool acknowledged = !Data::isHigh();
  return waitForClock(true, deadline) && acknowledged;
}

}  // namespace

ISR(INT4_vect) {
  const bool bit = Data::isHigh();
  const uint16_t now = ticks::now();
  if (position > 0 && static_cast<uint16_t>(now - began) > byteTimeout) {
    position = 0;
  }
  switch (position) {
    case 0:
      if (bit) {
        return;
      }
      began = now;
      odd = false;
      break;
    case 9:
      odd ^= bit;
      break;
    case 10:
      position = 0;
      if (bit && odd) {
        received.put(shift);
      } else {
        disturbed = true;
      }
      return;
    default:
      shift = (shift >> 1) | (bit ? 0x80 : 0);
      odd ^= bit;
  }
  position++;
}

void port::begin() {
  Clock::release();
  Data::release();
  EICRB = _BV(ISC41);  // falling edge
  listen();
}

bool port::send(uint8_t byte) {
  EIMSK &= ~_BV(INT4);
  Clock::low();
  _delay_us(125);
  Data::low();
  Clock::release();
  const bool sent = sendFrame(byte);
  Data::release();
  listen();
  return sent;
}

bool port::hasByte() {
  return !received.isEmpty();
}

uint8_t port::read() {
  return received.take();
}

void port::forget() {
  received.clear();
  disturbed = false;
}

bool port::wasDisturbed() {
  const bool was = disturbed;
  disturbed = false;
  return was;
}
