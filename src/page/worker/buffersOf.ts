/** The buffers of all typed arrays inside plain data, each once: what a message hands over without copying. */
export function buffersOf(data: unknown): ArrayBuffer[] {
  const found = new Set<ArrayBuffer>();
  const visit = (value: unknown): void => {
    if (ArrayBuffer.isView(value)) {
      if (value.buffer instanceof ArrayBuffer) found.add(value.buffer);
    } else if (Array.isArray(value)) {
      if (typeof value[0] === 'object') for (const item of value) visit(item);
    } else if (typeof value === 'object' && value !== null) {
      for (const item of Object.values(value)) visit(item);
    }
  };
  visit(data);
  return [...found];
}
