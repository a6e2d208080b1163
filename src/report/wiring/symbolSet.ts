/** Symbols of IEC 60617, or those common in North America. */
export type SymbolSet = 'iec' | 'us';

/** Font sizes of the sheet, px. */
export const FONT = { designation: 12, mark: 10, note: 11, title: 16 } as const;

/** A device's designation as the symbol set writes it: "-K1" after IEC 81346, "K1" in North America. */
export function designationText(designation: string, symbols: SymbolSet): string {
  return symbols === 'iec' ? `-${designation}` : designation;
}
