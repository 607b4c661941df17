package boundwright.web.files;

import boundwright.quantity.LengthUnit;
import boundwright.quantity.Notes;
import boundwright.store.movein.Columns;
import boundwright.store.movein.DayOrder;
import boundwright.store.movein.Encoding;
import boundwright.store.movein.Field;
import boundwright.store.movein.Kind;
import boundwright.store.movein.Look;
import boundwright.store.movein.RowLook;
import boundwright.store.movein.Separator;
import boundwright.store.movein.Sheet;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * A coach's own file: what it was read as, which column is what, and what each row becomes.
 *
 * @param token of the file, which waits
 * @param name of the file
 * @param sheet what is in it
 * @param columns which column is what
 * @param remembered whether that was chosen for such a file before
 * @param look what its rows become, or null where a needed column is missing
 * @param refused why nothing can be shown or was taken, or empty
 */
public record MoveInView(String token, String name, Sheet sheet, Columns columns, boolean remembered, @Nullable Look look, String refused) {
  /** How many rows are shown of each state. */
  public static final int MOST_SHOWN = 8;
  /** How many refused rows are listed. */
  public static final int MOST_LISTED = 100;
  private static final int EXAMPLE = 24;

  /** The kinds to choose from. */
  public List<Kind> kinds() {
    return List.of(Kind.values());
  }

  /** The encodings to choose from. */
  public List<Encoding> encodings() {
    return List.of(Encoding.values());
  }

  /** The separators to choose from. */
  public List<Separator> separators() {
    return List.of(Separator.values());
  }

  /** The orders of days to choose from. */
  public List<DayOrder> orders() {
    return List.of(DayOrder.values());
  }

  /** The units to choose from. */
  public List<LengthUnit> units() {
    return List.of(LengthUnit.values());
  }

  /** What the form's columns are of. */
  public String of() {
    return MoveInHandler.of(columns.kind(), sheet);
  }

  /** The number of a field's column, or -1. */
  public int place(Field field) {
    return columns.place(field).orElse(-1);
  }

  /** A column as it is offered: its name, and what stands in it first. */
  public String column(int place) {
    String name = sheet.header().get(place);
    String first = sheet.rows().stream().map(r -> r.cell(place)).filter(c -> !c.isEmpty()).findFirst().orElse("");
    String example = first.length() > EXAMPLE ? first.substring(0, EXAMPLE) + "\u2026" : first;
    return (name.isEmpty() ? "column " + (place + 1) : name) + (example.isEmpty() ? "" : " (" + example + ")");
  }

  /** Whether lengths without a unit are read by it. */
  public boolean hasLengths() {
    return columns.kind() != Kind.ROSTER;
  }

  /** Whether the days must be asked about. */
  public boolean ask() {
    return look != null && look.ask();
  }

  /** The order of days that the file tells or the coach said, or null. */
  public @Nullable DayOrder order() {
    return look == null ? columns.order() : look.columns().order();
  }

  /** The first rows that would be taken, and those that are here already. */
  public List<RowLook> shown() {
    Look seen = look;
    if (seen == null) {
      return List.of();
    }
    return Stream.of(RowLook.State.NEW, RowLook.State.FILLS, RowLook.State.LATER, RowLook.State.THERE)
        .flatMap(s -> seen.in(s).stream().limit(MOST_SHOWN))
        .sorted(Comparator.comparingInt(RowLook::line))
        .toList();
  }

  /** The rows that cannot be taken. */
  public List<RowLook> bad() {
    Look seen = look;
    return seen == null ? List.of() : seen.in(RowLook.State.BAD);
  }

  /** Rows that would be taken. */
  public int takes() {
    return look == null ? 0 : look.takes();
  }

  /** Rows dated after today. */
  public int later() {
    return look == null ? 0 : look.count(RowLook.State.LATER);
  }

  /** {@code 12 new, 3 adding, 1 here already, 2 refused}. */
  public String counts() {
    Look seen = look;
    if (seen == null) {
      return "";
    }
    List<String> out =
        Stream.of(RowLook.State.values()).filter(s -> seen.count(s) > 0).map(s -> seen.count(s) + " " + s.label()).toList();
    return out.isEmpty() ? "No row follows the first line." : Notes.counted(seen.rows().size(), "row") + ": " + String.join(", ", out) + ".";
  }
}
