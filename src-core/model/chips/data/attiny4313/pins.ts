/**
 * Pins: port bit, board names, external interrupt, pin-change interrupt, number on the DIP package, other functions
 * (`_n` is an inverted output). Functions and interrupts
 * from memory of the datasheet.
 */
export const pins = `
PA0  -            -     PCINT8    5  XTAL1 CLKI
PA1  -            -     PCINT9    4  XTAL2
PA2  -            -     PCINT10   1  RESET DW
PB0  -            -     PCINT0   12  AIN0
PB1  -            -     PCINT1   13  AIN1
PB2  -            -     PCINT2   14  OC0A
PB3  -            -     PCINT3   15  OC1A
PB4  -            -     PCINT4   16  OC1B
PB5  -            -     PCINT5   17  MOSI USI_DI SDA
PB6  -            -     PCINT6   18  MISO USI_DO
PB7  -            -     PCINT7   19  SCK USI_USCK SCL
PD0  -            -     PCINT11   2  RXD
PD1  -            -     PCINT12   3  TXD
PD2  -            INT0  PCINT13   6  XCK CKOUT
PD3  -            INT1  PCINT14   7
PD4  -            -     PCINT15   8  T0
PD5  -            -     PCINT16   9  T1 OC0B
PD6  -            -     PCINT17  11  ICP1
`;
