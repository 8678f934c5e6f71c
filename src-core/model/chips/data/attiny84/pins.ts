/**
 * Pins: port bit, board names, external interrupt, pin-change interrupt, number on the DIP package, other functions
 * (`_n` is an inverted output). Functions and interrupts
 * from memory of the datasheet.
 */
export const pins = `
PA0  -            -     PCINT0   13  ADC0 AREF
PA1  -            -     PCINT1   12  ADC1 AIN0
PA2  -            -     PCINT2   11  ADC2 AIN1
PA3  -            -     PCINT3   10  ADC3 T0
PA4  -            -     PCINT4    9  ADC4 USI_USCK SCL T1
PA5  -            -     PCINT5    8  ADC5 USI_DO MISO OC1B
PA6  -            -     PCINT6    7  ADC6 USI_DI SDA MOSI OC1A
PA7  -            -     PCINT7    6  ADC7 OC0B ICP1
PB0  -            -     PCINT8    2  XTAL1 CLKI
PB1  -            -     PCINT9    3  XTAL2
PB2  -            INT0  PCINT10   5  OC0A CKOUT
PB3  -            -     PCINT11   4  RESET DW
`;
