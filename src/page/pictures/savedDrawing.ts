/** What the style sheet says of a drawing; a file of its own must say it itself. */
const CARRIED = [
  'fill',
  'stroke',
  'stroke-width',
  'stroke-dasharray',
  'stroke-linecap',
  'font-family',
  'font-size',
  'text-anchor',
  'dominant-baseline',
] as const;
const NAMESPACE = 'http://www.w3.org/2000/svg';

/** A drawing of the page as the text of a file, in the colours that it has there. */
export function savedDrawing(drawing: SVGSVGElement): string {
  const copy = drawing.cloneNode(true);
  if (!(copy instanceof SVGSVGElement)) return '';
  const copies = copy.querySelectorAll('*');
  drawing.querySelectorAll('*').forEach((element, i) => {
    const style = getComputedStyle(element);
    for (const name of CARRIED) copies[i]?.setAttribute(name, style.getPropertyValue(name));
  });
  const ground = document.createElementNS(NAMESPACE, 'rect');
  ground.setAttribute('width', '100%');
  ground.setAttribute('height', '100%');
  ground.setAttribute('fill', getComputedStyle(document.body).backgroundColor);
  copy.prepend(ground);
  copy.setAttribute('xmlns', NAMESPACE);
  return new XMLSerializer().serializeToString(copy);
}

/** Such a file as pixels; null where the browser cannot make them. */
export async function drawingPng(svg: string, side: number): Promise<Blob | null> {
  const address = URL.createObjectURL(new Blob([svg], { type: 'image/svg+xml' }));
  try {
    const image = new Image(side, side);
    image.src = address;
    await image.decode();
    const canvas = document.createElement('canvas');
    canvas.width = side;
    canvas.height = side;
    canvas.getContext('2d')?.drawImage(image, 0, 0, side, side);
    return await new Promise((resolve) => canvas.toBlob(resolve, 'image/png'));
  } finally {
    URL.revokeObjectURL(address);
  }
}
