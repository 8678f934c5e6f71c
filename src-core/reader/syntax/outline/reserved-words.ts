/**
 * Words that the grammar takes for something else than a plain name although the language does not. A name
 * spelt like one of them is shown to the grammar with an underscore more.
 */
const names = [
  "size_t ssize_t ptrdiff_t intptr_t uintptr_t charptr_t nullptr_t max_align_t",
  "int8_t int16_t int32_t int64_t uint8_t uint16_t uint32_t uint64_t",
  "char8_t char16_t char32_t char64_t bool",
  "co_await co_return co_yield concept requires consteval constinit final override import export module",
  "TRUE FALSE NULL defined offsetof noreturn thread_local constexpr",
  "alignof _alignof _Alignof __alignof __alignof__ alignas _Alignas __inline __inline__",
  "_Nonnull __based __cdecl __clrcall __stdcall __fastcall __thiscall __vectorcall __uptr __sptr _unaligned",
  "__unaligned __restrict __declspec __try __leave __except __finally __forceinline _Generic __thread",
  "class namespace template typename using operator new delete this true false nullptr public private",
  "protected try catch throw noexcept static_assert decltype virtual explicit friend mutable",
  "and or not bitand bitor xor compl not_eq and_eq or_eq xor_eq",
];

export const reservedWords: ReadonlySet<string> = new Set(names.flatMap((line) => line.split(" ")));
