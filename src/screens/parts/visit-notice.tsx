import { useEffect, useState } from 'react';
import { Link } from 'wouter';
import { useServices } from '../services-context.tsx';
import { useWords } from '../words/words-context.tsx';
import { Notice } from './notice.tsx';

/** Says that nothing is kept, where the browser keeps nothing, and leads to where all can be saved as a file. */
export function VisitNotice() {
  const { kept } = useWords();
  const services = useServices();
  const [visitOnly, setVisitOnly] = useState(false);
  useEffect(() => {
    let wanted = true;
    services.visitOnly().then((only) => wanted && setVisitOnly(only));
    return () => {
      wanted = false;
    };
  }, [services]);
  // Where nothing works at all there is nothing to save.
  if (!visitOnly || services.missing().length > 0) return null;
  return (
    <Notice icon="warning" look="caution">
      <p>{kept.visitOnly}</p>
      <Link href="~/stored" className="button">
        {kept.visitSave}
      </Link>
    </Notice>
  );
}
