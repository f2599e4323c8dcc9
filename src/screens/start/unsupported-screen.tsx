import { Notice } from '../parts/notice.tsx';
import { Page } from '../parts/page.tsx';
import type { MissingFeature } from '../services.ts';
import { useWords } from '../words/words-context.tsx';

/** Instead of the screens, in a browser that lacks what they need. */
export function UnsupportedScreen({ missing }: { readonly missing: readonly MissingFeature[] }) {
  const { unsupported } = useWords();
  return (
    <Page className="unsupported" title={unsupported.title} lead={unsupported.todo}>
      <Notice icon="warning" look="caution">
        <ul>
          {missing.map((feature) => (
            <li key={feature}>{unsupported.features[feature]}</li>
          ))}
        </ul>
      </Notice>
    </Page>
  );
}
