/**
 * Sheets: what a ventilator, a circuit, an illness, a fault is, as YAML, and the catalogue of them.
 * <p>Lives here: one class a kind of sheet (its table of keys, and how it becomes a record), the catalogue of sheets that
 * come along and of a user's folders, continuing one sheet in another with {@code like}.
 * <p>Does not: what a sheet's values lead to ({@code leeway.core}), which sheets a transport names
 * ({@code leeway.files.transport}).
 * <p>A new kind is a class that implements {@link leeway.files.sheet.SheetKind} and a line in
 * {@link leeway.files.sheet.Kinds}. The format is in docs/sheets.md.
 * <p>Leans on {@code leeway.files.keys}, {@code leeway.files.yaml} and the records of {@code leeway.core}.
 */
package leeway.files.sheet;
