import type { Channel, ChannelValue } from '../../simulate/channels.ts';

/** Value of a channel's history at t, s: that of the last change up to and including t; before the first, the first. */
export function channelValue(changes: Channel['changes'], t: number): ChannelValue {
  let low = 0;
  let high = changes.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (changes[middle]!.t <= t) low = middle;
    else high = middle - 1;
  }
  return changes[low]!.value;
}
