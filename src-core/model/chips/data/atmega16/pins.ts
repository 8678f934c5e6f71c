/**
 * Pins: port bit, board names, external interrupt, pin-change interrupt, number on the DIP package, other functions
 * (`_n` is an inverted output). Functions and interrupts
 * from memory of the datasheet.
 */
export const pins = `
PA0  -            -     -        40  ADC0
PA1  -            -     -        39  ADC1
PA2  -            -     -        38  ADC2
PA3  -            -     -        37  ADC3
PA4  -            -     -        36  ADC4
PA5  -            -     -        35  ADC5
PA6  -            -     -        34  ADC6
PA7  -            -     -        33  ADC7
PB0  -            -     -         1  XCK T0
PB1  -            -     -         2  T1
PB2  -            INT2  -         3  AIN0
PB3  -            -     -         4  OC0 AIN1
PB4  -            -     -         5  SS
PB5  -            -     -         6  MOSI
PB6  -            -     -         7  MISO
PB7  -            -     -         8  SCK
PC0  -            -     -        22  SCL
PC1  -            -     -        23  SDA
PC2  -            -     -        24  TCK
PC3  -            -     -        25  TMS
PC4  -            -     -        26  TDO
PC5  -            -     -        27  TDI
PC6  -            -     -        28  TOSC1
PC7  -            -     -        29  TOSC2
PD0  -            -     -        14  RXD
PD1  -            -     -        15  TXD
PD2  -            INT0  -        16
PD3  -            INT1  -        17
PD4  -            -     -        18  OC1B
PD5  -            -     -        19  OC1A
PD6  -            -     -        20  ICP1
PD7  -            -     -        21  OC2
`;
