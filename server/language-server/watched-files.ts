/** Files whose change on disk may change what is found. */
export const watchedFiles: readonly string[] = [
  "**/edgewise.json",
  "**/*.{c,cc,cpp,cxx,h,hh,hpp,hxx,inc,inl,ino}",
];
