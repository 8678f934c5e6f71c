#include "port.h"

template <typename T, int R, int C> struct Matrix {
    T cells[R][C];
    Matrix() : cells() {}
    T &operator()(int r, int c) { return cells[r][c]; }
    const T &operator()(int r, int c) const { return cells[r][c]; }
    template <int K> Matrix<T, R, K> operator*(const Matrix<T, C, K> &o) const
    {
        Matrix<T, R, K> result;
        for (int r = 0; r < R; r++)
            for (int k = 0; k < K; k++)
                for (int c = 0; c < C; c++)
                    result(r, k) += cells[r][c] * o(c, k);
        return result;
    }
};

int main()
{
    Matrix<int, 2, 3> a;
    Matrix<int, 3, 2> b;
    for (int i = 0; i < 6; i++) {
        a(i / 3, i % 3) = i + 1;
        b(i / 2, i % 2) = 6 - i;
    }
    Matrix<int, 2, 2> c = a * b;
    for (int i = 0; i < 4; i++)
        SHOW(c(i / 2, i % 2));
    finish();
}
