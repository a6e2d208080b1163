/** A share in percent, three digits: "12.5 %". */
export function percentText(share: number): string {
  return `${Number((100 * share).toPrecision(3))} %`;
}
