#include "port.h"

class Account {
    int balance;
    friend int peek(const Account &a);
    friend class Auditor;
    friend bool operator<(const Account &a, const Account &b) { return a.balance < b.balance; }
public:
    Account(int b) : balance(b) {}
};
int peek(const Account &a) { return a.balance; }
class Auditor { public: static void take(Account &a, int n) { a.balance -= n; } };

int main()
{
    Account a(100), b(50);
    Auditor::take(a, 70);
    SHOW(peek(a));
    SHOW(a < b);
    finish();
}
