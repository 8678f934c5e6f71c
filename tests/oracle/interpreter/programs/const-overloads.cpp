#include "port.h"

class Table {
    int cells[3] = { 1, 2, 3 };
    mutable int reads = 0;
public:
    int &operator[](int i) { return cells[i]; }
    const int &operator[](int i) const { reads++; return cells[i]; }
    const char *kind() { return "changing"; }
    const char *kind() const { return "fixed"; }
    int count() const { return reads; }
};
static int sum(const Table &t) { return t[0] + t[1] + t[2]; }

int main()
{
    Table table;
    const Table &fixed = table;
    table[1] = 20;
    SHOW(sum(table));
    SHOW(table.count());
    SHOW_TEXT(table.kind());
    SHOW_TEXT(fixed.kind());
    SHOW(fixed[1] + fixed.count());
    finish();
}
