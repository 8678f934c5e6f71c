#include "port.h"

static uint8_t grid[3][4];
static int trace(int n, int matrix[][3])
{
    int sum = 0;
    for (int i = 0; i < n; i++)
        sum += matrix[i][i];
    return sum;
}

int main(void)
{
    for (uint8_t i = 0; i < 3; i++)
        for (uint8_t j = 0; j < 4; j++)
            grid[i][j] = i << 4 | j;
    uint8_t *flat = *grid;
    SHOW(flat[7]);
    SHOW(grid[2] - grid[0]);
    SHOW(sizeof grid[0]);
    SHOW(*(*(grid + 1) + 2));
    int matrix[3][3] = { { 1, 2, 3 }, { 4, 5, 6 }, { 7, 8, 9 } };
    SHOW(trace(3, matrix));
    int product[3][3] = { { 0 } };
    for (int i = 0; i < 3; i++)
        for (int j = 0; j < 3; j++)
            for (int k = 0; k < 3; k++)
                product[i][j] += matrix[i][k] * matrix[k][j];
    for (int i = 0; i < 9; i++)
        SHOW(product[i / 3][i % 3]);
    finish();
    return 0;
}
