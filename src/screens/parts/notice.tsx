import type { ReactNode } from 'react';
import { Icon, type IconName } from './icon.tsx';
import './notice.css';

interface NoticeProps {
  readonly icon: IconName;
  readonly look: 'caution' | 'calm' | 'fault';
  readonly title?: string;
  readonly children: ReactNode;
  /** Read out as soon as it appears. */
  readonly alert?: boolean;
}

/** A framed remark with a sign. */
export function Notice({ icon, look, title, children, alert = false }: NoticeProps) {
  return (
    <div className="notice" data-look={look} role={alert ? 'alert' : undefined}>
      <Icon name={icon} size={28} />
      <div className="notice-words">
        {title === undefined ? null : <p className="notice-title">{title}</p>}
        {children}
      </div>
    </div>
  );
}
