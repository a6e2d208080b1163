/**
 * Name of a file that a picture is saved as: the scenario's own name without its ending, then what the picture shows.
 *
 * @param scenario file name such as "plug-stop.yaml"
 * @param figure id of the figure
 * @param ending such as "svg"
 */
export function exportName(scenario: string, figure: string, ending: string): string {
  const stem = scenario
    .replace(/\.[^.]*$/u, '')
    .replace(/[^\p{L}\p{N}._-]+/gu, '-')
    .replace(/^[-.]+|[-.]+$/gu, '');
  return `${stem === '' ? 'run' : stem}-${figure}.${ending}`;
}
