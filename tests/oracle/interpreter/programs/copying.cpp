#include "port.h"

struct Text {
    char *chars;
    uint8_t length;
    Text(const char *s) : length(strlen(s)) { chars = new char[length + 1]; strcpy(chars, s); send('c'); }
    Text(const Text &o) : chars(new char[o.length + 1]), length(o.length) { strcpy(chars, o.chars); send('k'); }
    Text &operator=(const Text &o)
    {
        if (this != &o) {
            delete[] chars;
            length = o.length;
            chars = new char[length + 1];
            strcpy(chars, o.chars);
        }
        send('a');
        return *this;
    }
    ~Text() { delete[] chars; send('d'); }
};
struct Holder { int before; Text text; int after; };
static uint8_t length(Text t) { t.chars[0] = 'X'; return t.length; }

int main()
{
    {
        Text a("left"), b = a, c("right");
        b.chars[0] = 'L';
        c = b;
        c = c;
        show_text("a", a.chars);
        show_text("c", c.chars);
        SHOW(length(a));
        show_text("a", a.chars);
        Holder h = { 1, a, 2 }, k = h;
        k.text.chars[1] = '3';
        h = k;
        show_text("h", h.text.chars);
        SHOW(h.after);
    }
    send('\n');
    finish();
}
