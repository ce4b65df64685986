import type { PlanDocument } from '../../../core/homing/document.ts';
import { Sheet } from '../Sheet.tsx';

/** One of the sheets of a plan. */
export function PlanSheet({
  document,
  n,
  className,
  children,
}: {
  document: PlanDocument;
  n: number;
  className: string;
  children: React.ReactNode;
}) {
  const number = document.sheets[n - 1] ?? '';
  return (
    <Sheet
      name={document.name}
      n={n}
      label={`${document.name}, ${number}`}
      foot={document.foot}
      number={number}
      className={className}
    >
      {children}
    </Sheet>
  );
}
