import { useEffect, useRef } from 'react';

/** What a camera or a shared window shows, as it comes. */
export function StreamPicture({ stream }: { readonly stream: MediaStream }) {
  const video = useRef<HTMLVideoElement>(null);
  useEffect(() => {
    const element = video.current;
    if (!element) return;
    element.srcObject = stream;
    return () => {
      element.srcObject = null;
    };
  }, [stream]);
  return <video ref={video} autoPlay muted playsInline />;
}
