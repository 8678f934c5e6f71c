#if 1 + 2 * 3 == 7 && (1 + 2) * 3 == 9
precedence
#endif
#if -7 / 2 == -3 && -7 % 2 == -1 && 7 / -2 == -3 && 7 % -2 == 1
truncating
#endif
#if 1 << 3 | 1 && 0x0F & ~0x3 ^ 5
bits
#endif
#if (1 << 62) > 0 && (-1 >> 1) == -1 && 0xFFFFFFFFFFFFFFFF == -1
wide
#endif
#if 5 > 3 > 2
wrong
#else
chained
#endif
#if !0 + !1 == 1 && - - 1 == 1 && ~-1 == 0 && +3 == 3
unary
#endif
