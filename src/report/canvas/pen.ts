/**
 * What painting needs of a two-dimensional canvas context; a test hands in one that records. Lengths in px of the layout, angles in
 * rad.
 */
export interface Pen
  extends Pick<
    CanvasRenderingContext2D,
    | 'arc'
    | 'beginPath'
    | 'clearRect'
    | 'clip'
    | 'fill'
    | 'fillRect'
    | 'fillStyle'
    | 'fillText'
    | 'font'
    | 'globalAlpha'
    | 'lineCap'
    | 'lineJoin'
    | 'lineTo'
    | 'lineWidth'
    | 'moveTo'
    | 'rect'
    | 'restore'
    | 'save'
    | 'setLineDash'
    | 'setTransform'
    | 'stroke'
    | 'strokeRect'
    | 'strokeStyle'
    | 'strokeText'
    | 'textAlign'
    | 'textBaseline'
  > {}
