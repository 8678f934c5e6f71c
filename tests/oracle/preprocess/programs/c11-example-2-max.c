/* C11 6.10.3.5, example 2 */
#define max(a, b) ((a) > (b) ? (a) : (b))
int greater = max(left + 1, right ? 2 : 3);
int nested = max(max(a, b), max(c, max(d, e)));
