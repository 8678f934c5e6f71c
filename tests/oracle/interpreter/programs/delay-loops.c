#include "port.h"
#include <avr/interrupt.h>
#include <avr/builtins.h>
#include <util/delay.h>

/* Waiting as drivers do: single instructions, counted loops, the compiler's own delay. */
static volatile uint8_t ticks;

static inline void pause(uint8_t count)
{
    __asm__ volatile ("1: dec %0" "\n\t" "brne 1b" : "=r" (count) : "0" (count));
}
static inline void wait(uint16_t count)
{
    __asm__ __volatile__ (
        "1: sbiw %0,1\n\t"
        "brne 1b"
        : "=w" (count)
        : "0" (count)
    );
}
static uint8_t left(uint8_t cycles)
{
    uint8_t n = cycles + 1;
    asm volatile (
        "L_%=: dec %[n]\n"
        "nop ; one cycle more\n"
        "rjmp .+0\n"
        "brne L_%=\n"
        : [n] "+r" (n)
        :
        : "cc");
    return n;
}
#define BARRIER() __asm__ __volatile__ ("" ::: "memory")
#define NOP3() __asm__ __volatile__ ("nop\n\tnop\n\tnop\n\t" ::)

static uint8_t bits(uint8_t value)
{
    uint8_t parity = 1, i;
    for (i = 0; i < 8; i++) {
        PORTB = (value & 1) ? PORTB | 1 : PORTB & ~1;
        pause(6);
        parity ^= value & 1;
        value >>= 1;
        NOP3();
        BARRIER();
    }
    return parity;
}

int main(void)
{
    uint8_t saved, loops = 20;
    uint16_t longer = 300;
    SHOW(bits(0xF4));
    wait(longer);
    pause(loops);
    SHOW(loops + longer);
    SHOW(left(5));
    asm("1: dec %0\n brne 1b" : "+r" (loops));
    SHOW(loops);
    asm volatile ("cli");
    SHOW(SREG & 0x80);
    sei();
    SHOW(SREG & 0x80);
    saved = SREG;
    cli();
    ticks++;
    SHOW(SREG & 0x80);
    SREG = saved;
    SHOW((SREG >> 7) + ticks);
    __asm__ __volatile__ ("sei" ::: "memory");
    __builtin_avr_delay_cycles(100);
    _delay_us(10);
    _delay_loop_1(3);
    _delay_loop_2(loops + 4);
    asm("wdr");
    __asm__ volatile ("" : "+r" (longer));
    SHOW(__builtin_avr_swap(0x3C) + longer);
    SHOW(SREG & 0x80);
    cli();
    finish();
    return 0;
}
