import type { ReactNode } from 'react';

/** The head of a page: its one h1, a sentence, and what stands at the right. */
export function PageTitle({ title, lead, children }: { title: string; lead: string; children?: ReactNode }) {
  return (
    <header className="title">
      <div>
        <h1>{title}</h1>
        <p>{lead}</p>
      </div>
      {children !== undefined && <div className="right">{children}</div>}
    </header>
  );
}
