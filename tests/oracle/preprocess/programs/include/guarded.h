/* comment before the guard */
#ifndef GUARDED_H
#define GUARDED_H
guarded text
#define GUARDED_VALUE 7
#endif
/* and behind it */
