#include "port.h"

using Byte = uint8_t;
typedef int Matrix[2][2];
using Callback = void (*)(Byte);
template <typename T> struct Traits { typedef T Value; using Wide = long; static constexpr Byte size = sizeof(T); };
template <typename T> using Ptr = T *;
template <typename T> static typename Traits<T>::Wide widen(T v) { return (typename Traits<T>::Wide)v * 1000; }

int main()
{
    Matrix m = { { 1, 2 }, { 3, 4 } };
    Callback callback = send;
    callback('c');
    Byte b = 300;
    SHOW(b);
    SHOW(m[1][0]);
    SHOW(Traits<long>::size);
    Traits<char>::Value c = 'x';
    SHOW(c);
    SHOW(widen(99));
    Ptr<Byte> p = &b;
    ++*p;
    SHOW(b);
    finish();
}
