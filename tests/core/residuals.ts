/** Collects differences from a published table and prints one line: how many, the largest, the mean size. */
export function residuals(table: string) {
  const seen: { id: string; difference: number }[] = [];
  return {
    add(id: string, difference: number) {
      seen.push({ id, difference });
    },
    print() {
      const size = seen.map(({ difference }) => Math.abs(difference));
      const worst = Math.max(...size);
      const at = seen[size.indexOf(worst)]?.id;
      const mean = size.reduce((sum, one) => sum + one, 0) / size.length;
      console.info(
        `${table}: ${seen.length} values, largest ${worst.toPrecision(2)} (${at}), mean ${mean.toPrecision(2)}`,
      );
    },
  };
}
