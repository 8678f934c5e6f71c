/**
 * Pins: port bit, board names, external interrupt, pin-change interrupt, number on the DIP package, other functions
 * (`_n` is an inverted output). Board names as in the sketch core's pin tables; functions from memory of the datasheet.
 */
export const pins = `
PA0  -            -     -         5  XTAL1 CLKI
PA1  -            -     -         4  XTAL2
PA2  -            -     -         1  RESET DW
PB0  -            -     PCINT0   12  AIN0
PB1  -            -     PCINT1   13  AIN1
PB2  -            -     PCINT2   14  OC0A
PB3  -            -     PCINT3   15  OC1A
PB4  -            -     PCINT4   16  OC1B
PB5  -            -     PCINT5   17  MOSI USI_DI SDA
PB6  -            -     PCINT6   18  MISO USI_DO
PB7  -            -     PCINT7   19  SCK USI_USCK SCL
PD0  -            -     -         2  RXD
PD1  -            -     -         3  TXD
PD2  -            INT0  -         6  XCK CKOUT
PD3  -            INT1  -         7
PD4  -            -     -         8  T0
PD5  -            -     -         9  T1 OC0B
PD6  -            -     -        11  ICP1
`;
