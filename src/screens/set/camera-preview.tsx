import { useEffect, useRef } from 'react';

/** What the camera sees while the pose model still loads, so that one can sit or lie right meanwhile. */
export function CameraPreview({ stream }: { readonly stream: MediaStream }) {
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
