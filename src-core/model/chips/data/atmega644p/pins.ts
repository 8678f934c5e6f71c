/**
 * Pins: port bit, board names, external interrupt, pin-change interrupt, number on the DIP package, other functions
 * (`_n` is an inverted output). Functions and interrupts
 * from memory of the datasheet.
 */
export const pins = `
PA0  -            -     PCINT0   40  ADC0
PA1  -            -     PCINT1   39  ADC1
PA2  -            -     PCINT2   38  ADC2
PA3  -            -     PCINT3   37  ADC3
PA4  -            -     PCINT4   36  ADC4
PA5  -            -     PCINT5   35  ADC5
PA6  -            -     PCINT6   34  ADC6
PA7  -            -     PCINT7   33  ADC7
PB0  -            -     PCINT8    1  XCK0 T0
PB1  -            -     PCINT9    2  T1 CLKO
PB2  -            INT2  PCINT10   3  AIN0
PB3  -            -     PCINT11   4  OC0A AIN1
PB4  -            -     PCINT12   5  OC0B SS
PB5  -            -     PCINT13   6  MOSI
PB6  -            -     PCINT14   7  MISO
PB7  -            -     PCINT15   8  SCK
PC0  -            -     PCINT16  22  SCL
PC1  -            -     PCINT17  23  SDA
PC2  -            -     PCINT18  24  TCK
PC3  -            -     PCINT19  25  TMS
PC4  -            -     PCINT20  26  TDO
PC5  -            -     PCINT21  27  TDI
PC6  -            -     PCINT22  28  TOSC1
PC7  -            -     PCINT23  29  TOSC2
PD0  -            -     PCINT24  14  RXD0
PD1  -            -     PCINT25  15  TXD0
PD2  -            INT0  PCINT26  16  RXD1
PD3  -            INT1  PCINT27  17  TXD1
PD4  -            -     PCINT28  18  XCK1 OC1B
PD5  -            -     PCINT29  19  OC1A
PD6  -            -     PCINT30  20  ICP1 OC2B
PD7  -            -     PCINT31  21  OC2A
`;
