/** What the firmware below is for: 1200 baud on an ATmega328P at 16 MHz. */
const settings = JSON.stringify({
  board: { chip: "atmega328p", clock: "16MHz" },
  wires: { serial: { uart: 0, baud: 1200, line: "7N1" } },
});

/**
 * The right divisor is 16 MHz / (16 * 1200 baud) - 1 = 832: ATmega328P datasheet, "Equations for Calculating Baud
 * Rate Register Setting", and what util/setbaud.h of avr-libc computes.
 */
export const rightDivisor = 832;

/** Sets up the UART for 1200 baud, 7N1 with this divisor. */
export function serialSource(divisor: number | string): string {
  return `#include <avr/io.h>

void serial_start(void)
{
    UBRR0 = ${divisor};
    UCSR0C = (1 << UCSZ01);
    UCSR0B = (1 << TXEN0);
}

int main(void)
{
    serial_start();
    for (;;) {
    }
}
`;
}

/** A firmware with one fault: 51 makes 19231 baud. */
export const faultyFirmware = { "edgewise.json": settings, "main.c": serialSource(51) };

/** The same without the fault. */
export const rightFirmware = { "edgewise.json": settings, "main.c": serialSource(rightDivisor) };
