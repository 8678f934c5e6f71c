#define _SFR_IO8(a) (*(volatile unsigned char *)((a) + 0x20))
#define PORTB _SFR_IO8(0x05)
#define PORTB5 5
#define PB5 PORTB5
#define _BV(bit) (1 << (bit))
#define LED_PORT PORTB
#define LED_BIT PB5
#define on(port, bit) ((port) |= _BV(bit))
on(LED_PORT, LED_BIT);
#define glue_(a, b) a ## b
#define glue(a, b) glue_(a, b)
#define PORT(letter) glue(PORT, letter)
#define LETTER B
PORT(LETTER) |= _BV(glue(PORT, glue(LETTER, 5)));
