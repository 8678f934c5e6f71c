#include "port.h"
#include <stdlib.h>
static int ascending(const void *a, const void *b) { return *(const int *)a - *(const int *)b; }
static void insertion(uint8_t *values, uint8_t count)
{
    for (uint8_t i = 1; i < count; i++) {
        uint8_t value = values[i];
        int8_t j = i - 1;
        while (j >= 0 && values[j] > value) {
            values[j + 1] = values[j];
            j--;
        }
        values[j + 1] = value;
    }
}

int main(void)
{
    int numbers[] = { 5, -3, 99, 0, 42, -77, 8 };
    uint8_t bytes[] = { 9, 200, 3, 77, 0, 255, 128 };
    qsort(numbers, 7, sizeof(int), ascending);
    insertion(bytes, 7);
    for (int i = 0; i < 7; i++) {
        SHOW(numbers[i]);
        SHOW(bytes[i]);
    }
    int key = 42;
    SHOW((int *)bsearch(&key, numbers, 7, sizeof(int), ascending) - numbers);
    finish();
    return 0;
}
