/**
 * Cycles, one line for each thing that avr-gcc -Os makes of C. Those of single instructions are in the AVR Instruction
 * Set Manual; those of library routines are measured on what avr-gcc 5.4 links (libgcc), call and return included.
 */
export const cost = {
  /** LDS, STS, LD, ST, LDD, STD: two for each byte in memory. */
  memoryByte: 2,
  /** IN and OUT, for registers below 0x60. */
  portByte: 1,
  /** SBI and CBI, for one bit of a register below 0x40. */
  portBit: 2,
  /** SBIS, SBRS and their like: one, two where they skip; and the jump that they skip takes two. */
  bitTest: 2.5,
  /** LDI, or an immediate operand that has no such instruction of its own. */
  constantByte: 1,
  /** ADD, SUBI, AND, LSL and their like, for each byte. */
  operationByte: 1,
  /** SEI, CLI, NOP, WDR. */
  instruction: 1,
  /** A conditional branch: one, two where it is taken. */
  branch: 1.5,
  /** A branch back to the next turn of a loop is taken nearly always. */
  taken: 0.5,
  /** SUBI and BRNE: a loop that counts down to zero. */
  countedTurn: 3,
  /** RJMP. */
  jump: 2,
  /** LDI, compare, branch, LDI: a comparison whose value is kept. */
  truth: 2.5,
  /** MOV, LSL and SBC, for the first byte by which a signed value is widened; each further byte is a MOV. */
  signByte: 3,
  /** MOVW into a pointer register. */
  pointer: 1,
  /** An index widened and added to an address: LDI, SUBI, SBCI, or MOVW, ADD, ADC. */
  index: 3,
  /** The pointer that counts along with a loop, moved to and from X or Z. */
  countedIndex: 1,
  /** MOVW moves two bytes of an argument to where the callee wants it. */
  argumentByte: 0.5,
  /** CALL, with a program counter of 16 bits. */
  call: 4,
  /** RET. */
  return: 4,
  /** PUSH of a register that the caller wants back, and its POP the same again. */
  saved: 2,
  /** Frame pointer saved and stack pointer moved: PUSH, IN, SBIW, OUT; the same again backwards. */
  frame: 13,
  /** Address of the table, address of the function and ICALL, above what a plain call takes. */
  virtualCall: 11,
  /** ICALL instead of CALL, MOVW before it. */
  pointerCall: 1,
  /** Interrupt response of four cycles and the JMP in the vector table (data sheets). */
  response: 7,
  /** R0, R1 and SREG saved, R1 cleared. */
  handlerEntry: 8,
  /** R0, R1 and SREG brought back, RETI. */
  handlerExit: 11,
  /** MUL, a MOV and CLR R1. */
  product8: 4,
  /** Three MULs, two additions, a MOVW and CLR R1. */
  product16: 11,
  /** __umulhisi3 and __mulhisi3: 32 bits of two factors of 16. */
  productMixed: 30,
  /** __mulsi3, and the factors moved to where it takes them. */
  product32: 75,
  /** __udivmodqi4: a loop over eight bits. */
  quotient8: 80,
  /** __udivmodhi4. */
  quotient16: 200,
  /** __udivmodsi4. */
  quotient32: 585,
  /** The sign put aside and brought back, in __divmodhi4 and __divmodsi4. */
  quotientSign: 20,
  /** DEC and BRPL of such a turn, the shift itself not included. */
  shiftTurn: 3,
  /** RJMP into that loop and the last DEC and BRPL. */
  shiftLoop: 4,
  /** __addsf3, __subsf3. */
  floatSum: 100,
  /** __mulsf3. */
  floatProduct: 150,
  /** __divsf3. */
  floatQuotient: 470,
  /** __gesf2 and its like. */
  floatCompare: 60,
  /** __floatsisf and its like. */
  intToFloat: 90,
  /** __fixsfsi and its like. */
  floatToInt: 70,
  /** malloc and free, of a heap that is not cut up. */
  heap: 150,
  /** A jump through a table: address computed, __tablejump2__. */
  tableJump: 20,
} as const;
