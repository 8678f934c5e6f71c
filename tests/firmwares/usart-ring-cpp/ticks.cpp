#include "ticks.h"

#include <avr/interrupt.h>
#include <avr/io.h>
#include <util/atomic.h>

static volatile uint16_t milliseconds = 0;

ISR(TIMER3_COMPA_vect) {
  milliseconds++;
}

void ticks::begin() {
  OCR3A = 1999;  // 16 MHz / 8 / 2000 = 1 kHz
  TCCR3B = _BV(WGM32) | _BV(CS31);
  TIMSK3 = _BV(OCIE3A);
}

uint16_t ticks::now() {
  uint16_t value = 0;
  ATOMIC_BLOCK(ATOMIC_RESTORESTATE) {
    value = milliseconds;
  }
  return value;
}
