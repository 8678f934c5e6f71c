#define log(level, parts...) [level: parts]
#define all(parts...) <parts>
log(1) log(1, 2) log(1, 2, 3) all() all(1) all(1, 2)
