import { isCovered } from '../report/lesson/lesson.ts';
import { Alarms } from './Alarms.tsx';
import type { PageProps } from './actions.ts';
import { Covered } from './Covered.tsx';
import { Change } from './change/Change.tsx';
import { Numbers } from './change/Numbers.tsx';
import { EXAMPLES } from './examples.ts';
import { Finding } from './Finding.tsx';
import { DropZone, Files } from './files/Files.tsx';
import { Judge } from './judge/Judge.tsx';
import { KeyNumbers } from './KeyNumbers.tsx';
import { Lesson } from './lesson/Lesson.tsx';
import { Masthead } from './Masthead.tsx';
import { EnergyPicture } from './pictures/EnergyPicture.tsx';
import { ExplorePicture } from './pictures/ExplorePicture.tsx';
import { FieldPicture } from './pictures/FieldPicture.tsx';
import { PlanePicture } from './pictures/PlanePicture.tsx';
import { TimePicture } from './pictures/TimePicture.tsx';
import { Station } from './station/Station.tsx';
import { Transport } from './transport/Transport.tsx';

/** The page: what the hand does on the left, what the machine does over time in the middle, what comes of it on the right and below. */
export function App({ state, act }: PageProps) {
  return (
    <>
      <Masthead state={state} act={act} />
      <Alarms state={state} act={act} />
      {isCovered(state.lesson.value) ? null : <KeyNumbers state={state} act={act} />}
      <main data-task={state.task.value} aria-busy={state.pending.value}>
        <section class="hand" aria-label="What you do" tabIndex={-1} data-focus-home="">
          <Hand state={state} act={act} />
        </section>
        {isCovered(state.lesson.value) ? (
          <Covered state={state} act={act} />
        ) : (
          <Run state={state} act={act} />
        )}
      </main>
      <DropZone state={state} act={act} />
    </>
  );
}

/** What the chosen task puts into the hand. */
function Hand({ state, act }: PageProps) {
  const task = state.task.value;
  switch (task) {
    case 'push':
      // The devices at an instant would tell a class what it is asked to predict.
      return isCovered(state.lesson.value) ? (
        <p>The buttons wait until all questions are revealed; they stand under Class.</p>
      ) : (
        <Station state={state} act={act} />
      );
    case 'change':
      return <Change state={state} act={act} />;
    case 'judge':
      return <Judge state={state} act={act} />;
    case 'class':
      return <Lesson state={state} act={act} lesson={state.lesson} />;
    case 'files':
      return <Files state={state} act={act} examples={EXAMPLES} />;
    default:
      return task satisfies never;
  }
}

/** The run in pictures and numbers. */
function Run({ state, act }: PageProps) {
  return (
    <>
      <section class="spine" aria-label="The run over time" tabIndex={-1} data-focus-home="">
        <TimePicture state={state} act={act} />
        <Transport state={state} act={act} />
      </section>
      <section class="sides" aria-label="The run at the cursor">
        <PlanePicture state={state} act={act} />
        <FieldPicture state={state} act={act} />
        <EnergyPicture state={state} act={act} />
      </section>
      <section class="figures" aria-label="The numbers of the run">
        <Finding state={state} act={act} />
        <Numbers state={state} act={act} />
        <ExplorePicture state={state} act={act} />
      </section>
    </>
  );
}
