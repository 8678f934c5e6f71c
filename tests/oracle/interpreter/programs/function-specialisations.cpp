#include "port.h"
template <typename T> static const char *name() { return "other"; }
template <> const char *name<int>() { return "int"; }
template <> const char *name<char *>() { return "text"; }
template <typename T> static int width(T v) { return sizeof(v); }
template <> int width<bool>(bool) { return 1; }
static int width() { return -1; }
int main() {
  SHOW_TEXT(name<int>()); SHOW_TEXT(name<int16_t>()); SHOW_TEXT(name<char *>()); SHOW_TEXT(name<long>());
  SHOW(width<long>(3) + width(true) * 10 + width() * 100);
  finish();
}
