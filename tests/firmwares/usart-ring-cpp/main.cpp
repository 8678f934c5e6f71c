// The Ferry for the children's corner of the reading room: an ATmega2560 that was left over, a wheel mouse, and a PC
// that has a use for the wheel. Sending runs by itself, from a ring that the USART's interrupt empties.

#include "journey.h"
#include "mouse.h"
#include "port.h"
#include "ticks.h"
#include "uart.h"

#include <avr/interrupt.h>
#include <avr/io.h>

namespace {

Journey journey;
volatile bool wasAsked = false;

// RTS comes through an inverting level shifter.
bool rtsIsOn() {
  return !(PINK & _BV(PK0));
}

void introduce() {
  static const uint8_t words[] = {'M', 'Z', '@', 0, 0, 0};
  uart::clear();
  journey.forget();
  for (const uint8_t word : words) {
    uart::write(word);
  }
}

void servePc() {
  const bool isOn = rtsIsOn();
  if (wasAsked) {
    wasAsked = false;
    introduce();
    return;
  }
  uint8_t report[4];
  if (!isOn || !uart::isIdle() || !journey.next(report)) {
    return;
  }
  for (const uint8_t byte : report) {
    uart::write(byte);
  }
}

Mouse mouse(servePc);

}  // namespace

ISR(PCINT2_vect) {
  if (rtsIsOn()) {
    wasAsked = true;
  }
}

int main() {
  ticks::begin();
  uart::begin();
  port::begin();
  PCMSK2 = _BV(PCINT16);
  PCICR = _BV(PCIE2);
  sei();
  for (;;) {
    Movement movement;
    if (mouse.poll(movement)) {
      journey.add(movement);
    }
    servePc();
  }
}
