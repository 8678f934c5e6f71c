/* C11 6.10.3.5, example 1 */
#define TABSIZE 100
int table[TABSIZE];
