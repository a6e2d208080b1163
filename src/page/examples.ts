import slipRingTravelDrive from '../../examples/engineer/how-hard-does-plugging-twist-the-shaft.yaml?raw';
import plugsComfortably from '../../examples/engineer/may-this-belt-be-plugged.yaml?raw';
import shouldNotBePlugged from '../../examples/engineer/should-this-fan-be-plugged.yaml?raw';
import fromANameplate from '../../examples/engineer/what-if-only-the-nameplate-is-known.yaml?raw';
import fullReversal from '../../examples/teacher/what-does-a-full-reversal-cost.yaml?raw';
import pushButtonPlugStop from '../../examples/teacher/what-happens-after-the-stop-button.yaml?raw';

/** A scenario that comes with the page. */
export interface BuiltInExample {
  readonly fileName: string;
  /** What it shows. */
  readonly label: string;
  readonly text: string;
}

/** The scenarios of the folder of examples; the page opens with the first. */
export const EXAMPLES: readonly BuiltInExample[] = [
  {
    fileName: 'what-happens-after-the-stop-button.yaml',
    label: 'Cross-cut saw with push buttons',
    text: pushButtonPlugStop,
  },
  { fileName: 'may-this-belt-be-plugged.yaml', label: 'Belt that plugs comfortably', text: plugsComfortably },
  {
    fileName: 'should-this-fan-be-plugged.yaml',
    label: 'Fan that should not be plugged',
    text: shouldNotBePlugged,
  },
  { fileName: 'what-does-a-full-reversal-cost.yaml', label: 'Full reversal, 50 hp', text: fullReversal },
  {
    fileName: 'what-if-only-the-nameplate-is-known.yaml',
    label: 'Motor from its nameplate',
    text: fromANameplate,
  },
  {
    fileName: 'how-hard-does-plugging-twist-the-shaft.yaml',
    label: 'Slip-ring travel drive',
    text: slipRingTravelDrive,
  },
];
