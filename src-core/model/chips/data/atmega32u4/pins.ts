/**
 * Pins: port bit, board names, external interrupt, pin-change interrupt, number on the DIP package, other functions
 * (`_n` is an inverted output). Board names as in the sketch core's pin tables; functions from memory of the datasheet.
 */
export const pins = `
PB0  D17          -     PCINT0    -  SS
PB1  D15          -     PCINT1    -  SCK
PB2  D16          -     PCINT2    -  MOSI
PB3  D14          -     PCINT3    -  MISO
PB4  D8,D26,A8    -     PCINT4    -  ADC11
PB5  D9,D27,A9    -     PCINT5    -  OC1A OC4B_n ADC12
PB6  D10,D28,A10  -     PCINT6    -  OC1B OC4B ADC13
PB7  D11          -     PCINT7    -  OC0A OC1C RTS
PC6  D5           -     -         -  OC3A OC4A_n
PC7  D13          -     -         -  ICP3 CLKO OC4A
PD0  D3           INT0  -         -  SCL OC0B
PD1  D2           INT1  -         -  SDA
PD2  D0           INT2  -         -  RXD1
PD3  D1           INT3  -         -  TXD1
PD4  D4,D24,A6    -     -         -  ICP1 ADC8
PD5  D30          -     -         -  XCK1 CTS
PD6  D12,D29,A11  -     -         -  T1 OC4D_n ADC9
PD7  D6,D25,A7    -     -         -  T0 OC4D ADC10
PE2  -            -     -         -  HWB
PE6  D7           INT6  -         -  AIN0
PF0  D23,A5       -     -         -  ADC0
PF1  D22,A4       -     -         -  ADC1
PF4  D21,A3       -     -         -  ADC4 TCK
PF5  D20,A2       -     -         -  ADC5 TMS
PF6  D19,A1       -     -         -  ADC6 TDO
PF7  D18,A0       -     -         -  ADC7 TDI
`;
