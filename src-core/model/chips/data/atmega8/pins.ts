/**
 * Pins: port bit, board names, external interrupt, pin-change interrupt, number on the DIP package, other functions
 * (`_n` is an inverted output). Board names as in the sketch core's pin tables; functions from memory of the datasheet.
 */
export const pins = `
PB0  D8           -     -        14  ICP1
PB1  D9           -     -        15  OC1A
PB2  D10          -     -        16  OC1B SS
PB3  D11          -     -        17  OC2 MOSI
PB4  D12          -     -        18  MISO
PB5  D13          -     -        19  SCK
PB6  -            -     -         9  XTAL1 TOSC1
PB7  -            -     -        10  XTAL2 TOSC2
PC0  D14,A0       -     -        23  ADC0
PC1  D15,A1       -     -        24  ADC1
PC2  D16,A2       -     -        25  ADC2
PC3  D17,A3       -     -        26  ADC3
PC4  D18,A4       -     -        27  ADC4 SDA
PC5  D19,A5       -     -        28  ADC5 SCL
PC6  -            -     -         1  RESET
PD0  D0           -     -         2  RXD
PD1  D1           -     -         3  TXD
PD2  D2           INT0  -         4
PD3  D3           INT1  -         5
PD4  D4           -     -         6  XCK T0
PD5  D5           -     -        11  T1
PD6  D6           -     -        12  AIN0
PD7  D7           -     -        13  AIN1
`;
