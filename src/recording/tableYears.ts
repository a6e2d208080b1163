/** Years that dates may lie in. No contactor in service is older; a slip in the year would move a whole plan. */
export const TABLE_YEARS = { first: 1950, last: 2199 } as const;
