#define COMMANDS(X) X(RESET, 0xFF) X(RESEND, 0xFE) X(ENABLE, 0xF4)
#define ENTRY(name, value) CMD_##name = value,
#define TEXT(name, value) [value] = #name,
enum { COMMANDS(ENTRY) };
const char *const names[] = { COMMANDS(TEXT) };
