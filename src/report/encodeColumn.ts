/** A column of numbers as the plotting library reads it: base64 of the little-endian bytes, and their type. */
export interface EncodedColumn {
  readonly bdata: string;
  readonly dtype: 'f4' | 'f8';
}

const ALPHABET = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/';

/** Encodes a column; f4 keeps seven digits, which is finer than any screen, f8 all of them. */
export function encodeColumn(values: Float64Array, dtype: 'f4' | 'f8'): EncodedColumn {
  const size = dtype === 'f4' ? 4 : 8;
  const view = new DataView(new ArrayBuffer(values.length * size));
  values.forEach((value, i) => {
    if (dtype === 'f4') view.setFloat32(i * size, value, true);
    else view.setFloat64(i * size, value, true);
  });
  return { bdata: encodeBase64(new Uint8Array(view.buffer)), dtype };
}

/** Base64 of bytes (RFC 4648, section 4), in plain arithmetic so that it runs everywhere. */
export function encodeBase64(bytes: Uint8Array): string {
  const parts: string[] = [];
  for (let i = 0; i < bytes.length; i += 3) {
    const rest = bytes.length - i;
    const word = (bytes[i]! << 16) | ((bytes[i + 1] ?? 0) << 8) | (bytes[i + 2] ?? 0);
    parts.push(
      ALPHABET[(word >> 18) & 63]! +
        ALPHABET[(word >> 12) & 63]! +
        (rest > 1 ? ALPHABET[(word >> 6) & 63]! : '=') +
        (rest > 2 ? ALPHABET[word & 63]! : '='),
    );
  }
  return parts.join('');
}
