import './live-sign.css';

/** A visible sign that pictures of a camera or a shared window come in. */
export function LiveSign({ children }: { readonly children: string }) {
  return (
    <p className="live-sign">
      <span aria-hidden="true" />
      {children}
    </p>
  );
}
