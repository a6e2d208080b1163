/** Numbers that are written one by one: an array of either kind. */
export interface WritableNumbers {
  [index: number]: number;
}
