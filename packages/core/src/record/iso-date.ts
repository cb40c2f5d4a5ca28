// A day as the files hold it.

/** `YYYY-MM-DD`, local wall date, kept as text. */
export type IsoDate = string;
