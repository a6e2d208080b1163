/** Counts what has come and says whether it is still allowed: no more than `most` bytes in all. */
export function byteAllowance(most: number): (bytes: number) => boolean {
  let total = 0;
  return (bytes) => {
    total += bytes;
    return total <= most;
  };
}
