/**
 * Pins: port bit, board names, external interrupt, pin-change interrupt, number on the DIP package, other functions
 * (`_n` is an inverted output). Board names as in the sketch core's pin tables; functions from memory of the datasheet.
 */
export const pins = `
PB0  D8           -     PCINT0   14  ICP1 CLKO
PB1  D9           -     PCINT1   15  OC1A
PB2  D10          -     PCINT2   16  OC1B SS
PB3  D11          -     PCINT3   17  OC2A MOSI
PB4  D12          -     PCINT4   18  MISO
PB5  D13          -     PCINT5   19  SCK
PB6  -            -     PCINT6    9  XTAL1 TOSC1
PB7  -            -     PCINT7   10  XTAL2 TOSC2
PC0  D14,A0       -     PCINT8   23  ADC0
PC1  D15,A1       -     PCINT9   24  ADC1
PC2  D16,A2       -     PCINT10  25  ADC2
PC3  D17,A3       -     PCINT11  26  ADC3
PC4  D18,A4       -     PCINT12  27  ADC4 SDA
PC5  D19,A5       -     PCINT13  28  ADC5 SCL
PC6  -            -     PCINT14   1  RESET
PD0  D0           -     PCINT16   2  RXD0
PD1  D1           -     PCINT17   3  TXD0
PD2  D2           INT0  PCINT18   4
PD3  D3           INT1  PCINT19   5  OC2B
PD4  D4           -     PCINT20   6  T0 XCK0
PD5  D5           -     PCINT21  11  T1 OC0B
PD6  D6           -     PCINT22  12  AIN0 OC0A
PD7  D7           -     PCINT23  13  AIN1
`;
