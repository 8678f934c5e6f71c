/**
 * Pins: port bit, board names, external interrupt, pin-change interrupt, number on the DIP package, other functions
 * (`_n` is an inverted output). Board names as in the sketch core's pin tables; functions from memory of the datasheet.
 */
export const pins = `
PB0  D0           -     PCINT0    5  MOSI USI_DI SDA OC0A OC1A_n AIN0
PB1  D1           -     PCINT1    6  MISO USI_DO OC0B OC1A AIN1
PB2  D2,A1        INT0  PCINT2    7  SCK USI_USCK SCL T0 ADC1
PB3  D3,A3        -     PCINT3    2  XTAL1 CLKI OC1B_n ADC3
PB4  D4,A2        -     PCINT4    3  XTAL2 CLKO OC1B ADC2
PB5  D5,A0        -     PCINT5    1  RESET DW ADC0
`;
