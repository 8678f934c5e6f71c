#include "uart.h"
#include "ring.h"

#include <avr/interrupt.h>
#include <avr/io.h>

static Ring<uint8_t, 16> toSend;

static constexpr uint32_t baud = 1200;

ISR(USART1_UDRE_vect) {
  UDR1 = toSend.take();
  if (toSend.isEmpty()) {
    UCSR1B &= ~_BV(UDRIE1);
  }
}

void uart::begin() {
  UBRR1 = (F_CPU + 8 * baud) / (16 * baud) - 1;
  UCSR1C = _BV(UCSZ11);  // seven bits, no parity, one stop bit
  UCSR1B = _BV(TXEN1);
}

void uart::write(uint8_t byte) {
  while (toSend.isFull()) {
  }
  toSend.put(byte);
  UCSR1B |= _BV(UDRIE1);
}

bool uart::isIdle() {
  return toSend.isEmpty();
}

void uart::clear() {
  UCSR1B &= ~_BV(UDRIE1);
  toSend.clear();
}
