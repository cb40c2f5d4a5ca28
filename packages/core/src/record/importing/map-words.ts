// The words that a map may use where only some are possible.

export const separators = [",", ";", "\t"] as const;
export const decimalMarks = [".", ","] as const;
export const dateOrders = ["ymd", "dmy", "mdy"] as const;
export const sameDayRules = ["takes", "tests"] as const;
