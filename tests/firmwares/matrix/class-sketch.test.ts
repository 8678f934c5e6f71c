import { passesWholeMatrix } from "./whole-matrix.ts";

passesWholeMatrix("class-sketch");
