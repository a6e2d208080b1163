import { scaleLinear, scaleLog } from 'd3-scale';
import type { AxisSpec } from './figureSpec.ts';
import type { Scale } from './svgPaths.ts';

/** An axis as a drawing needs it. */
export interface DrawnAxis {
  /** From a value to px. */
  readonly at: Scale;
  /** Values with a rule; those without a text are between the labelled ones of a logarithmic axis. */
  readonly ticks: readonly { readonly value: number; readonly text: string }[];
}

/** Least distance of two labelled decades, px; nearer ones lose every second label and more. */
const DECADE_SPACING = 30;
/** Room that a label inside a decade needs, px: wider decades are labelled at 2 and 5 too. */
const ROOMY_DECADE = 110;

/**
 * Places an axis on the drawing.
 *
 * @param range px of both ends of the domain
 * @param count about how many ticks a linear axis gets
 */
export function drawnAxis(axis: AxisSpec, range: readonly [number, number], count: number): DrawnAxis {
  if (axis.scale === 'log') return logarithmicAxis(axis, range);
  const scale = scaleLinear(axis.domain, range);
  const format = scale.tickFormat(count, 'f');
  return { at: scale, ticks: scale.ticks(count).map((value) => ({ value, text: format(value) })) };
}

function logarithmicAxis({ domain }: AxisSpec, range: readonly [number, number]): DrawnAxis {
  const [low, high] = domain;
  if (!(low > 0 && high > low && Number.isFinite(high)))
    throw new Error(`a logarithmic axis cannot show ${low} to ${high}`);
  const scale = scaleLog(domain, range);
  const decade = Math.abs(range[1] - range[0]) / Math.log10(high / low);
  const every = Math.ceil(DECADE_SPACING / decade);
  const labelled = decade > ROOMY_DECADE ? [1, 2, 5] : [1];
  const ticks: { value: number; text: string }[] = [];
  for (let power = Math.floor(Math.log10(low)); power <= Math.log10(high); power++) {
    for (let digit = 1; digit < 10; digit++) {
      // As a decimal literal: 3 × 10⁻² computed would not be 0.03.
      const value = Number(`${digit}e${power}`);
      if (value < low || value > high) continue;
      ticks.push({ value, text: labelled.includes(digit) && power % every === 0 ? String(value) : '' });
    }
  }
  return { at: scale, ticks };
}
