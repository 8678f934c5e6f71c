import { passesWholeMatrix } from "./whole-matrix.ts";

passesWholeMatrix("remote-polling-c");
