#include "port.h"

int main(void)
{
    char buffer[32] = "mouse";
    SHOW(strlen(buffer));
    strcat(buffer, " port");
    SHOW_TEXT(buffer);
    SHOW(strcmp("abc", "abd") < 0);
    SHOW(strcmp("b", "abd") > 0);
    SHOW(strcmp("same", "same"));
    SHOW(strncmp("abcdef", "abcxyz", 3));
    SHOW_TEXT(strchr(buffer, 's'));
    SHOW_TEXT(strrchr(buffer, 'o'));
    SHOW_TEXT(strstr(buffer, "po"));
    SHOW(strchr(buffer, 'q') == 0);
    strncpy(buffer, "xy", 4);
    SHOW(buffer[3]);
    SHOW(buffer[4]);
    SHOW_TEXT(strcpy(buffer, "copied"));
    char *rest = buffer;
    strcpy(buffer, "a,bc,,d");
    for (char *part = strtok_r(buffer, ",", &rest); part; part = strtok_r(0, ",", &rest))
        SHOW_TEXT(part);
    finish();
    return 0;
}
