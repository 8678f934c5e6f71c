#include "port.h"

struct Base {
    int kept;
    explicit Base(int kept) : kept(kept) { show_text("Base", "made"); }
    Base(int a, int b) : kept(a * b) {}
    virtual int what() { return 1; }
};
struct Member {
    int value = 7;
    Member() { show_text("Member", "made"); }
};
struct Middle : Base {
    using Base::Base;
    Member member;
    int own = 30;
    int what() override { return 2; }
};
struct Last : Middle {
    using Middle::Middle;
    int more = 400;
    int what() override { return 3; }
};

static int asked(Base &base) { return base.what(); }

Middle global(4);

int main()
{
    Middle middle(5, 6);
    Last last(8);
    SHOW(asked(global));
    SHOW(global.kept);
    SHOW(global.own);
    SHOW(asked(middle));
    SHOW(middle.kept);
    SHOW(middle.member.value);
    SHOW(asked(last));
    SHOW(last.kept);
    SHOW(last.own);
    SHOW(last.more);
    finish();
}
