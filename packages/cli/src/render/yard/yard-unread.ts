// What the headline of a yard does not count.

/** @param unread - logbooks of the folder that could not be read */
export const withUnreadBooks = (headline: string, unread: number): string => {
  if (unread === 0) return headline;
  const [which, whose] =
    unread === 1
      ? ["One logbook", "its engines"]
      : [`${unread.toLocaleString("en-US")} logbooks`, "their engines"];
  return `${headline} ${which} could not be read: ${whose} are not counted.`;
};
