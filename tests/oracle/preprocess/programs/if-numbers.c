#if 0x10 == 16 && 010 == 8 && 0b101 == 5 && 10 == 012 && 0XfF == 255 && 0B11 == 3
bases
#endif
#if 1u + 1U + 1l + 1L + 1ul + 1LU + 1ull + 1LLU + 1ll + 1LL == 10
suffixes
#endif
#if 0 || 00 || 0x0 || 0b0
wrong
#else
zeros
#endif
