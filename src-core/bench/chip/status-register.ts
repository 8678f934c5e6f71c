/** SREG, at one place in every AVR; I is its highest bit. AVR Instruction Set Manual. */
export const statusRegister = 0x5f;
export const globalFlag = 0x80;
