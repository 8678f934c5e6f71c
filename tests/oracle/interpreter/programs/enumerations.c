#include "port.h"

enum level { LOW = -2, MEDIUM, HIGH = 5, HIGHEST };
enum big { ONE = 1, LARGE = 70000L };
typedef enum { OFF, ON } power_t;

int main(void)
{
    enum level level = LOW;
    SHOW(level);
    level = MEDIUM;
    SHOW(level);
    level++;
    SHOW(level);
    SHOW(HIGHEST);
    SHOW(LARGE + ONE);
    SHOW(sizeof(enum level));
    power_t power = ON;
    SHOW(!power);
    SHOW((power_t)3);
    switch (level) {
    case LOW: text("low"); break;
    case 0: text("none"); break;
    default: text("other");
    }
    finish();
    return 0;
}
