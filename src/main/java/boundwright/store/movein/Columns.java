package boundwright.store.movein;

import boundwright.quantity.LengthUnit;
import boundwright.quantity.RefusedException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Which column of a file is what.
 *
 * @param kind what the file holds
 * @param places the column of each field that has one, from 0
 * @param order what comes first in its days, or null: it was not said
 * @param unit of a length without one
 */
public record Columns(Kind kind, Map<Field, Integer> places, @Nullable DayOrder order, LengthUnit unit) {
  /** Takes a copy; refuses fields of another kind and a column that is two things. */
  public Columns {
    Map<Field, Integer> copy = new EnumMap<>(Field.class);
    copy.putAll(places);
    Set<Integer> taken = new HashSet<>();
    copy.forEach(
        (field, place) -> {
          if (field.kind() != kind || place < 0) {
            throw new IllegalArgumentException(field + " in column " + place + " of " + kind);
          }
          if (!taken.add(place)) {
            throw new RefusedException("Column " + (place + 1) + " is chosen twice, the second time as " + field.label() + ". Each column is one thing.");
          }
        });
    places = Map.copyOf(copy);
  }

  /** The columns as their names tell it; each field takes the first column that is called so. */
  public static Columns guessed(Kind kind, List<String> header, LengthUnit unit) {
    Map<Field, Integer> places = new EnumMap<>(Field.class);
    for (Field f : kind.fields()) {
      for (int i = 0; i < header.size(); i++) {
        if (f.isCalled(header.get(i)) && !places.containsValue(i)) {
          places.put(f, i);
          break;
        }
      }
    }
    return new Columns(kind, places, null, unit);
  }

  /** The kind whose needed fields the columns' names tell most of; athletes where none does. */
  public static Kind kind(List<String> header) {
    Kind best = Kind.ROSTER;
    double most = 0;
    for (Kind k : new Kind[] {Kind.REPS, Kind.RESULTS, Kind.ROSTER}) {
      Columns c = guessed(k, header, LengthUnit.METRES);
      double needed = k.fields().stream().filter(Field::needed).count();
      double share = k.fields().stream().filter(f -> f.needed() && c.place(f).isPresent()).count() / needed;
      boolean more = share == most && c.places.size() > guessed(best, header, LengthUnit.METRES).places.size();
      if (share > most || more) {
        most = share;
        best = k;
      }
    }
    return best;
  }

  /** The column of a field. */
  public Optional<Integer> place(Field field) {
    return Optional.ofNullable(places.get(field));
  }

  /** Fields that are needed and have no column. */
  public List<Field> missing() {
    return kind.fields().stream().filter(f -> f.needed() && !places.containsKey(f)).toList();
  }

  /** What a row says of a field; empty without a column. */
  String cell(Sheet.Row row, Field field) {
    Integer place = places.get(field);
    return place == null ? "" : row.cell(place);
  }

  /** The same with another order of days. */
  public Columns withOrder(@Nullable DayOrder other) {
    return new Columns(kind, places, other, unit);
  }

  /** As a text that {@link #read} reads: {@code name=1 born=3 days=day-first unit=m}; columns from 1. */
  public String text() {
    List<String> out = new ArrayList<>();
    kind.fields().forEach(f -> place(f).ifPresent(p -> out.add(f.key() + "=" + (p + 1))));
    DayOrder days = order;
    if (days != null) {
      out.add("days=" + days.key());
    }
    out.add("unit=" + (unit == LengthUnit.METRES ? "m" : "ft"));
    return String.join(" ", out);
  }

  /**
   * Reads what {@link #text} wrote, or a person: {@code name=Athlete,born=3,days=day-first,unit=m}, a column by its number from 1 or its name in the first line.
   *
   * @param usual unit where none is named
   */
  public static Columns read(Kind kind, String text, List<String> header, LengthUnit usual) {
    Map<Field, Integer> places = new EnumMap<>(Field.class);
    DayOrder order = null;
    LengthUnit unit = usual;
    for (String part : text.split(text.contains(",") ? "," : " ", -1)) {
      if (part.isBlank()) {
        continue;
      }
      int at = part.indexOf('=');
      String key = at < 0 ? "" : part.substring(0, at).strip().toLowerCase(Locale.ROOT);
      String value = part.substring(at + 1).strip();
      switch (key) {
        case "days" -> order = order(value);
        case "unit" -> unit = unit(value);
        default -> places.put(field(kind, key, part), column(header, value));
      }
    }
    return new Columns(kind, places, order, unit);
  }

  private static Field field(Kind kind, String key, String part) {
    return kind.fields().stream()
        .filter(f -> f.key().equals(key))
        .findFirst()
        .orElseThrow(
            () ->
                new RefusedException(
                    "'" + part.strip() + "' names no field of " + kind.key() + ". Write FIELD=COLUMN, the fields are "
                        + String.join(", ", kind.fields().stream().map(Field::key).toList()) + ", days and unit."));
  }

  private static int column(List<String> header, String value) {
    if (value.matches("\\d{1,4}") && Integer.parseInt(value) >= 1 && Integer.parseInt(value) <= header.size()) {
      return Integer.parseInt(value) - 1;
    }
    for (int i = 0; i < header.size(); i++) {
      if (header.get(i).equalsIgnoreCase(value)) {
        return i;
      }
    }
    throw new RefusedException("The file has no column '" + value + "'. Its columns are: " + String.join(", ", header) + ".");
  }

  private static DayOrder order(String value) {
    for (DayOrder o : DayOrder.values()) {
      if (o.key().equals(value)) {
        return o;
      }
    }
    throw new RefusedException("The order of days '" + value + "' is not known. Write days=day-first or days=month-first.");
  }

  private static LengthUnit unit(String value) {
    return switch (value) {
      case "m" -> LengthUnit.METRES;
      case "ft" -> LengthUnit.FEET_INCHES;
      default -> throw new RefusedException("The unit '" + value + "' is not known. Write unit=m or unit=ft.");
    };
  }
}
