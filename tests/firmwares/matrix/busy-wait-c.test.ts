import { passesWholeMatrix } from "./whole-matrix.ts";

passesWholeMatrix("busy-wait-c");
