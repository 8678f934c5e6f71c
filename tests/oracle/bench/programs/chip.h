/* Pins and registers of one chip under names that the programs share. */
#include <avr/interrupt.h>
#include <avr/io.h>
#include <avr/sleep.h>
#include <avr/wdt.h>

#if defined(__AVR_ATtiny25__) || defined(__AVR_ATtiny45__) || defined(__AVR_ATtiny85__)
#define CLOCK_INT_vect INT0_vect
#define ENABLE_CLOCK_INT() do { MCUCR |= _BV(ISC01); GIMSK |= _BV(INT0); } while (0)
#define CLOCK_BIT PB2
#define DATA_IN (PINB & _BV(PB0))
#define TX_DDR DDRB
#define TX_PORT PORTB
#define TX_BIT PB4
#define RTS_IN (PINB & _BV(PB3))
#define RTS_vect PCINT0_vect
#define ENABLE_RTS_INT() do { PCMSK = _BV(PCINT3); GIMSK |= _BV(PCIE); } while (0)
#define TIMSK0 TIMSK
#elif defined(__AVR_ATmega32U4__)
#define CLOCK_INT_vect INT0_vect
#define ENABLE_CLOCK_INT() do { EICRA = _BV(ISC01); EIMSK = _BV(INT0); } while (0)
#define DATA_IN (PIND & _BV(PD1))
#define TX_DDR DDRD
#define TX_PORT PORTD
#define TX_BIT PD3
#define RTS_IN (PINB & _BV(PB4))
#define RTS_vect PCINT0_vect
#define ENABLE_RTS_INT() do { PCMSK0 = _BV(PCINT4); PCICR = _BV(PCIE0); } while (0)
#define UBRR UBRR1
#define UCSRA UCSR1A
#define UCSRB UCSR1B
#define UCSRC UCSR1C
#define UDR UDR1
#define UDRE UDRE1
#define TXEN TXEN1
#define SEVEN_BITS _BV(UCSZ11)
#elif defined(__AVR_ATmega2560__)
#define CLOCK_INT_vect INT4_vect
#define ENABLE_CLOCK_INT() do { EICRB = _BV(ISC41); EIMSK = _BV(INT4); } while (0)
#define DATA_IN (PINE & _BV(PE5))
#define TX_DDR DDRE
#define TX_PORT PORTE
#define TX_BIT PE1
#define RTS_IN (PINJ & _BV(PJ0))
#define RTS_vect PCINT1_vect
#define ENABLE_RTS_INT() do { PCMSK1 = _BV(PCINT9); PCICR = _BV(PCIE1); } while (0)
#else
#define CLOCK_INT_vect INT0_vect
#define ENABLE_CLOCK_INT() do { EICRA = _BV(ISC01); EIMSK = _BV(INT0); } while (0)
#define DATA_IN (PIND & _BV(PD3))
#define TX_DDR DDRD
#define TX_PORT PORTD
#define TX_BIT PD1
#define RTS_IN (PIND & _BV(PD4))
#define RTS_vect PCINT2_vect
#define ENABLE_RTS_INT() do { PCMSK2 = _BV(PCINT20); PCICR = _BV(PCIE2); } while (0)
#endif

#if defined(UDR0)
#define UBRR UBRR0
#define UCSRA UCSR0A
#define UCSRB UCSR0B
#define UCSRC UCSR0C
#define UDR UDR0
#define UDRE UDRE0
#define TXEN TXEN0
#define SEVEN_BITS _BV(UCSZ01)
#endif

#define ONE_BIT(level, cycles)                        \
  do {                                                \
    if (level) TX_PORT |= _BV(TX_BIT);                \
    else TX_PORT &= ~_BV(TX_BIT);                     \
    __builtin_avr_delay_cycles((cycles) - 2);         \
  } while (0)
