// A record while it is put together. What is optional in it is set where it is known: to spread it into the rest takes many times
// as long, and a yard puts together hundreds of thousands.

export type Draft<T> = { -readonly [K in keyof T]: T[K] };
