// The one door through which kernels take elementary functions. ECMAScript leaves the last bit of `exp`, `log`, `pow` and
// `sin` to the engine; when every call passes here, engine-independent versions can replace these lines and nothing else.
export const { cos, exp, expm1, log, log1p, pow, sin, tan } = Math
