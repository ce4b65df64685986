/** One sheet of paper: fixed in height; the foot says whose it is, of when, and which sheet. */
export function Sheet({
  name,
  n,
  label,
  foot,
  number,
  className = '',
  children,
}: {
  /** Whose, for who is told that it does not fit. */
  name: string;
  n: number;
  label: string;
  foot: string;
  /** "sheet 1 of 3" */
  number: string;
  className?: string;
  children: React.ReactNode;
}) {
  return (
    <section className={`sheet ${className}`.trim()} data-sheet={n} data-name={name} aria-label={label}>
      <div className="sheet-body">
        {children}
        <footer className="sheet-foot">
          <span>{foot}</span>
          <span className="sheet-number">{number}</span>
        </footer>
      </div>
    </section>
  );
}

/** A heading with its one line of help to the right. */
export function PartHead({ heading, children }: { heading: string; children: React.ReactNode }) {
  return (
    <div className="part-head">
      <h2>{heading}</h2>
      <p>{children}</p>
    </div>
  );
}

/** A label with whom it reaches and the number, or a line to write it on. */
export function NumberLine({ label, name = '', phone }: { label: string; name?: string; phone: string }) {
  return (
    <p className="number-line">
      <span>
        {label}
        {name !== '' && `, ${name}`}
      </span>
      {phone === '' ? <span className="to-write" /> : <b>{phone}</b>}
    </p>
  );
}
