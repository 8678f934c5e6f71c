#include "port.h"

class Str {
    char *buffer = nullptr;
    uint8_t size = 0;
    void set(const char *s, uint8_t n) { char *fresh = new char[n + 1]; memcpy(fresh, s, n); fresh[n] = 0; delete[] buffer; buffer = fresh; size = n; }
public:
    Str(const char *s = "") { set(s, strlen(s)); }
    Str(const Str &o) { set(o.buffer, o.size); }
    ~Str() { delete[] buffer; }
    Str &operator=(const Str &o) { if (&o != this) set(o.buffer, o.size); return *this; }
    Str &operator+=(const char *s) { Str old(*this); uint8_t n = strlen(s); delete[] buffer; buffer = new char[size + n + 1]; strcpy(buffer, old.buffer); strcat(buffer, s); size += n; return *this; }
    Str &operator+=(const Str &o) { return *this += o.buffer; }
    friend Str operator+(Str a, const Str &b) { a += b; return a; }
    bool operator==(const char *s) const { return strcmp(buffer, s) == 0; }
    char operator[](uint8_t i) const { return buffer[i]; }
    uint8_t length() const { return size; }
    const char *c_str() const { return buffer; }
    int indexOf(char c) const { for (uint8_t i = 0; i < size; i++) if (buffer[i] == c) return i; return -1; }
};

int main()
{
    Str a("left"), b;
    b = a + " and " + Str("right");
    SHOW_TEXT(b.c_str());
    SHOW(b.length());
    SHOW(b == "left and right");
    SHOW(a == "right");
    SHOW(b[5]);
    SHOW(b.indexOf('r'));
    a = a;
    a += Str(a);
    SHOW_TEXT(a.c_str());
    finish();
}
