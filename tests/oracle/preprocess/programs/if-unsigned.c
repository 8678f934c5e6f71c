#if -1 > 0u
wraps
#endif
#if -1 > 0
wrong
#else
signed
#endif
#if (0 ? 0u : -1) > 0
ternary is unsigned
#endif
#if (2 || 3u) - 2 < 0
logic is signed
#endif
#if (-1 < 0u) - 1 < 0
comparison is signed
#endif
#if 0u - 1 == 18446744073709551615u && -1ll == ~0
all ones
#endif
#if (1u << 63) > 0 && (1 << 63) < 0 && (-8 >> 1u) == -4
shifts keep the left type
#endif
#if 9223372036854775807 > 0 && 0x8000000000000000 > 0
big constants
#endif
#if -9223372036854775807 - 1 < 0 && (-9223372036854775807 - 1) / 3u > 0
lowest
#endif
