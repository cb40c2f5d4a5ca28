export type * from "./teardown.ts";
