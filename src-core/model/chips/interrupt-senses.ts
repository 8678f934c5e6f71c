/**
 * What makes an external interrupt happen, by the number that ISCn1 and ISCn0 say: ATmega328P datasheet 8271D, tables 13-1
 * and 13-2. The sketch core gives LOW, CHANGE, FALLING and RISING the same numbers.
 */
export const interruptSenses = ["low level", "any change", "falling edge", "rising edge"] as const;

export type InterruptSense = (typeof interruptSenses)[number];
