import { Notice } from '../parts/notice.tsx';
import { useServices } from '../services-context.tsx';
import { useWords } from '../words/words-context.tsx';

/** Says that the plan is invented, and takes it away with all that was entered for it. */
export function ExampleNotice({ onRemoved }: { readonly onRemoved: () => void }) {
  const { day } = useWords();
  const { diary } = useServices();
  return (
    <div className="day-example">
      <Notice icon="person" look="calm">
        <p>{day.exampleNote}</p>
      </Notice>
      <button
        type="button"
        className="button"
        onClick={async () => {
          await diary.removeExamples();
          onRemoved();
        }}
      >
        {day.removeExample}
      </button>
    </div>
  );
}
