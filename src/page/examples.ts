import fromANameplate from '../../examples/from-a-nameplate.yaml?raw';
import fullReversal from '../../examples/full-reversal.yaml?raw';
import plugsComfortably from '../../examples/plugs-comfortably.yaml?raw';
import pushButtonPlugStop from '../../examples/push-button-plug-stop.yaml?raw';
import shouldNotBePlugged from '../../examples/should-not-be-plugged.yaml?raw';
import slipRingTravelDrive from '../../examples/slip-ring-travel-drive.yaml?raw';

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
    fileName: 'push-button-plug-stop.yaml',
    label: 'Cross-cut saw with push buttons',
    text: pushButtonPlugStop,
  },
  { fileName: 'plugs-comfortably.yaml', label: 'Belt that plugs comfortably', text: plugsComfortably },
  {
    fileName: 'should-not-be-plugged.yaml',
    label: 'Fan that should not be plugged',
    text: shouldNotBePlugged,
  },
  { fileName: 'full-reversal.yaml', label: 'Full reversal, 50 hp', text: fullReversal },
  { fileName: 'from-a-nameplate.yaml', label: 'Motor from its nameplate', text: fromANameplate },
  { fileName: 'slip-ring-travel-drive.yaml', label: 'Slip-ring travel drive', text: slipRingTravelDrive },
];
