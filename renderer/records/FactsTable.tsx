/** What is so, line by line: the name of a fact and the fact. */
export function FactsTable({
  className,
  rows,
}: {
  className: string;
  rows: readonly (readonly [what: string, value: string])[];
}) {
  return (
    <table className={className}>
      <tbody>
        {rows.map(([what, value]) => (
          <tr key={what}>
            <th scope="row">{what}</th>
            <td>{value}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
