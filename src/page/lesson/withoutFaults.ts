/** A scenario's text without its faults, or why they cannot be taken out. The editor of texts is loaded only when it is needed. */
export async function withoutFaults(
  text: string,
): Promise<{ readonly text: string; readonly refusal: string | null }> {
  const { applyEdits } = await import('../../scenario/edit/applyEdits.ts');
  return applyEdits(text, [{ kind: 'faults', faults: [] }]);
}
