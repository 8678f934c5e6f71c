#include "port.h"

int main(void)
{
    int sum = 0;
    for (int i = 0; i < 20; i++) {
        switch (i % 5) {
        case 0:
            continue;
        case 1:
            sum += i;
            break;
        case 2:
            while (1) {
                sum++;
                if (sum % 3 == 0)
                    break;
            }
            break;
        case 3:
            if (i > 10)
                goto out;
        }
        sum *= 2;
        sum %= 1000;
        SHOW(sum);
    }
out:
    SHOW(sum);
    finish();
    return 0;
}
